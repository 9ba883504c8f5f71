package wire

import (
	"strings"

	"walkline/store/csvfile"
	"walkline/store/runlist"
	"walkline/ui/desk"
	"walkline/valuation/resale"
)

// told is how many rows something is said of.
type told struct {
	rows int
	says string
}

// lines returns what is said of any rows at all.
func lines(all ...told) (out []string) {
	for _, t := range all {
		if t.rows > 0 {
			out = append(out, strings.Replace(t.says, "%d", desk.Grouped(t.rows), 1))
		}
	}
	return out
}

// noYear is why a comparable without a model year serves for nothing.
const noYear = "no model year: kept, but used for nothing until it has one"

// ofNoYear returns why a row serves for nothing as it stands, empty where it serves.
func ofNoYear(c csvfile.Comparable) string {
	if c.ModelYear == 0 {
		return noYear
	}
	return ""
}

// comparablesUsed says how many rows of a table of comparables are used for what, and what they leave unsaid.
func comparablesUsed(rows []csvfile.Comparable, s desk.Stated) []string {
	var price, other, unnamed, nameless, years, miles, titles int
	for _, c := range rows {
		switch {
		case ofNoYear(c) != "":
			years++
		case s.Model != "" && c.Beside(s.Make, s.Model) != resale.Own:
			other++
		case s.Model == "" && (c.Make == "" || c.Model == ""):
			nameless++
		default:
			price++
		}
		if s.Model != "" && c.Nameless(s.Make) {
			unnamed++
		}
		if c.Known().Mileage == nil {
			miles++
		}
		if c.Title == "" {
			titles++
		}
	}
	return lines(told{price, "Used for the price: %d."}, told{other,
		"Of another model: %d. They lend their age and mileage, not their price."},
		told{unnamed, "No model named: %d. Taken for this lot's model."},
		told{nameless, "No make and model: %d. No lot draws them from the shelf until they have both."},
		told{years, "No model year: %d. Kept, but used for nothing until they have one."},
		told{miles, "No mileage: %d. They count less."}, told{titles, "Title not stated: %d. Taken as clear."})
}

// lotsUsed says what the lots of a run list leave unsaid, and what follows.
func lotsUsed(rows []runlist.Row, _ desk.Stated) []string {
	var years, models, readings, days, priced int
	for _, r := range rows {
		if r.Lot.ModelYear == 0 {
			years++
		}
		if r.Lot.Make == "" || r.Lot.Model == "" {
			models++
		}
		if r.Lot.Odometer == nil {
			readings++
		}
		if r.Lot.SaleDate == "" {
			days++
		}
		if r.Currency == "" && r.ValueBefore+r.RepairEstimate+r.Hammer > 0 {
			priced++
		}
	}
	return lines(told{priced, "Prices without a currency: %d rows. They are left out until you choose it."},
		told{years, "No model year: %d. They draw no comparables until it is filled in."},
		told{models, "No make and model: %d. They draw no comparables until both are filled in."},
		told{readings, "No odometer: %d. Their price spreads wider."}, told{days, "No sale day: %d. State it above, or on each lot."})
}
