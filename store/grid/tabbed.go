package grid

import (
	"encoding/csv"
	"strings"
)

// Tabbed returns rows as text with tabs between the cells, as spreadsheet programs take it from the clipboard. No cell runs as a formula,
// and none breaks a row: tabs and line ends in it become spaces.
func Tabbed(rows [][]string) string {
	var out strings.Builder
	w := csv.NewWriter(&out)
	w.Comma = '\t'
	for _, row := range rows {
		cells := make([]string, len(row))
		for i, cell := range row {
			cells[i] = Defused(strings.Join(strings.Fields(cell), " "))
		}
		_ = w.Write(cells) // a builder takes everything
	}
	w.Flush()
	return out.String()
}
