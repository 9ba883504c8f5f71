package listing

import (
	"cmp"
	"fmt"
	"strings"

	"walkline/store/cell"
	"walkline/store/runlist"
	"walkline/valuation/lot"
)

// byLabel takes a value whose label says what it is, and reports whether it was understood.
func (r *reading) byLabel(p piece) bool {
	before := len(r.Facts) + len(r.Left)
	switch p.field {
	case "model_year", "first_registration":
		r.year(p.text)
	case "sale_date":
		return r.sells(p.text)
	case "odometer":
		r.reads(p)
	case "odometer_status":
		r.statement(cmp.Or(cell.StatusOf(p.text), cell.StatusByLetter(p.text)))
	case "loss":
		if !denies(p.text) {
			r.lost(runlist.Losses(p.text))
		}
	case "areas":
		r.hurt(p.text)
		if !denies(p.text) {
			r.lost(runlist.Told(p.text))
		}
	case "keys":
		if has, says := cell.YesNo(p.text); says {
			r.hasKeys(has)
		}
	case "value_before":
		r.worth(p.text)
	case "note", "unit", "currency", "repair_estimate", "hammer":
	default:
		r.byWord(p)
	}
	return len(r.Facts)+len(r.Left) > before
}

// byWord takes a value that is one word or phrase.
func (r *reading) byWord(p piece) {
	texts := map[string]struct {
		field string
		at    *string
	}{"number": {"Lot number", &r.Lot.Number}, "sale": {"Sale", &r.Lot.Sale}, "make": {"Make", &r.Lot.Make},
		"model": {"Model", &r.Lot.Model}, "trim": {"Trim", &r.Lot.Trim}, "issued_in": {"Issued in", &r.Lot.Title.IssuedIn}}
	if t, plainText := texts[p.field]; plainText {
		*t.at = p.text
		r.fact(t.field, p.text)
		return
	}
	w := words(strings.Fields(p.text))
	switch p.field {
	case "vin":
		findVIN(r, &w)
	case "document":
		if name, more, cut := strings.Cut(p.text, "("); !r.titled(p.text, true) && cut && r.titled(strings.TrimSpace(name), true) {
			r.Left = append(r.Left, p.label+": ("+more)
		}
	case "condition":
		if code, known := runlist.Runs(p.text); known {
			r.runs(code)
		}
	case "engine":
		r.phrase(&w, "Powertrain", powerWords, &r.Powertrain, labelledPhrase)
		findEngine(r, &w)
	case "driven":
		r.phrase(&w, "Driven wheels", drivenWords, &r.Driven, labelledPhrase)
	case "airbags":
		if r.blown(p.text + " airbags deployed") {
			return
		}
		if yes, said := cell.YesNo(p.text); yes && said || says(blownWords, p.text) && !says(negations, p.text) {
			r.bagsUnplaced(p.label + ": " + p.text)
		}
	case "doors":
		if len(w) == 1 && len(w[0]) == 1 {
			w = append(w, "doors")
		}
		findDoors(r, &w)
		if w = w.telling(); len(w) > 0 {
			r.Left = append(r.Left, p.label+": "+strings.Join(w, " "))
		}
	case "vehicle":
		r.vehicle(p.text)
	}
}

// reads takes an odometer reading; its label may name the unit. A reading that is not taken is left, whatever is stated of it.
func (r *reading) reads(p piece) {
	l, err := cell.ReadLength(p.text, 0)
	if err != nil {
		return
	}
	for _, word := range cell.Words(p.label) {
		if l.Unit == "" {
			l.Unit = cell.UnitOf(word)
		}
	}
	if l.Known && r.odometer(l) {
		return
	}
	r.statement(l.Status)
	if l.Known {
		why := fmt.Sprintf(" (a reading is a whole number up to %d)", lot.MostMileage)
		if l.Unit == "" {
			why = " (in miles or kilometers?)"
		}
		r.Left = append(r.Left, p.label+": "+p.text+why)
	}
}

func (r *reading) year(text string) {
	if year := cell.YearIn(text); year >= lot.FirstModelYear && year <= lot.LastModelYear {
		r.Lot.ModelYear = year
		r.fact("Model year", text)
	}
}

// plain writes a code in words.
func plain(code string) string { return strings.ReplaceAll(code, "_", " ") }
