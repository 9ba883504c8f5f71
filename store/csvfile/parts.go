package csvfile

import (
	"bytes"
	"encoding/csv"
	"slices"
	"strconv"
	"strings"

	"walkline/store/grid"
	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/repair"
)

// partColumns are the columns of a shopping list.
var partColumns = []string{"lot", "vehicle", "part", "for", "area", "needed", "turn", "source", "price_low", "price_likely",
	"price_high", "freight",
	"lead_days", "available", "said", "yard", "phone", "day", "currency"}

// WriteParts returns a shopping list as CSV: a row for each source of each part. Money is in major units of the row's currency,
// chances are 0..1; said is what a yard asked for on that day. Cells that a spreadsheet would run are defused.
// Errors: writing to memory does not fail.
func WriteParts(list []valuation.Wanted) []byte {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	rows := [][]string{slices.Clone(partColumns)}
	for _, x := range list {
		rows = append(rows, partRow(x))
	}
	for _, row := range rows {
		for i, cell := range row {
			row[i] = grid.Defused(cell)
		}
		if err := w.Write(row); err != nil {
			panic("csvfile: memory refused a row: " + err.Error())
		}
	}
	w.Flush()
	return out.Bytes()
}

func partRow(x valuation.Wanted) []string {
	cur, _ := money.Lookup(x.Currency)
	cash := func(f float64) string { return cur.Text(cur.FromMajor(f)) }
	said, q := "", repair.Quote{}
	if x.Said != nil {
		q = *x.Said
		said = cash(q.Price)
	}
	return []string{x.Lot, x.Vehicle, x.Part, x.For, x.Area, share(x.Need), strconv.Itoa(x.Turn), strings.ReplaceAll(x.Source, "_", " "),
		cash(x.Price.Low), cash(x.Price.Likely), cash(x.Price.High), cash(x.Freight.Likely), strconv.FormatFloat(x.LeadDays.Likely,
			'f', -1, 64),
		share(x.Has), said, q.Yard, q.Phone, string(q.Day), x.Currency}
}

// share writes a chance with two decimals.
func share(p float64) string { return strconv.FormatFloat(p, 'f', 2, 64) }
