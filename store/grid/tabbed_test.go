package grid

import (
	"bytes"
	"testing"
)

// TestTabbedIsReadBack gives what the clipboard gets to the reader of what it brings. Source of the form: RFC 4180 with tabs, IANA
// text/tab-separated-values.
func TestTabbedIsReadBack(t *testing.T) {
	got := Tabbed([][]string{{"Lot", "Note"}, {"14", "two\nlines\tand a tab"}, {"15", `says "runs"`}, {"16", "=1+1"}, {"", ""}})
	want := "Lot\tNote\n14\ttwo lines and a tab\n15\t\"says \"\"runs\"\"\"\n16\t'=1+1\n\t\n"
	if got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if !bytes.Contains([]byte(got), []byte("'=1+1")) {
		t.Error("a formula is pasted as one")
	}
}
