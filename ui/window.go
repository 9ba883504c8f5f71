package ui

import (
	"context"
	"fmt"
	"image"
	"sync"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/bench"
	"walkline/ui/board"
	"walkline/ui/builds"
	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/record"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/ui/worksheet"
	"walkline/valuation"
)

// Window is the program's one window.
type Window struct {
	app    fyne.App
	window fyne.Window
	desk   *desk.Desk
	runner task.Runner
	crash  func(task.Crash)

	state  desk.State
	looks  looks
	board  *board.Page
	sheet  func() *worksheet.Page // built when first asked for, as is the next
	bench  func() *bench.Page
	builds func() *builds.Page
	record func() *record.Page
	places *places
	notice *widgets.Said
	saved  *saved
	pin    *pin
	about  About
	means  string // what the field in hand means; said at the foot where nothing else is

	tables  []func() // that wait for the one before to be dealt with
	dialogs []opened // on show, the last one on top

	preparing string // what is said of the action that is prepared away from the window; empty: none is

	waits *desk.Waiting // the lots that wait for a first guess; nil: none did yet
	tried []int64       // the lots without figures that no guess was left for
	shown bool          // on the screen: from now on its size and page are kept
	stood stand         // as it was kept last

	thumbnails map[string]image.Image // by the hash of the photograph
}

// waiting is how long a keystroke waits for the next one before the lot is valued.
const waiting = 120 * time.Millisecond

// Parts is what a window is made over.
type Parts struct {
	Desk   *desk.Desk
	First  desk.State // what the desk loaded
	Runner task.Runner
	Crash  func(task.Crash) // is given the panics of the window's callbacks; nil: they pass through
}

// NewWindow returns the window over a desk, showing the Board.
func NewWindow(a fyne.App, p Parts) *Window {
	d, r := p.Desk, p.Runner
	w := &Window{app: a, window: a.NewWindow("Walkline"), desk: d, runner: r, crash: p.Crash}
	desk.ShowDays(form.DayOrder().Show)
	w.loadLooks()
	w.board = board.New(w.Do)
	w.board.OnSight = w.seek
	w.board.Thumbnail = w.Thumbnail
	w.sheet = sync.OnceValue(func() *worksheet.Page { return worksheet.New(w.Do, w.Thumbnail, d.Knowledge()) })
	w.bench = sync.OnceValue(func() *bench.Page { return bench.New(w.Do) })
	w.record = sync.OnceValue(func() *record.Page { return record.New(w.Do) })
	w.builds = sync.OnceValue(func() *builds.Page { return builds.New(w.Do, d.Today) })
	w.notice, w.saved = widgets.NewSaid(), newSaved(w)
	w.places = newPlaces(w.stations(), w.goTo)
	w.pin = newPin(w.Do, w.goTo)
	head := container.New(layout.NewCustomPaddedLayout(theme.Half, 0, theme.Wide, theme.Wide),
		container.New(head{}, w.places.strip, w.pin.bar))
	foot := container.NewBorder(nil, nil, nil, w.saved.buttons, w.notice)
	pages := container.NewScroll(w.places.pages) // one that is too large for the window scrolls, and the window does not grow
	layer := widgets.NewLayer(container.New(sized{w}, container.NewBorder(head, foot, nil, nil, pages)), r)
	layer.OnExplain, layer.OnComplete = w.explain, w.known
	w.window.SetContent(layer)
	w.window.SetMainMenu(w.menu())
	w.window.Resize(w.keptSize())
	w.window.SetOnDropped(w.dropped)
	w.shortcuts()
	w.show(p.First)
	w.goBack()
	return w
}

// Begin starts the work that nobody asked for, away from the window: what the Board lacks. It is called once the window is painted,
// which it would slow down.
func (w *Window) Begin() { w.guess() }

// Show puts the window on the screen.
func (w *Window) Show() {
	w.window.Show()
	w.shown = true
	w.focusPage()
}

// show takes the next state and writes it into the pages.
func (w *Window) show(s desk.State) {
	before := w.state
	w.state = s
	widgets.DecimalComma(s.Shop.DecimalMark == ",")
	w.places.render(s)
	w.pin.render(s)
	draw.Clamp(w.window.Content())
	if before.Place != s.Place {
		w.means = "" // of a field of the page before
	}
	w.say(s)
	if before.Place != s.Place || (before.InHand() == nil) != (s.InHand() == nil) || before.Reach != s.Reach {
		w.window.SetMainMenu(w.menu())
	}
}

// say writes at the foot of the window what went wrong or happened, else what the field in hand means.
func (w *Window) say(s desk.State) {
	w.notice.SetWarning(s.Trouble != "")
	w.saved.buttons.Hide()
	switch {
	case s.Trouble != "":
		w.notice.SetText("! " + s.Trouble)
	case s.Notice != "":
		w.notice.SetText(s.Notice)
	default:
		w.notice.SetText(w.means)
	}
}

// explain says what the field in hand, or the word under the pointer, means.
func (w *Window) explain(words string) {
	w.means = words
	w.say(w.state)
}

// Do does what the user asks for on a page; what has to be asked of the user first, the window asks.
func (w *Window) Do(a desk.Action) {
	if a.Wish.For != "" {
		w.guard(func() { w.grant(a.Wish) })
		return
	}
	if field := w.typing(); field != "" && a.Words() != "" {
		a = a.Typed(field + " " + a.Words())
	}
	if a.Bar(w.state) != "" {
		w.guard(func() { w.prepare(a) })
		return
	}
	w.act(func(ctx context.Context, s desk.State) desk.State { return w.desk.Do(ctx, s, a) })
}

// typing names the field in hand, where it is one that takes letters: what is typed in it is one step until it is left, or for a pause.
func (w *Window) typing() string {
	if e, ok := w.window.Canvas().Focused().(interface{ SelectedText() string }); ok {
		return fmt.Sprintf("%p", e)
	}
	return ""
}

// act shows the state that an action makes of the present one; a panic on the way leaves the state as it was.
func (w *Window) act(action func(context.Context, desk.State) desk.State) {
	w.guard(func() {
		before := w.state
		w.show(action(context.Background(), before))
		if before.Place != w.state.Place || (before.Build == nil) != (w.state.Build == nil) {
			w.focusPage()
		}
		w.keepStand()
		w.value()
		w.planDay()
		w.foresee()
		w.learn()
		w.fitMarket()
		w.guess()
		w.settle()
	})
}

// guard runs a handler; a fault in it is written to a crash file and said, and the window lives on.
func (w *Window) guard(handler func()) {
	if w.crash == nil {
		handler()
		return
	}
	task.Guard(func(c task.Crash) {
		w.crash(c)
		w.say(desk.State{Trouble: "A fault in the program: that was not done. What was kept before is safe; a crash file beside it says more."})
	}, handler)()
}

// settle asks what to do about an action that was not kept because something else changed what it changes.
func (w *Window) settle() {
	clash := w.state.Clash
	if clash == nil {
		return
	}
	w.state.Clash = nil
	w.open(w.question("Changed elsewhere", "Keep my change", "Keep what is there", widget.NewLabel(clash.Words), func(mine bool) {
		if mine {
			w.Do(clash.Mine)
		}
	}))
}

// value has the open lot valued away from the window, unless its answer is fresh. Where its case has faults its work is listed.
func (w *Window) value() {
	o := w.state.Open
	if o == nil || o.Fresh {
		return
	}
	id, revision, c := o.ID, o.Revision, o.Posed()
	if len(o.Faults) > 0 {
		if !o.Waits() {
			return
		}
		task.Start(w.runner, task.Order[desk.Valued]{
			Key: "value", Wait: waiting,
			Work: func(ctx context.Context) (desk.Valued, error) { return w.desk.Outline(ctx, c) },
			Show: func(v desk.Valued, err error) { w.show(w.state.Outlined(id, revision, v, err)) },
		})
		return
	}
	task.Start(w.runner, task.Order[desk.Valued]{
		Key: "value", Wait: waiting,
		Work: func(ctx context.Context) (desk.Valued, error) { return w.desk.ValueLot(ctx, id, c) },
		Show: func(v desk.Valued, err error) {
			w.show(w.desk.Arrived(context.Background(), w.state, id, revision, v, err))
			w.weighLimits(id, revision, c)
		},
	})
}

// resting is how long a lot stands still before what each house rule takes of its bid is worked out.
const resting = 400 * time.Millisecond

// weighLimits has worked out, once the lot stands still, what the bid would be without the house rules that set it.
func (w *Window) weighLimits(id int64, revision int, c valuation.Case) {
	o := w.state.Open
	if o == nil || o.ID != id || o.Revision != revision || !o.Fresh || o.Limits != nil && o.Limits.Revision == revision {
		return
	}
	answer := o.Valued.Answer
	task.Start(w.runner, task.Order[desk.Limits]{
		Key: "limits", Wait: resting,
		Work: func(ctx context.Context) (desk.Limits, error) { return w.desk.LimitsOf(ctx, id, c, answer) },
		Show: func(l desk.Limits, err error) { w.show(w.state.Limited(id, revision, l, err)) },
	})
}

// NewLot adds a lot and opens it.
func (w *Window) NewLot() {
	w.Do(desk.NewLot())
	w.focusPage()
}

// LoadDemo adds the demo sale.
func (w *Window) LoadDemo() {
	w.Do(desk.LoadDemo())
	w.focusPage()
}

// toBoard closes the open lot, and whatever else is shown.
func (w *Window) toBoard() {
	if w.state.Place == desk.Board {
		return
	}
	w.runner.Cancel("value")
	w.goTo(desk.Board)
}

// at returns the lot that a command is meant for: the one in hand, or the one selected on the Board.
func (w *Window) at() (int64, bool) {
	switch {
	case w.state.Place == desk.Board:
		return w.board.Selected()
	case w.state.BuildInHand() != nil || w.state.Open != nil && w.places.at(w.state.Place).lot:
		return w.state.InHand().ID, true
	}
	return 0, false
}

// those returns the lots that a command is meant for which may be given to many at once: those ticked on the Board, else the one of at.
func (w *Window) those() []int64 {
	if w.state.Place == desk.Board {
		return w.board.Ticked()
	}
	if id, ok := w.at(); ok {
		return []int64{id}
	}
	return nil
}

// withThose does an action on the lots that a command is meant for.
func (w *Window) withThose(action func(ids ...int64) desk.Action) {
	ids := w.those()
	if len(ids) == 0 {
		w.say(desk.State{Notice: "Select a lot first."})
		return
	}
	w.Do(action(ids...))
}

// ShowTrouble opens a window that says why the program could not start, and returns when it is closed.
func ShowTrouble(a fyne.App, title, words string) {
	a.Settings().SetTheme(theme.New(theme.Options{}))
	w := a.NewWindow("Walkline")
	text := widget.NewLabel(words)
	text.Wrapping = fyne.TextWrapWord
	close := widgets.NewButton("Close", a.Quit)
	w.SetContent(container.NewPadded(container.NewBorder(widgets.NewHeading(title), container.NewHBox(close), nil, nil, text)))
	w.Resize(fyne.NewSize(640, 280))
	w.Canvas().Focus(close)
	w.ShowAndRun()
}
