package live

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
)

// Page is what is looked at while a lot is bid for.
type Page struct {
	do    func(desk.Action)
	pad   *pad
	state desk.State
	seen  view.Live // what the state says

	lot, sale            *big
	currentName, current *big
	limitName, limit     *big
	steps                *big
	at, plan             *big
	pays, binds          *widget.RichText
	oddNames, oddFigures [6]*big
	body                 fyne.CanvasObject

	sights                     *sights
	title, figures, odds, caps fyne.CanvasObject
	rows                       *fyne.Container // of those
}

// Largest text sizes of the page, in points; all shrink to their room.
const (
	titleSize  = 30
	nameSize   = 24
	keySize    = 16
	figureSize = 62
	hugeSize   = 260
)

// New returns the page, not yet showing a lot.
func New(do func(desk.Action), by Sights) *Page {
	p := &Page{do: do, lot: newBig(titleSize), sale: newBig(nameSize), currentName: newBig(nameSize), current: newBig(hugeSize),
		limitName: newBig(nameSize), limit: newBig(hugeSize), steps: newBig(hugeSize), at: newBig(nameSize), plan: newBig(nameSize),
		pays: note(), binds: note(), sights: newSights(by)}
	p.lot.strong, p.current.strong, p.limit.strong, p.steps.strong = true, true, true, true
	p.sale.right, p.plan.right = true, true
	p.pad = newPad(p)
	p.title = beside([]float32{0.62, 0.38}, p.lot, p.sale)
	left := under([]float32{0.12, 0.68, 0.20}, p.currentName, p.current, p.pays)
	right := under([]float32{0.12, 0.30, 0.36, 0.22}, p.limitName, p.limit, p.steps, p.binds)
	var cells []fyne.CanvasObject
	for i := range p.oddNames {
		p.oddNames[i], p.oddFigures[i] = newBig(nameSize), newBig(figureSize)
		p.oddFigures[i].strong = true
		cells = append(cells, under([]float32{0.34, 0.66}, p.oddNames[i], p.oddFigures[i]))
	}
	p.odds = under([]float32{0.24, 0.76}, beside([]float32{0.35, 0.65}, p.at, p.plan), beside(alike(len(cells)), cells...))
	p.figures, p.caps, p.rows = beside([]float32{0.58, 0.42}, left, right), p.keys(), container.NewWithoutLayout()
	p.lay()
	p.pad.content = container.New(layout.NewCustomPaddedLayout(theme.Space, theme.Space, theme.Broad, theme.Broad), p.rows)
	p.body = p.pad
	return p
}

// keys lists what the keys do, to be tapped as well.
func (p *Page) keys() fyne.CanvasObject {
	var caps []fyne.CanvasObject
	var parts []float32
	for _, k := range p.pad.commands() {
		parts = append(parts, capRoom+float32(len(k.words)))
		caps = append(caps, newKeycap(k.cap, k.words, func() { k.do(); p.pad.takeKeyboard() }))
	}
	return beside(shares(parts), caps...)
}

// capRoom is the room of a key itself, in letters of the words beside it.
const capRoom = 9

// shares returns parts as shares of their sum.
func shares(parts []float32) []float32 {
	sum := float32(0)
	for _, part := range parts {
		sum += part
	}
	for i := range parts {
		parts[i] /= sum
	}
	return parts
}

// alike returns n equal shares.
func alike(n int) []float32 {
	parts := make([]float32, n)
	for i := range parts {
		parts[i] = 1 / float32(n)
	}
	return parts
}

// note returns words in black that wrap.
func note() *widget.RichText {
	t := widget.NewRichText()
	t.Wrapping = fyne.TextWrapWord
	return t
}

// manyWords is the length from which words are smaller, so that they keep their room.
const manyWords = 72

func write(t *widget.RichText, words string, strong bool) {
	size := theme.SizeHeading
	if len(words) > manyWords {
		size = theme.SizeBody
	}
	style := widget.RichTextStyle{SizeName: size, ColorName: theme.ColorLiveForeground, TextStyle: fyne.TextStyle{Bold: strong}}
	t.Segments = []widget.RichTextSegment{&widget.TextSegment{Text: words, Style: style}}
	t.Refresh()
}

// Object returns the page to be laid out.
func (p *Page) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard.
func (p *Page) First() fyne.Focusable { return p.pad }

// Render writes the open lot into the page.
func (p *Page) Render(s desk.State) {
	if s.Open == nil {
		return
	}
	if p.state.Open == nil || p.state.Open.ID != s.Open.ID {
		p.pad.clear()
	}
	before := p.state.Open
	p.state = s
	p.seen = view.NewLive(s)
	v := p.seen
	p.limitName.set(v.Name + ", " + p.currency() + v.Beside)
	p.lot.set(v.Lot)
	p.sale.set(saleWords(v))
	p.limit.set(v.Limit)
	write(p.binds, v.Binds, v.Stop)
	p.at.set(v.At)
	p.plan.set(besides(v, len(p.oddNames)))
	for i, o := range v.Odds[:min(len(v.Odds), len(p.oddNames))] {
		p.oddNames[i].set(o.Name)
		p.oddFigures[i].set(o.Figure)
		p.oddFigures[i].setInverse(o.Bad)
	}
	p.renderCurrent()
	p.look(before, *s.Open)
}

// look shows the sights of a lot that comes up, and hides them for a while when the bidding has moved.
func (p *Page) look(before *desk.Open, now desk.Open) {
	p.sights.of(now, p.lay)
	switch {
	case before != nil && before.ID == now.ID && before.Current != now.Current:
		p.moved()
	case before == nil || before.ID != now.ID:
		p.still()
	default:
		p.lay()
	}
}

// besides says the plan, and the odds that are words and have no cell of their own among the first n.
func besides(v view.Live, n int) string {
	words := v.Plan
	for _, o := range v.Odds[min(len(v.Odds), n):] {
		words = strings.TrimSpace(words + " Odds of winning go by " + o.Figure + ".")
	}
	return words
}

func saleWords(v view.Live) string {
	if v.State == "" {
		return v.Sale
	}
	return v.State
}

// renderCurrent writes where the bidding stands, or what is being typed.
func (p *Page) renderCurrent() {
	if p.state.Open == nil {
		return
	}
	v := p.seen
	typed, words, wrong := p.pad.reading()
	p.steps.setInverse(v.Stop)
	p.steps.set(v.Steps)
	if typed != "" && !v.Refused {
		p.steps.set("") // the steps are those of the current bid, not of what stands there now
	}
	if typed == "" && p.state.Open.Current == 0 {
		p.current.setShape(figureSize, false)
	} else {
		p.current.setShape(hugeSize, true)
	}
	if !p.pad.focused {
		p.currentName.set("The keys are elsewhere: click here, or press Tab")
		p.current.set(v.Current)
		write(p.pays, v.Pays, v.Doubt)
		return
	}
	if typed == "" && !p.pad.calls {
		p.currentName.set("Current bid, " + p.currency() + ": arrow keys, or type and press Enter")
		p.current.set(v.Current)
		write(p.pays, v.Pays, v.Doubt)
		if words != "" {
			write(p.pays, words, wrong)
		}
		return
	}
	name := "Enter sets it, Esc cancels"
	if p.pad.calls {
		name = "Go to lot number: Enter goes there, Esc cancels"
	}
	p.currentName.set(name)
	p.current.set(typed)
	write(p.pays, words, wrong)
}

func (p *Page) currency() string {
	if p.state.Open == nil {
		return ""
	}
	return p.state.Open.Case.Currency
}

// Facts returns what the page shows, in words.
func (p *Page) Facts() []string { return p.seen.Facts() }
