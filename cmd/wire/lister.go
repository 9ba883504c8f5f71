package wire

import (
	"walkline/store/book"
	"walkline/store/csvfile"
	"walkline/store/runlist"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// Lister is the reader of run lists as the desk sees it.
type Lister struct{}

var _ desk.Lister = Lister{}

// OpenList returns the table with the match and the notation that it suggests.
func (Lister) OpenList(data []byte) (desk.Sheet, error) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		return desk.Sheet{}, err
	}
	match := runlist.Propose(table.Header)
	options, doubts := runlist.ProposeOptions(table, match)
	s := desk.Sheet{Data: data, Header: table.Header, Added: csvfile.Added(table.Header), Rows: len(table.Records)}
	for _, r := range table.Records[:min(sampleRows, len(table.Records))] {
		s.Sample = append(s.Sample, r.Cells)
	}
	for _, f := range append(runlist.Fields[:len(runlist.Fields):len(runlist.Fields)], runlist.Ignored) {
		s.Fields = append(s.Fields, string(f))
	}
	for _, d := range doubts {
		s.Doubts = append(s.Doubts, desk.Doubt{Option: d.Option, Text: d.Text})
	}
	s.Stated = desk.Stated{Marks: options.Marks.String(), Dates: string(options.Dates), Unit: options.Unit}
	for _, f := range match {
		s.Stated.Match = append(s.Stated.Match, string(f))
	}
	return s, nil
}

// readList parses a run list as it is stated.
func readList(s desk.Sheet) (csvfile.Table, runlist.Result, error) {
	table, err := csvfile.Read(s.Data, csvfile.Reading{})
	if err != nil {
		return table, runlist.Result{}, err
	}
	match := make([]runlist.Field, len(s.Stated.Match))
	for i, f := range s.Stated.Match {
		match[i] = runlist.Field(f)
	}
	st := s.Stated
	result, err := runlist.Parse(table, match, runlist.Options{Marks: marks(st.Marks), Dates: csvfile.Order(st.Dates), Unit: st.Unit, Sale: st.Sale, SaleDate: st.SaleDate})
	return table, result, err
}

// ReadList returns the lots of a sheet and every refused row.
func (Lister) ReadList(s desk.Sheet) ([]lot.Lot, []desk.Refusal, error) {
	_, result, err := readList(s)
	return result.Lots, refusals(result.Refused), err
}

// MeetList holds listed lots against those there are.
func (Lister) MeetList(known []book.Listed, listed []lot.Lot) desk.Meeting {
	have := make([]runlist.Known, len(known))
	for i, k := range known {
		have[i] = runlist.Known(k)
	}
	met := runlist.Meet(have, listed)
	m := desk.Meeting{New: met.New, Same: met.Same, Left: met.Left}
	for _, k := range met.Changed {
		m.Changed = append(m.Changed, book.Listed(k))
	}
	return m
}

// RefusedList writes the refused rows of a sheet as CSV.
func (Lister) RefusedList(s desk.Sheet) ([]byte, error) {
	table, result, err := readList(s)
	if err != nil {
		return nil, err
	}
	return csvfile.WriteRefused(table, result.Refused), nil
}
