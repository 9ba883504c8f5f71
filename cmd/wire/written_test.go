package wire

import (
	"testing"

	"walkline/store/table"
)

// Common practice, no source: in American English thousands stand apart by commas.
func TestThePreviewIsWrittenAsAPersonWrites(t *testing.T) {
	for want, v := range map[string]struct {
		value any
		form  table.Form
	}{"yes": {true, table.Text}, "no": {false, table.Text}, "12,500": {"12500", table.Money}, "1,234,500.5": {"1234500.5", table.Money},
		"60,000": {60000, table.Odometer}, "2016": {2016, table.Year}, "front left": {[]string{"front left"}, table.Text}} {
		if got := written(v.value, v.form); got != want {
			t.Errorf("%v is written %q, want %q", v.value, got, want)
		}
	}
}
