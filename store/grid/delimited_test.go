package grid

import "testing"

// Cells that were copied from a spreadsheet or a web page come with tabs, whatever commas and empty cells stand among them.
func TestTabsPartCopiedCells(t *testing.T) {
	g, err := Read([]byte("Price\tTrim\tMiles\n$9,500\t\t60,000\n$8,900\t\t71,200\n$9,100\tLX 3.5\" screen\t66,000\n"), Options{})
	if err != nil || len(g.Rows) != 4 {
		t.Fatalf("%+v, %v", g, err)
	}
	for _, r := range g.Rows {
		if len(r.Cells) != 3 {
			t.Errorf("line %d has the cells %q", r.Line, r.Cells)
		}
	}
}
