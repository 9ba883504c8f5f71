package view

import (
	"slices"
	"strconv"
	"strings"

	"walkline/ui/damage"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// CatalogueEntry is one entry of a catalogue as the Bench lists it.
type CatalogueEntry[T any] struct {
	Item  T
	Yours bool // the shop's own
	Added bool // the starter has none of this id
}

// Catalogue returns the entries of a catalogue, the shop's own in the place of the starter's, that have every word of the search
// in what they are called.
func Catalogue[T any](starter, own []T, id, called func(T) string, search string) []CatalogueEntry[T] {
	var all []CatalogueEntry[T]
	at := map[string]int{}
	for _, e := range starter {
		at[id(e)] = len(all)
		all = append(all, CatalogueEntry[T]{Item: e})
	}
	for _, e := range own {
		if i, there := at[id(e)]; there {
			all[i] = CatalogueEntry[T]{e, true, false}
		} else {
			all = append(all, CatalogueEntry[T]{e, true, true})
		}
	}
	return slices.DeleteFunc(all, func(s CatalogueEntry[T]) bool { return !contains([]string{called(s.Item)}, search) })
}

// ShortWhose is whose an entry is, in a table.
func ShortWhose(yours bool) string {
	if yours {
		return "yours"
	}
	return "starter"
}

// AssemblyColumns are the columns of the assemblies on the Bench.
var AssemblyColumns = []Column{{"Assembly", false, 170}, {"Brings", true, 60}, {"Whose", false, 60}}

// AssemblyRow returns the cells of an assembly: its share of the clean resale price, or its price.
func AssemblyRow(s CatalogueEntry[donor.Assembly]) []string {
	brings := strconv.FormatFloat(100*s.Item.Share.Likely, 'f', 1, 64) + " %"
	if s.Item.Share.Zero() {
		brings = strconv.FormatFloat(s.Item.Price.Likely, 'f', 0, 64)
	}
	return []string{s.Item.Name, brings, ShortWhose(s.Yours)}
}

// JobColumns are the columns of the repair jobs on the Bench.
var JobColumns = []Column{{"Work", false, 150}, {"Area", false, 80}, {"Whose", false, 60}}

// JobRow returns the cells of a job.
func JobRow(s CatalogueEntry[repair.Job]) []string {
	return []string{s.Item.Job, damage.Short(s.Item.Area), ShortWhose(s.Yours)}
}

// RiskEntryColumns are the columns of the hidden risks on the Bench.
var RiskEntryColumns = []Column{{"Hidden damage", false, 150}, {"Chance", true, 58}, {"Whose", false, 60}}

// RiskEntryRow returns the cells of a risk.
func RiskEntryRow(s CatalogueEntry[hidden.Entry]) []string {
	chance := ""
	if b := s.Item.Chance; b.A+b.B > 0 {
		chance = Percent(b.Mean())
	}
	return []string{s.Item.Name, chance, ShortWhose(s.Yours)}
}

// FindingColumns are the columns of the findings on the Bench.
var FindingColumns = []Column{{"To look at", false, 150}, {"Minutes", true, 60}, {"Whose", false, 60}}

// FindingRow returns the cells of a finding.
func FindingRow(s CatalogueEntry[hidden.Finding]) []string {
	return []string{s.Item.Text, strconv.FormatFloat(s.Item.Minutes, 'f', -1, 64), ShortWhose(s.Yours)}
}

// EntryFaults says why entries of the shop's are not used: those whose faults are under a key that begins so.
func EntryFaults(faults []valuation.Fault, under string) []string {
	var words []string
	for _, f := range faults {
		if strings.HasPrefix(f.Key, under) {
			words = append(words, "Not used as long as this stands: "+Fault(f))
		}
	}
	return words
}

// SignWords says what one reason for a job or a risk asks for.
func SignWords(s lot.Sign) string {
	var parts []string
	for _, list := range [][]string{areasInWords(s.Areas), s.Extents, s.Depths} {
		if len(list) > 0 {
			parts = append(parts, strings.Join(list, " or "))
		}
	}
	for _, a := range s.Lists(&lot.Lot{}) {
		words := strings.Join(AllWords(a.Want), " or ")
		switch {
		case words == "":
		case a.Key == "loss" || a.Key == "airbags_deployed" || a.Key == "condition":
			parts = append(parts, words)
		default:
			parts = append(parts, Words(a.Key)+" "+words)
		}
	}
	for i, n := range []int{s.MinAge, s.MinMiles, s.MinSoak} {
		if n > 0 {
			parts = append(parts, "at least "+strconv.Itoa(n)+" "+[]string{"years old", "miles", "hours under water"}[i])
		}
	}
	if len(parts) == 0 {
		return "nothing yet"
	}
	return strings.Join(parts, "; ")
}

func areasInWords(areas []string) []string {
	out := make([]string, len(areas))
	for i, a := range areas {
		out[i] = damage.Area(a)
	}
	return out
}
