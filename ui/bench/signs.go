package bench

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// signs are the words of a list of signs: its heading with a line of help, and what one of them is called.
type signs struct{ title, help, noun string }

// buildSigns adds the signs of a list, with a button for one more.
func buildSigns[T any](e *editor[T], words signs, at func(*T) *[]lot.Sign) {
	e.body.Add(form.LongHeading(words.title, words.help))
	for i := range *at(&e.entry) {
		buildSign(e, fmt.Sprintf("%s %d", form.Sentence(words.noun), i+1), func(x *T) *lot.Sign { return item(*at(x), i) })
		e.button("Remove this "+words.noun, func(x *T) { *at(x) = slices.Delete(*at(x), i, i+1) })
	}
	e.button("Add "+article(words.noun), func(x *T) { *at(x) = append(*at(x), lot.Sign{}) })
}

// article returns a noun behind "a" or "an".
func article(noun string) string {
	if strings.ContainsRune("aeiou", rune(noun[0])) {
		return "an " + noun
	}
	return "a " + noun
}

// buildSign adds the fields of one sign.
func buildSign[T any](e *editor[T], label string, at func(*T) *lot.Sign) {
	e.body.Add(form.Label(label))
	form.Sign(form.Within(e.rows(), at))
}

// item returns an entry of a list, a blank one where the list has it no more and its fields are still to be laid out anew.
func item[V any](list []V, i int) *V {
	if i < len(list) {
		return &list[i]
	}
	return new(V)
}

// factors is the kind of a field for a factor; empty changes nothing.
var factors = widgets.Spec{Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(1000)}

// buildNever adds what rules an entry out.
func buildNever[T any](e *editor[T], at func(*T) *[]lot.Sign) {
	buildSigns(e, signs{"What rules it out", "Any one exception is enough: such a vehicle doesn't have the part.", "exception"}, at)
}

// buildMoves adds how the lot changes the chance.
func buildMoves[T any](e *editor[T], at func(*T) *[]lot.Move) {
	e.body.Add(form.LongHeading("What moves its chance",
		"Where it applies the odds are multiplied: 2 turns even odds into two to one, 0.5 into one to two."))
	for i := range *at(&e.entry) {
		e.rows().Number("Odds times", factors, func(x *T) any { return &item(*at(x), i).Odds }).SetRoom(0)
		buildSign(e, fmt.Sprintf("Move %d, where", i+1), func(x *T) *lot.Sign { return &item(*at(x), i).When })
		e.button("Remove this move", func(x *T) { *at(x) = slices.Delete(*at(x), i, i+1) })
	}
	e.button("Add a move", func(x *T) { *at(x) = append(*at(x), lot.Move{Odds: 1}) })
}

// scaleHelp is said over what changes costs.
const scaleHelp = "Where it applies money and hours are multiplied. An empty factor changes nothing."

// buildScales adds how the lot changes what an entry costs.
func buildScales[T any](e *editor[T], title string, at func(*T) *[]lot.Scale) {
	e.body.Add(form.LongHeading(title, scaleHelp))
	for i := range *at(&e.entry) {
		f := e.rows()
		of := func(x *T) *lot.Scale { return item(*at(x), i) }
		f.Number("Parts times", factors, func(x *T) any { return &of(x).Parts }).SetRoom(0)
		f.Number("Materials times", factors, func(x *T) any { return &of(x).Materials }).SetRoom(0)
		f.Number("Hours times", factors, func(x *T) any { return &of(x).Hours }).SetRoom(0)
		buildSign(e, fmt.Sprintf("Scale %d, where", i+1), func(x *T) *lot.Sign { return &of(x).When })
		e.button("Remove this scale", func(x *T) { *at(x) = slices.Delete(*at(x), i, i+1) })
	}
	e.button("Add a scale", func(x *T) { *at(x) = append(*at(x), lot.Scale{}) })
}
