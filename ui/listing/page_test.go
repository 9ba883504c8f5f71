package listing_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire/trial"
	"walkline/ui/desk"
	"walkline/ui/listing"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// reader is someone on the page over a store of their own.
type reader struct {
	page   *listing.Page
	desk   *desk.Desk
	state  desk.State
	wanted desk.Wish
	window fyne.Window
}

func newReader(t *testing.T) *reader {
	test.NewTempApp(t).Settings().SetTheme(theme.New(theme.Options{}))
	r := &reader{desk: trial.Desk(trial.Store(t))}
	r.page = listing.New(func(a desk.Action) {
		if r.wanted = a.Wish; a.Wish.For == "" {
			r.do(t, a)
		}
	})
	r.window = seen.Open(t, fyne.NewSize(1280, 660), widgets.NewLayer(r.page.Object(), nil))
	r.state = r.desk.Load(t.Context())
	r.do(t, desk.NewLot())
	return r
}

func (r *reader) do(t *testing.T, a desk.Action) {
	r.state = r.desk.Do(t.Context(), r.state, a)
	r.page.Render(r.state)
}

// needs returns the names of the buttons that say what a bid needs.
func (r *reader) needs() map[string]*widgets.Button {
	all := map[string]*widgets.Button{}
	for _, b := range seen.All[*widgets.Button](r.page.Object()) {
		all[b.Text] = b
	}
	return all
}

func TestThePageSaysWhatABidNeedsAndLeadsThere(t *testing.T) {
	r, places := newReader(t), map[fyne.Focusable]string{}
	for _, name := range []string{"vehicle", "title document", "damage", "resale price"} {
		b := r.needs()[name]
		if b == nil {
			t.Fatalf("nothing says that %s is missing: %q", name, seen.Texts(r.page.Object()))
		}
		r.window.Canvas().Unfocus()
		test.Tap(b)
		f := r.window.Canvas().Focused()
		if _, text := f.(*widgets.Passage); f == nil || text || places[f] != "" {
			t.Errorf("%s leads to %T, where %q leads", name, f, places[f])
		}
		places[f] = name
	}
	r.do(t, desk.FillIn("2017 Ostrane Pell S, salvage title, front end damage, chrome hubcaps"))
	if left := r.needs(); left["vehicle"] != nil || left["title document"] != nil || left["damage"] != nil || left["resale price"] == nil {
		t.Errorf("after the listing: %v", left)
	}
	for _, words := range []string{"Make: Ostrane", "12 front: functional", "chrome hubcaps"} {
		if !strings.Contains(strings.Join(seen.Texts(r.page.Object()), "\n"), words) {
			t.Errorf("the page does not say %q", words)
		}
	}
}

func TestEnterHandsTheListingOver(t *testing.T) {
	r := newReader(t)
	first, ok := r.page.First().(*widgets.Passage)
	if !ok {
		t.Fatalf("a new lot begins at %T", r.page.First())
	}
	r.window.Canvas().Focus(first)
	test.Type(first, "2017 Ostrane Pell")
	seen.Press(first, fyne.KeyReturn)
	if r.wanted.For != desk.ReadListing || r.wanted.Name != "2017 Ostrane Pell" {
		t.Errorf("Enter wants %+v", r.wanted)
	}
	if first.AcceptsTab() {
		t.Error("Tab stays in the text")
	}
}
