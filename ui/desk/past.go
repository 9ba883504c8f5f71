package desk

import (
	"context"
)

// PastTables reads and writes tables of past buys.
type PastTables interface {
	// OpenPast returns what the file holds and how it seems to be meant; currency is that of its money.
	// Errors: the file is no table, with the reason.
	OpenPast(data []byte, currency string) (Sheet, error)
	// ReadPast returns the buys that the sheet gives as it is stated, and every refused row.
	ReadPast(s Sheet) ([]Past, []Refusal, error)
	// RefusedPast writes the refused rows as a CSV file that can be corrected and imported again.
	RefusedPast(s Sheet) ([]byte, error)
	// PastTemplate returns an empty table.
	PastTemplate() []byte
}

// OpenPast returns the table of past buys that a file holds, with what was stated for the last one with the same columns. currency is the
// shop's.
func (d *Desk) OpenPast(ctx context.Context, data []byte, currency string) (Sheet, error) {
	sheet, err := d.Past.OpenPast(data, currency)
	if err != nil {
		return sheet, err
	}
	_, err = d.recall(ctx, ofPastBuys, &sheet)
	return sheet, err
}

// ApplyPast takes the past buys of a sheet into the builds. It says what it did in the notice; refused rows come back.
func (d *Desk) ApplyPast(ctx context.Context, s State, sheet Sheet) (State, []Refusal) {
	list, refused, err := d.Past.ReadPast(sheet)
	if err != nil {
		return s.troubled("read the table", err), nil
	}
	for i := range list {
		list[i].Case.ValuedOn = d.Today()
	}
	counts, err := d.Book.AddPast(ctx, list)
	if err != nil {
		return s.troubled("keep the past buys", err), refused
	}
	counts.Read, counts.Refused = len(list)+len(refused), len(refused)
	if err := d.remember(ctx, ofPastBuys, sheet); err != nil {
		return s.troubled("remember how this table is read", err), refused
	}
	if s = d.readBuilds(ctx, d.refresh(ctx, s)); s.Trouble != "" {
		return s, refused
	}
	return s.said(counts.words()), refused
}
