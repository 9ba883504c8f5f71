package csvfile

import (
	"bytes"
	"encoding/csv"
	"strings"

	"walkline/store/table"
)

// exampleID begins the ids of the template's own rows, which are never buys.
const exampleID = "example"

// meanings say what each column of the template holds. Columns that say it themselves have none.
var meanings = map[string]string{
	"id": "your own number of the buy; two rows never share one", "sale": "where you bought it", "model_year": "e.g. 2018",
	"loss":     "what wrecked it: collision, hail, flood, fire, theft ...",
	"odometer": "when it was sold, with its unit: 83,900 mi; not actual, where the title says so",
	"damage":   "where, e.g. front; left rear. Needed to teach hours and costs",
	"bought":   "day of the purchase, like all days as 2026-03-01", "home": "day it came home", "price_paid": "hammer price, without fees",
	"fees": "all that the sale charged on top, tax too", "parts": "money for all parts", "bought_in_work": "sublet work: alignment, glass ...",
	"other_costs": "what fits nowhere else", "hours_body": "your hours, by trade",
	"outcome":     "open, sold, parted out, resold as is, cancelled",
	"first_asked": "the first asking price: with sold_for it teaches the step from asking to selling", "sold_for": "what it brought",
	"days_on_market": "only where listed and sold are empty", "brand": "the title's brand when it was sold",
	"found": "hidden damage that was there, parted by semicolons", "not_there": "hidden damage that was looked for and was not there",
	"note": "anything; it teaches nothing",
}

// examples are two invented buys.
var examples = []map[string]string{
	{"id": "example 1", "sale": "Harrow Flats yard", "model_year": "2018", "make": "Kettrick", "model": "Dunlin", "odometer": "83900 mi",
		"loss":   "collision",
		"damage": "front; left front", "bought": "2025-03-01", "home": "2025-03-04", "started": "2025-03-10", "finished": "2025-05-02",
		"inspected": "2025-05-20", "listed": "2025-05-21", "sold": "2025-06-18", "price_paid": "4200", "fees": "610", "parts": "1800",
		"materials": "240", "bought_in_work": "180", "freight": "210", "hours_body": "22.5", "hours_paint": "14", "outcome": "sold",
		"first_asked": "12500", "sold_for": "11900", "brand": "rebuilt", "found": "", "not_there": "", "note": "delete this row"},
	{"id": "example 2", "make": "Ostrane", "model": "Pell", "bought": "2025-07-12", "price_paid": "1450", "outcome": "parted out",
		"sold_for": "2300", "note": "what you do not know stays empty; delete this row, too"},
}

// PastTemplate returns a table of past buys to fill in: what each column means, the headings, and two examples that are never taken for
// buys.
func PastTemplate() []byte {
	var names []string
	for _, c := range pastColumns {
		if c.Form != table.Vehicle && c.Form != table.Currency && c.Name != wonColumn {
			names = append(names, c.Name)
		}
	}
	rows := [][]string{told(names, meanings), names, told(names, examples[0]), told(names, examples[1])}
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if err := w.WriteAll(rows); err != nil {
		panic(err) // a buffer takes every byte
	}
	return out.Bytes()
}

func told(names []string, of map[string]string) []string {
	row := make([]string, len(names))
	for i, n := range names {
		row[i] = strings.TrimSpace(of[n])
	}
	return row
}
