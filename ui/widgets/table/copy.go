package table

// Cells returns the headings and every row as they are written, boxes left out.
func (t *Table) Cells() [][]string {
	var heads []string
	for _, c := range t.columns {
		heads = append(heads, c.Title)
	}
	out := [][]string{heads}
	for i := range t.count {
		out = append(out, t.row(i).Cells)
	}
	return out
}
