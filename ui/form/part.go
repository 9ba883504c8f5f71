package form

import (
	"slices"

	"fyne.io/fyne/v2"

	"walkline/ui/view"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Parts lays out the parts of a repair line.
type Parts struct {
	Line   Line
	Rows   func() *Of[repair.Line]                       // adds a form to the page
	Add    func(fyne.CanvasObject)                       // adds an object to the page
	Button func(words string, change func(*repair.Line)) // adds a button that edits
}

// sources are the codes for where a part comes from.
var sources = []string{"new_maker", "new_aftermarket", "used", "donor", "repaired", "made"}

// PartsShape names the fields that parts need: when it changes they are laid out anew.
func PartsShape(parts []repair.Part) string {
	var s string
	for _, p := range parts {
		s += "|"
		if p.Fallback != nil {
			s += "fallback "
		}
		for _, o := range p.Options {
			s += o.Source + ","
		}
	}
	return s
}

// Build lays out the parts and a button for one more.
func (p Parts) Build(parts []repair.Part) {
	for i, part := range parts {
		p.part(part, i)
	}
	p.Button("Add a part", func(l *repair.Line) {
		l.Parts = append(l.Parts, repair.Part{Name: "part", Options: []repair.Option{{Source: "used"}},
			Fallback: &repair.Fallback{Price: prob.Certain(0)}})
	})
}

// part lays out one part: its name, its sources, what happens when none has it.
func (p Parts) part(part repair.Part, i int) {
	p.Add(LongHeading("Part", "The cheapest source that has it is taken."))
	f := p.Rows()
	at := func(l *repair.Line) *repair.Part { return partOf(l, i) }
	f.Text("Name", func(l *repair.Line) *string { return &at(l).Name })
	f.tick("Waiting for it", "holds the build up", func(l repair.Line) bool { c := at(&l).Critical; return c == nil || *c },
		func(l *repair.Line, on bool) { at(l).Critical = &on })
	if part.InHand() {
		p.Add(Small("In hand: no price, no freight, no wait, no extra hours. The other sources are not asked."))
		p.buttons(part, at, i)
		return
	}
	for k, o := range part.Options {
		p.Line.Option(f, i, k, o.Source)
		p.Line.OptionMore(f, i, k)
		if p.Line.Quoted != nil {
			p.Line.Quote(f, i, k)
		}
	}
	if part.Fallback != nil {
		p.Line.Fallback(f, i)
	}
	p.buttons(part, at, i)
}

// hand adds the button that says whether the part is in hand; a catalogue has no such parts.
func (p Parts) hand(part repair.Part, at func(*repair.Line) *repair.Part) {
	words := "In hand: " + part.Name
	if part.InHand() {
		words = "Not in hand: " + part.Name
	}
	p.Button(words, func(l *repair.Line) { at(l).Hold(!part.InHand()) })
}

// buttons add and take out the sources of a part, and the part.
func (p Parts) buttons(part repair.Part, at func(*repair.Line) *repair.Part, i int) {
	if p.Line.Quoted != nil {
		p.hand(part, at)
	}
	for _, source := range sources {
		if part.InHand() {
			break
		}
		k := slices.IndexFunc(part.Options, func(o repair.Option) bool { return o.Source == source })
		if k < 0 {
			p.Button("Add a source: "+view.SourceWords(source),
				func(l *repair.Line) { at(l).Options = append(at(l).Options, repair.Option{Source: source}) })
		} else {
			p.Button("Remove the source: "+view.SourceWords(source), func(l *repair.Line) { at(l).Options = slices.Delete(at(l).Options, k, k+1) })
		}
	}
	p.Button("Remove this part", func(l *repair.Line) { l.Parts = slices.Delete(l.Parts, i, i+1) })
}
