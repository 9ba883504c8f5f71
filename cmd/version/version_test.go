package version

import (
	"strings"
	"testing"

	"walkline/valuation"
)

func TestABuildWithoutANumberSaysSo(t *testing.T) {
	kept := stamped
	defer func() { stamped = kept }()
	stamped = ""
	if got := Line("walk"); !strings.HasPrefix(got, "walk unstamped (") {
		t.Errorf("%q", got)
	}
	stamped = "1.2.3"
	if got := Line("walk"); !strings.HasPrefix(got, "walk 1.2.3 ("+valuation.Engine+", go") {
		t.Errorf("%q", got)
	}
}
