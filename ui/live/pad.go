package live

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

var (
	_ fyne.Focusable = (*pad)(nil)
	_ fyne.Tappable  = (*pad)(nil)
)

// pad is the page as one thing that takes the keyboard.
type pad struct {
	widget.BaseWidget
	page    *Page
	content fyne.CanvasObject
	typed   string // a price on its way, or a lot's number
	calls   bool   // a lot's number is typed
	answer  string // why a key did nothing; empty: it did
	focused bool
}

func newPad(p *Page) *pad {
	d := &pad{page: p}
	d.ExtendBaseWidget(d)
	return d
}

// command is what one key does.
type command struct {
	cap, words string
	do         func()
}

// commands lists the keys of the page.
func (d *pad) commands() []command {
	return []command{
		{"↑", "step up", func() { d.step(+1) }},
		{"↓", "step down", func() { d.step(-1) }},
		{"W", "won at this bid", func() { d.record(lot.Won) }},
		{"L", "lost at this bid", func() { d.record(lot.Lost) }},
		{"X", "withdrawn or passed", func() { d.record(lot.Passed) }},
		{"N", "next lot", func() { d.nextLot(+1) }},
		{"P", "previous lot", func() { d.nextLot(-1) }},
		{"G", "go to lot no.", d.callLot},
	}
}

// price returns what was typed as a price, and whether it is one.
func (d *pad) price() (money.Amount, error) {
	p := view.NewPurse(d.page.currency())
	n, err := widgets.Parse(d.typed, widgets.Spec{Kind: widgets.Money, Unit: p.Code, Digits: p.Digits, Least: nothing})
	if err != nil {
		return 0, err
	}
	return money.Amount(n.Minor(p.Digits)), nil
}

var nothing = widgets.Bound(0)

// reading returns what is typed with what is understood of it, or what is wrong.
func (d *pad) reading() (typed, words string, wrong bool) {
	switch {
	case d.calls && d.answer == "":
		return d.typed, "Type the number of the lot.", false
	case d.typed == "" || d.answer != "":
		return d.typed, d.answer, d.answer != ""
	}
	b, err := d.price()
	if err != nil {
		return d.typed, "! " + err.Error(), true
	}
	return d.typed, "= " + view.NewPurse(d.page.currency()).Show(b), false
}

// show writes the page again after the pad changed.
func (d *pad) show() { d.page.renderCurrent() }

func (d *pad) clear() { d.typed, d.answer, d.calls = "", "", false }

// refuse says why a key does nothing.
func (d *pad) refuse(reason string) {
	d.answer = reason
	d.show()
}

// enter takes what was typed as where the bidding stands, or as the number of the lot to go to.
func (d *pad) enter() {
	if d.typed == "" {
		return
	}
	if number := d.typed; d.calls {
		d.clear()
		d.page.do(desk.CallLot(number))
		d.show()
		return
	}
	b, err := d.price()
	if err != nil {
		d.refuse("! " + err.Error())
		return
	}
	d.clear()
	d.call(b)
}

// call shows where the bidding stands.
func (d *pad) call(b money.Amount) {
	if o := d.page.state.Open; o != nil && b != o.Current {
		d.page.do(desk.Call(b))
		return
	}
	d.show()
}

// step goes up or down by the sale's own bid steps.
func (d *pad) step(by int) {
	if d.page.state.Open == nil {
		return
	}
	steps := view.Steps(*d.page.state.Open)
	if len(steps) == 0 {
		d.refuse("The bid steps of this sale are not entered: see Costs on the Worksheet. A price can be typed.")
		return
	}
	d.clear()
	d.call(view.Raised(steps, d.page.state.Open.Current, by))
}

// record keeps what became of the lot, unless a price is still being typed.
func (d *pad) record(state lot.State) {
	if d.typed != "" {
		d.refuse("Press Enter first: the price that is typed does not count yet.")
		return
	}
	d.clear()
	d.page.do(desk.RecordResult(state))
}

// callLot has the next thing that is typed be a lot's number.
func (d *pad) callLot() {
	d.clear()
	d.calls = true
	d.show()
	d.page.moved()
}

func (d *pad) nextLot(by int) {
	d.clear()
	d.page.do(desk.NextLot(by))
}

// TypedRune takes digits and what belongs to a number, and the letters of the commands.
func (d *pad) TypedRune(r rune) {
	if d.isOfNumber(r) || d.calls && unicode.IsPrint(r) {
		const longest = 12
		if len(d.typed) < longest {
			d.typed, d.answer = d.typed+string(r), ""
		}
		d.show()
		d.page.moved()
		return
	}
	switch r {
	case '+':
		d.step(+1)
	case '-', '−':
		d.step(-1)
	}
	for _, c := range d.commands() {
		if c.cap == strings.ToUpper(string(r)) {
			c.do()
		}
	}
}

// isOfNumber reports whether a character goes on with the number that is typed: a digit or the decimal mark begins one; the other mark,
// spaces, k and m only go on.
func (d *pad) isOfNumber(r rune) bool {
	switch {
	case r >= '0' && r <= '9', string(r) == widgets.DecimalMark():
		return true
	case r == ',', r == '.', r == ' ', r == '\'', unicode.ToLower(r) == 'k', unicode.ToLower(r) == 'm':
		return d.typed != ""
	}
	return false
}

// TypedKey steps, enters and takes back.
func (d *pad) TypedKey(e *fyne.KeyEvent) {
	const many = 10
	steps := map[fyne.KeyName]int{fyne.KeyUp: 1, fyne.KeyRight: 1, fyne.KeyDown: -1, fyne.KeyLeft: -1, fyne.KeyPageUp: many,
		fyne.KeyPageDown: -many}
	if by, ok := steps[e.Name]; ok {
		d.step(by)
		return
	}
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		d.enter()
	case fyne.KeyBackspace:
		if d.typed != "" {
			_, last := utf8.DecodeLastRuneInString(d.typed)
			d.typed, d.answer = d.typed[:len(d.typed)-last], ""
			d.show()
			d.page.moved()
		}
	case fyne.KeyDelete, fyne.KeyHome:
		d.clear()
		d.call(0)
	case fyne.KeyEscape:
		d.escape(e)
	}
}

// escape drops what is typed; with nothing typed the key is the window's.
func (d *pad) escape(e *fyne.KeyEvent) {
	if d.typed != "" || d.answer != "" || d.calls {
		d.clear()
		d.show()
		d.page.moved()
		return
	}
	draw.Leave(d, e)
}

// Tapped takes the keyboard.
func (d *pad) Tapped(*fyne.PointEvent) { d.takeKeyboard() }

func (d *pad) takeKeyboard() { draw.FocusOn(d) }

// FocusGained shows the ring, and that the keys are heard.
func (d *pad) FocusGained() { d.focus(true) }

// FocusLost hides the ring, and says that the keys are not heard.
func (d *pad) FocusLost() { d.focus(false) }

// focus says on the page whether the keys are heard.
func (d *pad) focus(on bool) {
	d.focused = on
	d.show()
	d.Refresh()
}

// CreateRenderer returns the renderer.
func (d *pad) CreateRenderer() fyne.WidgetRenderer {
	ground := canvas.NewRectangle(theme.Color(theme.ColorLiveBackground))
	return &padRenderer{pad: d, ground: ground}
}

type padRenderer struct {
	pad    *pad
	ground *canvas.Rectangle
}

func (r *padRenderer) Objects() []fyne.CanvasObject {
	return []fyne.CanvasObject{r.ground, r.pad.content}
}

func (r *padRenderer) MinSize() fyne.Size { return fyne.NewSize(560, 320) }
func (r *padRenderer) Destroy()           {}

func (r *padRenderer) Layout(size fyne.Size) {
	r.ground.Resize(size)
	r.pad.content.Resize(size)
}

func (r *padRenderer) Refresh() {
	r.ground.FillColor, r.ground.StrokeColor = theme.Color(theme.ColorLiveBackground), theme.Color(theme.ColorLiveForeground)
	r.ground.StrokeWidth = 0
	if r.pad.focused {
		r.ground.StrokeWidth = 3
	}
	r.ground.Refresh()
	r.pad.content.Refresh()
}
