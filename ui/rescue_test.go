package ui

import (
	"context"
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/task"
	"walkline/ui/widgets"
)

// found returns every widget of a kind below an object.
func found[T fyne.CanvasObject](o fyne.CanvasObject) (all []T) {
	if x, ok := o.(T); ok {
		all = append(all, x)
	}
	switch c := o.(type) {
	case *fyne.Container:
		for _, below := range c.Objects {
			all = append(all, found[T](below)...)
		}
	case *container.Scroll:
		all = append(all, found[T](c.Content)...)
	}
	return all
}

func TestABookThatDoesNotOpenOffersAWayOut(t *testing.T) {
	a := test.NewTempApp(t)
	var did []string
	ShowRescue(a, task.Inline{}, Rescue{Words: "the file is damaged",
		Restore: func(_ context.Context, backup string) error {
			did = append(did, "restore "+backup)
			if backup == "none" {
				return errors.New("there is no such file")
			}
			return nil
		},
		Salvage: func(context.Context) (string, string, error) { return "salvaged.db", "3 lots were read whole", nil },
		Again:   func() error { did = append(did, "again"); return nil }})
	windows := a.Driver().AllWindows()
	w := windows[len(windows)-1]
	said, buttons := found[*widget.Label](w.Content())[0], map[string]*widgets.Button{}
	for _, b := range found[*widgets.Button](w.Content()) {
		buttons[b.Text] = b
	}
	if buttons["Keep the stray file aside and open without it"] != nil {
		t.Error("a stray file is offered where there is none")
	}
	path := w.Canvas().Focused().(interface{ SetText(string) })
	path.SetText("none")
	test.Tap(buttons["Restore it"])
	if !strings.Contains(said.Text, "no such file") || !strings.Contains(said.Text, "damaged") {
		t.Errorf("%q", said.Text)
	}
	test.Tap(buttons["Save what can be read"])
	if !strings.Contains(said.Text, "3 lots") {
		t.Errorf("%q", said.Text)
	}
	test.Tap(buttons["Restore it"]) // what was salvaged stands in the field
	if got := strings.Join(did, ", "); got != "restore none, restore salvaged.db, again" {
		t.Errorf("did %s", got)
	}
}

// Where the lots are on show they stay so: the way out closes its own window alone.
func TestDamageFoundLaterOffersAWayOutBesideTheLots(t *testing.T) {
	a := test.NewTempApp(t)
	lots := a.NewWindow("lots")
	lots.Show()
	before := len(a.Driver().AllWindows())
	var did []string
	ShowRescue(a, task.Inline{}, Rescue{Shown: true, Words: "one lot is damaged",
		Salvage: func(context.Context) (string, string, error) { return "salvaged.db", "3 lots were read whole", nil },
		Restore: func(_ context.Context, backup string) error { did = append(did, "restore "+backup); return nil },
		Again:   func() error { did = append(did, "say"); return nil }})
	w := a.Driver().AllWindows()[before]
	for _, b := range []string{"Save what can be read", "Restore it"} {
		for _, button := range found[*widgets.Button](w.Content()) {
			if button.Text == b {
				test.Tap(button)
			}
		}
	}
	if got := strings.Join(did, ", "); got != "restore salvaged.db, say" {
		t.Errorf("did %s", got)
	}
	if left := a.Driver().AllWindows(); len(left) != before || left[before-1] != lots {
		t.Errorf("%d windows are left", len(left))
	}
}
