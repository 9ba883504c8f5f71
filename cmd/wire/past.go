package wire

import (
	"fmt"
	"strings"

	"walkline/store/csvfile"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/hidden"
)

// PastTables is the CSV reader of past buys as the desk sees it. Risks that a table calls by their names are found in the
// catalogue.
type PastTables struct{ Risks hidden.Catalogue }

var _ desk.PastTables = PastTables{}

// OpenPast returns the table with the match and the notation that refuses the fewest rows; where another notation refuses as
// few and reads something else, that is a doubt.
func (p PastTables) OpenPast(data []byte, currency string) (desk.Sheet, error) {
	table, err := csvfile.Read(data, csvfile.Reading{})
	if err != nil {
		return desk.Sheet{}, err
	}
	s := desk.Sheet{Data: data, Header: table.Header, Added: csvfile.Added(table.Header), Rows: len(table.Records), Fields: append(csvfile.PastFields(), string(csvfile.Ignored))}
	for _, r := range table.Records[:min(sampleRows, len(table.Records))] {
		s.Sample = append(s.Sample, r.Cells)
	}
	s.Stated = desk.Stated{Match: csvfile.ProposePast(table.Header), Currency: currency}
	if err := p.settle(table, &s); err != nil {
		return desk.Sheet{}, err
	}
	return s, nil
}

// settle states the notation that refuses the fewest rows.
func (p PastTables) settle(table csvfile.Table, s *desk.Sheet) error {
	best := -1
	var prints string
	for _, marks := range desk.MarkWays {
		for _, dates := range desk.DateWays {
			tried := s.Stated
			tried.Marks, tried.Dates = marks, dates
			res, err := csvfile.ParsePast(table, tried.Match, pastOptions(tried))
			if err != nil {
				return err
			}
			read := meant(res.Rows)
			switch {
			case best < 0 || len(res.Refused) < best:
				best, prints = len(res.Refused), read
				s.Stated, s.Doubts = tried, nil
			case len(res.Refused) == best && read != prints:
				s.Doubts = []desk.Doubt{{Option: "dates", Text: "The table can be read in more than one way: look at the numbers and dates stated here."}}
			}
		}
	}
	return nil
}

// meant writes down what a reading makes of the days and amounts.
func meant(rows []csvfile.Past) string {
	var out strings.Builder
	for _, r := range rows {
		b := r.Build
		for _, d := range b.Dates.Steps() {
			out.WriteString(string(*d.Day) + "|")
		}
		out.WriteString(b.Imported.As)
		for _, x := range b.Receipts {
			fmt.Fprint(&out, x.Amount, "|")
		}
	}
	return out.String()
}

func pastOptions(s desk.Stated) csvfile.PastOptions {
	return csvfile.PastOptions{Marks: marks(s.Marks), Dates: csvfile.Order(s.Dates), Currency: s.Currency}
}

// ReadPast returns the buys of a sheet and every refused row.
func (p PastTables) ReadPast(s desk.Sheet) ([]desk.Past, []desk.Refusal, error) {
	_, res, err := readPast(s)
	if err != nil {
		return nil, nil, err
	}
	list := make([]desk.Past, len(res.Rows))
	for i, r := range res.Rows {
		c := valuation.Defaults()
		c.Currency, c.Lot = s.Stated.Currency, r.Lot
		c.Lot.OdometerUnit, c.Lot.OdometerStatus, c.Lot.Condition = valuation.Defaults().Lot.OdometerUnit, "unknown", "unknown"
		list[i] = desk.Past{Case: c, Build: r.Build}
		for k := range r.Build.Risks {
			r.Build.Risks[k].Risk = p.risk(r.Build.Risks[k].Risk)
		}
	}
	return list, refusals(res.Refused), nil
}

// risk returns the id of a risk that is called by its name; what is not known stays as it is.
func (p PastTables) risk(name string) string {
	for _, e := range p.Risks.Risks {
		if strings.EqualFold(e.Name, name) {
			return e.ID
		}
	}
	return name
}

func readPast(s desk.Sheet) (csvfile.Table, csvfile.PastResult, error) {
	table, err := csvfile.Read(s.Data, csvfile.Reading{})
	if err != nil {
		return table, csvfile.PastResult{}, err
	}
	res, err := csvfile.ParsePast(table, s.Stated.Match, pastOptions(s.Stated))
	return table, res, err
}

// RefusedPast writes the refused rows of a sheet as CSV.
func (PastTables) RefusedPast(s desk.Sheet) ([]byte, error) {
	table, res, err := readPast(s)
	if err != nil {
		return nil, err
	}
	return csvfile.WriteRefused(table, res.Refused), nil
}

// PastTemplate returns an empty table of past buys.
func (PastTables) PastTemplate() []byte { return csvfile.PastTemplate() }
