package grid

import (
	"slices"
	"strings"
	"testing"
)

// TestALineIsPartedAsByEncodingCSV: the reference is encoding/csv of the standard library, and what it refuses is left to it.
func TestALineIsPartedAsByEncodingCSV(t *testing.T) {
	parts := []string{"", " ", "a", "b c ", `"`, `""`, `"x,y"`, ` "q"`, `"a""b"`, `12" rim`, "é", "\t", "\r", `"z" `, "'=1"}
	taken := 0
	for _, a := range parts {
		for _, b := range parts {
			for _, c := range parts {
				line := a + "," + b + c + "," + a
				cells, can := lineCells(nil, line, ',')
				if !can {
					continue
				}
				taken++
				want, err := reader(strings.NewReader(line+"\n"), ',').Read()
				if err != nil || !slices.Equal(trimmed(want), trimmed(cells)) {
					t.Fatalf("%q: %q and encoding/csv says %q, %v", line, cells, want, err)
				}
			}
		}
	}
	if taken < 1000 {
		t.Fatalf("only %d lines were parted", taken)
	}
}
