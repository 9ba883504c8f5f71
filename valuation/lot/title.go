package lot

import (
	"slices"
	"strings"
	"unicode"
)

// Paper is what the words of a title document, or of a brand on it, come to.
type Paper int

// The kinds of paper.
const (
	NoPaper  Paper = iota // nothing is entered
	Unknown               // said to be not yet known
	Known                 // words that the vocabulary knows, none of which forbids the road
	Dead                  // parts, scrap, export, dismantling, not rebuildable: no such vehicle goes back on the road
	Untitled              // no title, or a bill of sale in its place
	Unheard               // words that nobody here knows
)

// NotYetKnown is the word of a title document that is not known yet; others are read too, see [ReadPaper].
const NotYetKnown = "not yet known"

// Documents are the title documents to choose from. Source: the trade's words and AAMVA D20's.
var Documents = []string{"clear", "salvage", "rebuilt", "junk", "parts only", "dismantled", "flood damage",
	"certificate of destruction", "bill of sale", "none", NotYetKnown}

// ReadPaper returns what the words of a title come to, in whatever order and case they stand. A stop too many is read and set
// right, one too few is money lost: a word that forbids the road counts whatever stands beside it.
// Source of the wording: AAMVA D20 as published in NIEM 6.0 ([Brands]); the other words are common practice, no source.
func ReadPaper(words string) Paper {
	brand, branded := BrandOf(words)
	said := wordsOf(words)
	switch {
	case len(said) == 0:
		return NoPaper
	case branded && slices.Contains(deadCodes, brand.Code) || dead(said):
		return Dead
	case untitled(said):
		return Untitled
	case notKnown(said):
		return Unknown
	case branded || !slices.ContainsFunc(said, func(w string) bool { return !slices.Contains(paperWords, w) }):
		return Known
	}
	return Unheard
}

// wordsOf returns the words in small letters, without what stands between them.
func wordsOf(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
}

// deadCodes are the brands under which a vehicle is parts or scrap: dismantled, junk, parts only.
var deadCodes = []string{"07", "08", "35"}

// deadStems begin the words that forbid the road by themselves; deadWords are whole ones.
var (
	deadStems = []string{"scrap", "dismant", "destr", "export", "crush"}
	deadWords = []string{"junk", "junked", "junking", "parts", "part", "hulk", "irreparable", "nonreparable"}
)

// What is denied: a word of the first list, with one of the second, or with "be" and one of the third ("may not be rebuilt").
var (
	denials = []string{"non", "not", "never", "cannot", "no", "un"}
	mending = []string{"repairable", "rebuildable", "reparable", "repair", "rebuild", "registrable", "roadworthy", "titleable"}
	mended  = []string{"rebuilt", "repaired", "registered", "titled", "retitled"}
)

func dead(said []string) bool {
	for _, w := range said {
		if slices.ContainsFunc(deadStems, func(stem string) bool { return strings.HasPrefix(w, stem) }) || slices.Contains(deadWords, w) {
			return true
		}
		for _, no := range []string{"non", "un", "ir", "in"} {
			if rest, ok := strings.CutPrefix(w, no); ok && slices.Contains(mending, rest) {
				return true
			}
		}
	}
	has := func(of []string) bool {
		return slices.ContainsFunc(said, func(w string) bool { return slices.Contains(of, w) })
	}
	return has(denials) && (has(mending) || slices.Contains(said, "be") && has(mended))
}

func untitled(said []string) bool {
	has := func(w string) bool { return slices.Contains(said, w) }
	paper := has("title") || has("titles") || has("document") || has("documents") || has("paper") || has("papers") || has("paperwork")
	return has("bill") && has("sale") || slices.Equal(said, []string{"none"}) || has("untitled") ||
		paper && (has("no") || has("without") || has("missing") || has("lost") || has("none") || has("absent"))
}

func notKnown(said []string) bool {
	plain := strings.Join(said, " ")
	return plain == "unknown" || plain == NotYetKnown || plain == "not known" || plain == "title unknown" || plain == "title not yet known"
}

// paperWords are the words of documents that the trade uses (common practice, no source) and that forbid nothing.
var paperWords = strings.Fields(`a and certificate of title vehicle with damage damaged clear clean original duplicate regular ` +
	`standard salvage
	salvaged rebuilt rebuildable repairable reconstructed refurbished remanufactured restored assembled prior previous
	previously formerly flood water fire burn hail theft recovered recovery stolen collision wreck wrecked structural
	vandalism salt lemon law buyback buy back manufacturer warranty return total totaled totalled loss insurance owner
	retained branded brand`)
