package wire

import (
	"walkline/store/book"
	"walkline/store/runlist"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// Lister reads run lists for the desk.
type Lister struct{}

var _ desk.Lister = Lister{}

var listFields = []string{"number", "sale", "sale_date", "model_year", "make", "model", "trim", "vin", "odometer", "unit",
	"odometer_status", "document", "loss", "areas", "condition", "keys", "value_before", "repair_estimate", "hammer",
	"note"}

func lists() sheets[runlist.Row] {
	return sheets[runlist.Row]{kind: runlist.Lists, first: printed(runlist.Lists(), listFields), shown: listFields, used: lotsUsed,
		foreign: true}
}

// OpenList returns the table with the match and the notation that it suggests.
func (Lister) OpenList(data []byte, o desk.Opening) (desk.Sheet, error) {
	return lists().open(data, o)
}

// Reopen returns the table of the same file, read as it is now stated.
func (Lister) Reopen(s desk.Sheet, o desk.Opening) (desk.Sheet, error) { return lists().reopen(s, o) }

// ReadList returns the lots of a sheet and every refused row.
func (Lister) ReadList(s desk.Sheet) ([]desk.ListRow, []desk.Refusal, error) {
	res, err := lists().taken(s)
	rows := make([]desk.ListRow, len(res.Rows))
	for i, l := range runlist.Lots(res.Rows) {
		r := res.Rows[i]
		if rows[i] = (desk.ListRow{Lot: l, Currency: r.Currency}); r.Hammer > 0 {
			rows[i].Hammer = &r.Hammer
		}
	}
	return rows, refusals(res.Refused), err
}

// Preview returns what a sheet gives as it is stated.
func (Lister) Preview(s desk.Sheet) (desk.Preview, error) { return lists().preview(s) }

// MeetList holds listed lots against those there are.
func (Lister) MeetList(known []book.Listed, listed []lot.Lot) desk.Meeting {
	have := make([]runlist.Known, len(known))
	for i, k := range known {
		have[i] = runlist.Known(k)
	}
	met := runlist.Meet(have, listed)
	m := desk.Meeting{New: met.New, Same: met.Same, Left: met.Left, IDs: met.IDs}
	for _, k := range met.Changed {
		m.Changed = append(m.Changed, book.Listed(k))
	}
	return m
}

// RefusedList writes the refused rows of a sheet as CSV.
func (Lister) RefusedList(s desk.Sheet) ([]byte, error) { return lists().refused(s) }
