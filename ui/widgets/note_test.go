package widgets

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/test"

	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/ui/widgets/seen"
)

func TestNotesDifferInWordAndShape(t *testing.T) {
	n := NewNote(Info, "prices are from May")
	seen.Open(t, fyne.NewSize(500, 100), n)
	shapes := map[NoteKind][2]int{Info: {1, 0}, Care: {0, 3}, Stop: {0, 8}} // circles, sides of the polygon
	for kind, want := range shapes {
		n.Set(kind, "prices are from May")
		got := [2]int{len(seen.All[*canvas.Circle](n)), 0}
		for _, p := range seen.All[*canvas.Polygon](n) {
			got[1] = int(p.Sides)
		}
		if got != want || n.Facts()[0] != noteWords[kind]+": prices are from May" {
			t.Errorf("%s: shapes %v, facts %q", noteWords[kind], got, n.Facts())
		}
	}
}

func TestTextFollowsTheScale(t *testing.T) {
	h := NewHeading("Damage")
	seen.Open(t, fyne.NewSize(300, 100), h)
	before := h.MinSize()
	fyne.CurrentApp().Settings().SetTheme(theme.New(theme.Options{Look: theme.Dark, Scale: 1.5}))
	h.Refresh()
	if got := h.MinSize().Height / before.Height; got < 1.45 || got > 1.55 {
		t.Errorf("the heading grew by %v", got)
	}
	if h.text.Color != theme.Color(draw.Foreground) {
		t.Error("the heading kept the color of the other variant")
	}
}

var jobs = []Choice{{"hood", "Replace hood", "body, 1.5 h"}, {"fender-l", "Replace fender, left", "body, 2 h"},
	{"fender-r", "Replace fender, right", "body, 2 h"},
	{"blend", "Blend fender", "paint"}, {"pull", "Frame pull", "structure"}}

func TestSuggestTakesByKeyboard(t *testing.T) {
	var chosen []string
	s := NewSuggest("Add a job", func(c Choice) { chosen = append(chosen, c.ID) })
	s.SetChoices(jobs)
	l := NewLayer(container.NewVBox(s), task.Inline{})
	w := seen.Open(t, fyne.NewSize(500, 400), l)
	w.Canvas().Focus(s)
	test.Type(s, "fen rep")
	if !slices.Equal(s.Facts(), []string{"Replace fender, left, body, 2 h", "Replace fender, right, body, 2 h"}) || !s.Open() {
		t.Fatalf("suggests %q", s.Facts())
	}
	if !seen.Says(l, "Replace fender, right") {
		t.Errorf("the layer says %q", seen.Texts(l))
	}
	seen.Press(s, fyne.KeyDown, fyne.KeyDown, fyne.KeyReturn)
	if !slices.Equal(chosen, []string{"fender-r"}) || s.Text != "" || s.Open() {
		t.Errorf("chosen %v, text %q", chosen, s.Text)
	}
	test.Type(s, "zz")
	if s.Open() {
		t.Error("open though nothing fits")
	}
}

func TestSuggestPutsBeginningsFirst(t *testing.T) {
	got := fits(jobs, "b")
	if len(got) == 0 || got[0].ID != "blend" {
		t.Errorf("suggests %v", got)
	}
}

func TestSuggestTakesByPointer(t *testing.T) {
	var chosen []string
	s := NewSuggest("Add a job", func(c Choice) { chosen = append(chosen, c.ID) })
	s.SetChoices(jobs)
	l := NewLayer(container.NewVBox(s), task.Inline{})
	w := seen.Open(t, fyne.NewSize(500, 400), l)
	w.Canvas().Focus(s)
	test.Type(s, "fender")
	at := s.list.Position().AddXY(30, theme.Half+1.5*suggestStep())
	test.MoveMouse(w.Canvas(), at)
	test.TapCanvas(w.Canvas(), at)
	if !slices.Equal(chosen, []string{"fender-r"}) || w.Canvas().Focused() != s {
		t.Errorf("chosen %v, focused %T", chosen, w.Canvas().Focused())
	}
}

func TestSuggestClosesByEscapeAndByLeaving(t *testing.T) {
	s := NewSuggest("Add a job", nil)
	s.SetChoices(jobs)
	other := NewNumberEntry(Spec{}, nil)
	w := seen.Open(t, fyne.NewSize(500, 400), NewLayer(container.NewVBox(s, other), task.Inline{}))
	w.Canvas().Focus(s)
	test.Type(s, "fr")
	seen.Press(s, fyne.KeyEscape)
	if s.Open() {
		t.Error("Escape left it open")
	}
	test.Type(s, "a")
	w.Canvas().FocusNext()
	if s.Open() || w.Canvas().Focused() != other.Focus() {
		t.Error("leaving left it open")
	}
}

func TestSuggestTakesFreeWords(t *testing.T) {
	var free []string
	s := NewSuggest("Add a job", func(Choice) { t.Error("chose") })
	s.OnFree = func(words string) { free = append(free, words) }
	s.SetChoices(jobs)
	w := seen.Open(t, fyne.NewSize(500, 400), NewLayer(s, task.Inline{}))
	w.Canvas().Focus(s)
	test.Type(s, " weld tow hook ")
	seen.Press(s, fyne.KeyReturn)
	if !slices.Equal(free, []string{"weld tow hook"}) || s.Text != "" {
		t.Errorf("free words %q", free)
	}
}

func TestSuggestOpensInADialog(t *testing.T) {
	s := NewSuggest("Add a job", nil)
	s.SetChoices(jobs)
	w := seen.Open(t, fyne.NewSize(700, 500), NewLayer(NewLine("page"), task.Inline{}))
	inner := NewLayer(container.NewVBox(s, NewLine("more")), task.Inline{})
	d := dialog.NewCustom("Add", "Close", inner, w)
	d.Show()
	w.Canvas().Focus(s)
	test.Type(s, "fr")
	if s.on != inner {
		t.Errorf("the list lies on %v", s.on)
	}
}

func TestNotesLook(t *testing.T) {
	seen.Picture(t, "notes", fyne.NewSize(760, 620), func() fyne.CanvasObject {
		s := NewSuggest("Add a job", nil)
		s.SetChoices(jobs)
		return NewLayer(container.NewVBox(NewHeading("Verdict"),
			NewNote(Stop, "the title is junk in the state of registration: it can't be registered again."),
			NewNote(Care, "only four comparables are used; the band is wide. Add more before you trust the figure to the dollar."),
			NewNote(Info, "starter value, from memory: replace it with yours."), NewHeading("Repair"), s, NewLine(""), NewLine("")), task.Inline{})
	})
}

func TestSuggestLooks(t *testing.T) {
	for look, options := range seen.Looks {
		test.NewTempApp(t).Settings().SetTheme(theme.New(options))
		s := NewSuggest("Add a job", nil)
		s.SetChoices(jobs)
		l := NewLayer(container.NewPadded(container.NewVBox(NewHeading("Repair"), s, NewLine("Lines of the table under it"))), task.Inline{})
		w := test.NewTempWindow(t, l)
		w.Resize(fyne.NewSize(500, 260))
		w.Canvas().Focus(s)
		test.Type(s, "fen")
		seen.Save(t, "suggest-"+look, w)
	}
}

func TestASuggestIsScrolledIntoSightWhenItTakesTheKeyboard(t *testing.T) {
	s := NewSuggest("Add a job", nil)
	high := make([]fyne.CanvasObject, 20)
	for i := range high {
		high[i] = NewLine("a line above")
	}
	scroll := container.NewVScroll(container.NewVBox(append(high, s)...))
	w := seen.Open(t, fyne.NewSize(400, 100), scroll)
	w.Canvas().Focus(s)
	if scroll.Offset.Y == 0 {
		t.Error("it is below the edge of the page: the window looks for the entry inside it, which no page holds, and no key of the window " +
			"works there either")
	}
}
