package listing

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
)

// missing is the line that says what a bid still needs: a button each, which leads to its field.
type missing struct {
	do      func(desk.Action)
	says    *widgets.Words
	buttons *fyne.Container
	surer   *fyne.Container // of a first guess: what would make it surer
	body    fyne.CanvasObject
	shown   []view.Missing
}

func newMissing(do func(desk.Action)) *missing {
	m := &missing{do: do, says: widgets.NewLine(""), buttons: container.New(layout.NewCustomPaddedHBoxLayout(theme.Half))}
	m.surer = container.NewHBox(widgets.NewLine("Nobody has looked at it yet. Surer with:"),
		widgets.NewButton("damage", func() { do(desk.Seek("damage")) }))
	m.body = container.New(form.LeastHeight{Height: lineHeight}, container.NewHBox(m.says, m.buttons, m.surer))
	return m
}

func (m *missing) render(o desk.Open) {
	all := view.StillMissing(o)
	guess := o.Case.Unlooked()
	switch {
	case len(all) > 0:
		m.says.SetText("A bid still needs:")
	case guess:
		m.says.SetText("The bid is a first guess.")
	default:
		m.says.SetText("Nothing more is needed for a bid. More detail on the worksheet makes it surer.")
	}
	if m.surer.Hide(); guess {
		m.surer.Show()
	}
	if slices.Equal(all, m.shown) {
		return
	}
	m.shown, m.buttons.Objects = all, nil
	for i, x := range all {
		if i == mostShown {
			m.buttons.Add(widgets.NewLine(view.Count(len(all)-i, "more entry")))
			break
		}
		m.buttons.Add(widgets.NewButton(x.Name, func() { m.do(desk.Seek(x.Key)) }))
	}
	m.buttons.Refresh()
}

// lineHeight keeps the room of the buttons when none is left, so that nothing below moves.
const lineHeight = 36

// mostShown is how many missing entries have a button at once.
const mostShown = 5
