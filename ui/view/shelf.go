package view

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/resale"
)

// ComparableField is one field of a comparable that can be typed: its name in tables, and its title.
type ComparableField struct{ Name, Title string }

// ComparableFields are all of them.
var ComparableFields = []ComparableField{{"price", "Price"}, {"kind", "Asked or sold"}, {"date", "Date"}, {"model_year", "Year"},
	{"make", "Make"}, {"model", "Model"}, {"trim", "Trim"}, {"mileage", "Mileage"}, {"unit", "mi or km"}, {"title", "Title"},
	{"distance", "Miles away"}, {"upkeep", "Upkeep"}, {"note", "Note"}}

// ComparableCells returns the fields of a comparable as they are typed.
func ComparableCells(r resale.Row, currency string) map[string]string {
	figure := func(x *float64) string {
		if x == nil {
			return ""
		}
		return strconv.FormatFloat(*x, 'f', -1, 64)
	}
	cells := map[string]string{"price": NewPurse(currency).Exact(r.Price), "kind": r.Kind, "date": Day(r.Date),
		"model_year": year(r.ModelYear),
		"make":       r.Make, "model": r.Model, "trim": r.Trim, "mileage": figure(r.Mileage), "unit": r.Unit, "title": r.Title,
		"upkeep": typedUpkeep(r), "note": r.Note}
	if r.DistanceMi != nil {
		cells["distance"] = strconv.FormatFloat(*r.DistanceMi, 'f', 0, 64)
	}
	return cells
}

// SourceOf returns where a comparable came from, in words.
func SourceOf(c book.Comparable) string {
	switch {
	case c.From != "":
		return c.From
	case c.Row.Source != "":
		return c.Row.Source
	}
	return "typed"
}

// Sources returns every source of the shelf, in order.
func Sources(s desk.State) []string {
	seen := map[string]bool{}
	var all []string
	for _, c := range s.Shelf {
		if from := SourceOf(c); !seen[from] {
			seen[from] = true
			all = append(all, from)
		}
	}
	slices.Sort(all)
	return all
}

// ShelfWords says what lies on the shelf, and what it teaches.
func ShelfWords(s desk.State) string {
	if len(s.Shelf) == 0 {
		return "Nothing lies here yet. What you import for a lot comes here too, and serves the next lot of its model."
	}
	models := map[string]bool{}
	for _, c := range s.Shelf {
		models[strings.ToLower(strings.TrimSpace(c.Row.Make+" "+c.Row.Model))] = true
	}
	words := fmt.Sprintf("%s of %s.", Count(len(s.Shelf), "row"), Count(len(models), "model"))
	for _, m := range s.Market.Markets {
		words += " " + marketWords(m)
	}
	if len(s.Market.Markets) == 0 {
		words += " Five models with 8 rows each, or more of them, teach how your market falls with age and mileage."
	}
	return strings.TrimSpace(words + " " + soldWords(s))
}

// soldWords says what vehicles that were seen asked for and later sold teach, of all currencies together: a share has none.
func soldWords(s desk.State) string {
	var pairs []resale.Pair
	kinds := map[bool]bool{}
	for _, c := range s.Shelf {
		kinds[c.Row.Kind == "sold"] = true
		if p, known := c.Sold(); known {
			pairs = append(pairs, p)
		}
	}
	learned, enough := resale.LearnSold(pairs, valuation.Defaults().Resale.AskedToSold)
	percent := func(x float64) string { return strconv.FormatFloat(100*x, 'f', 1, 64) + " %" }
	switch {
	case enough:
		return fmt.Sprintf("%s went from asked to sold, at %s of asking. Drawn towards the starter value that says %s, from %s to %s: "+
			"enter it under Resale, Sold price.", Count(learned.Pairs, "vehicle"), percent(learned.Seen), percent(learned.Share.Likely),
			percent(learned.Share.Low), percent(learned.Share.High))
	case len(kinds) == 2:
		return "Asked and sold prices of different vehicles do not teach what haggling takes off: what sells is not what stays on offer. Three " +
			"vehicles seen asked for and then sold do."
	}
	return ""
}

// marketWords says what the rows of one currency teach.
func marketWords(m resale.Market) string {
	percent := func(x float64) string { return strconv.FormatFloat(100*x, 'f', 1, 64) + " %" }
	return fmt.Sprintf("In %s, %s teach: %s a year of age, %s for 10,000 miles; single prices scatter by %s.", m.Currency,
		Count(m.Models, "model"), percent(m.Effects["age"].Mean), percent(m.Effects["mileage/linear"].Mean), percent(m.Residual.SD))
}

// typedUpkeep writes a row's upkeep as it may be typed: the word, or the number where it lies between two.
func typedUpkeep(r resale.Row) string {
	if r.Condition != nil && *r.Condition != math.Trunc(*r.Condition) {
		return strconv.FormatFloat(*r.Condition, 'f', -1, 64)
	}
	return upkeep(r)
}
