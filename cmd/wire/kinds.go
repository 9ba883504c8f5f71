package wire

import (
	"slices"

	"walkline/store/csvfile"
	"walkline/store/runlist"
	"walkline/store/table"
	"walkline/ui/desk"
)

// looked is how many first rows are looked at to tell what a table is.
const looked = 60

// Kinds returns how many columns of a table each kind knows by their headings; a kind whose telling columns lack is not named, nor is any
// where no line names the columns.
func Kinds(data []byte) map[desk.Kind]int {
	g, _, err := gridOf(data, desk.Opening{})
	if err != nil {
		return nil
	}
	g.Rows = g.Rows[:min(len(g.Rows), looked)]
	found := map[desk.Kind]int{}
	look := func(kind desk.Kind, columns []table.Became, err error, telling ...string) {
		known, told := 0, false
		for _, c := range columns {
			if c.Field == table.Other || c.Field == table.Ignored || c.Why != "by its heading" {
				continue
			}
			known++
			told = told || slices.Contains(telling, c.Field)
		}
		if err == nil && told {
			found[kind] = known
		}
	}
	comparables, err := table.Read(csvfile.Comparables, g, table.Stated{On: today()})
	look(desk.OfComparables, comparables.Columns, err, "price")
	list, err := table.Read(runlist.Lists(), g, table.Stated{On: today()})
	look(desk.OfRunList, list.Columns, err, "number", "vin")
	past, err := table.Read(csvfile.PastBuys(), g, table.Stated{On: today()})
	look(desk.OfPastBuys, past.Columns, err, "price_paid")
	return found
}
