package hedonic

import (
	"math"
	"testing"
)

func TestMileageFormsShareSlopeAtPivot(t *testing.T) {
	for _, f := range Forms {
		if slope := (f.At(pivot+1) - f.At(pivot-1)) / 2 * perUnit; math.Abs(slope-1) > 1e-6 {
			t.Errorf("%s rises by %g per 10,000 miles at 50,000, want 1", f, slope)
		}
	}
}

func TestKeysAndNumbers(t *testing.T) {
	for in, want := range map[string]string{"": "", "Diesel": "diesel", "  Semi   Auto ": "semi auto", "a b": "a b", "Ü\tx": "ü x",
		"a ": "a"} {
		if got := Key(in); got != want {
			t.Errorf("key of %q is %q, want %q", in, got, want)
		}
	}
	for in, want := range map[string]bool{"1.6": true, " 2 ": true, "": false, "NaN": false, "inf": false, "2/3": false} {
		if _, ok := Number(in); ok != want {
			t.Errorf("%q is a number: %v", in, ok)
		}
	}
}
