package listing

import (
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/valuation/lot"
)

// titleWords are words of which a phrase that means a title has one, and strong are brands that mean one by themselves.
var (
	titleWords = cell.SetOf("title|titled|titel|titre|titulo|tytul|titolo|certificate|branded|brand|papers")
	strong     = []string{"salvage", "rebuilt", "junk", "parts only", "dismantled", "reconstructed"}
)

func findTitle(r *reading, w *words) {
	w.takeSaid(5, func(s string, before, behind words) bool {
		named := says(titleWords, s) || strings.EqualFold(s, "bill of sale")
		return named && !before.deny() && !past.Has(before.last()) && r.titled(s, false)
	})
}

// findBrand takes a word that means a title by itself where nothing else is said, or at the end of the vehicle's name: an engine is
// rebuilt, too, and parts come from a salvage yard.
func findBrand(r *reading, w *words) {
	w.takeSaid(4, func(s string, before, behind words) bool {
		ends := r.names(before) && len(behind.telling()) == 0 && !says(rebuilt, s)
		return (ends || len(slices.Concat(before, behind).telling()) == 0) && r.titled(s, false)
	})
}

// Words that put a title into the past, and brands that are said of parts as well.
var (
	past    = cell.SetOf("was|were|formerly|previously|once|ex")
	rebuilt = cell.SetOf("rebuilt|rebuild|reconstructed|restored")
)

// titled takes the words of a title document; told says that nothing else can be meant.
func (r *reading) titled(text string, told bool) bool {
	named := told || slices.ContainsFunc(cell.Words(text), func(w string) bool { return titleWords[w] })
	brand, known := cell.Title(text)
	if !told && len(text) < 3 {
		return false // the S of a trim
	}
	switch paper := lot.ReadPaper(text); {
	case known && (named || slices.Contains(strong, brand)) && !slices.Contains(lot.Documents, brand):
		r.Lot.Title.Brands = append(r.Lot.Title.Brands, brand)
		r.fact("Brands on it", brand)
		return true
	case known && (named || slices.Contains(strong, brand)):
		r.Lot.Title.Document = brand
	case strings.EqualFold(text, "bill of sale"):
		r.Lot.Title.Document = "bill of sale"
		r.Facts = slices.DeleteFunc(r.Facts, func(f Fact) bool { return f == Fact{Field: "Title document", Words: "none"} })
	case paper == lot.Untitled && named && r.Lot.Title.Document == "bill of sale":
		return true // it is sold on that instead
	case paper == lot.Untitled && named:
		r.Lot.Title.Document = "none"
	case paper == lot.Unknown && named:
		r.Lot.Title.Document = lot.NotYetKnown
	default:
		return false
	}
	r.fact("Title document", r.Lot.Title.Document)
	return true
}
