package wire_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/cmd/wire"
	"walkline/ui/desk"
)

// TestWhatATableIsShowsInItsHeadings: of the tables of testdata with headings, those named run list are run lists and the others
// comparables, on the page of either.
func TestWhatATableIsShowsInItsHeadings(t *testing.T) {
	files, err := filepath.Glob("../../testdata/tables/*.*")
	if err != nil || len(files) < 40 {
		t.Fatal(len(files), err)
	}
	d := desk.Desk{Look: wire.Kinds}
	for _, file := range files {
		name := filepath.Base(file)
		if strings.HasSuffix(name, ".json") || strings.HasPrefix(name, "headless") {
			continue
		}
		data, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		want := desk.OfComparables
		if strings.HasPrefix(name, "runlist") {
			want = desk.OfRunList
		}
		if got := d.Likeliest(t.Context(), data, want); got != want {
			t.Errorf("%s on its own page is taken for %s: %v", name, got, wire.Kinds(data))
		}
		if found := wire.Kinds(data); len(found) > 0 && d.Likeliest(t.Context(), data, desk.OfPastBuys) == desk.OfPastBuys {
			t.Errorf("%s on Builds is taken for past buys: %v", name, found)
		}
	}
	past := []byte("id,make,model,bought,price paid,sold,sold for,parts\n1,Kettrick,Vole,2025-03-01,4200,2025-06-01,9000,800\n")
	for _, here := range desk.Kinds {
		if got := d.Likeliest(t.Context(), past, here); got != desk.OfPastBuys {
			t.Errorf("past buys on the page of %s are taken for %s: %v", here, got, wire.Kinds(past))
		}
	}
}
