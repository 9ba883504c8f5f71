package ui

import (
	"context"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// looks is what the user chose about the looks.
type looks struct {
	Look  int     `json:"look"`
	Scale float32 `json:"scale"`
}

const looksSetting = "looks"

// Dress has the toolkit load the faces of the first page, while the lots are still being read: it loads a face when it first measures one.
func Dress(a fyne.App) {
	a.Settings().SetTheme(theme.New(theme.Options{}))
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		fyne.MeasureText("0", theme.Size(theme.SizeBody), style)
	}
}

// loadLooks takes the looks that were chosen last.
func (w *Window) loadLooks() {
	w.looks = looks{Scale: 1}
	if _, err := w.desk.Book.Setting(context.Background(), looksSetting, &w.looks); err != nil {
		w.looks = looks{Scale: 1} // what cannot be read is chosen anew
	}
	w.dress()
}

func (w *Window) dress() {
	w.app.Settings().SetTheme(theme.New(theme.Options{Look: theme.Look(w.looks.Look), Scale: w.looks.Scale}))
}

// keepLooks dresses the window and remembers its looks.
func (w *Window) keepLooks() {
	w.dress()
	if err := w.desk.Book.PutSetting(context.Background(), looksSetting, w.looks); err != nil {
		s := w.state
		s.Trouble = "Could not keep light, dark or the size of text: " + err.Error()
		w.say(s)
	}
	w.show(w.state)
}

func (w *Window) setLook(l theme.Look) {
	w.looks.Look = int(l)
	w.keepLooks()
}

// scale makes the text larger or smaller by a step.
func (w *Window) scale(step float32) {
	w.looks.Scale = min(max(w.looks.Scale+step, theme.MinScale), theme.MaxScale)
	w.keepLooks()
}

const helpText = `## First steps

1. **New lot** (Ctrl+N). Paste or type the text of its listing and press Enter: what it says is filled in. The line above names what a ` +
	`bid still needs; press a name to go to its field. **Listing** (Ctrl+J) comes back to that page.
2. **Damage** (Ctrl+2). Click an area to read it, and mark beside the plan what it has; missing parts, water, hail, fire and mechanical ` +
	`causes stand below. Repair lines and hidden risks follow.
3. **Resale** (Ctrl+4). Import comparables (Ctrl+I, or drop a CSV file on the window), or enter low, likely and high.
4. **Costs** (Ctrl+5). The sale's fees and bid steps, your house rules.
5. The **walk-away bid** follows every change; at the top of the window it stays in sight, with what moved it last. Beside it on the ` +
	`worksheet each of your limits can be tried without. Nothing has to be saved; Ctrl+Z takes a change back, after a restart too.
6. **Why** (Ctrl+E). Where the bid comes from, line by line, and the odds at any other bid.
7. **Live** (Ctrl+L), at the sale. Arrows step, a typed price counts from Enter on, **W** and **L** record won and lost, **X** ` +
	`a lot that was withdrawn. **N** goes to the next lot, **G** to one by its number. Nothing on that page bids for you.

## Cautions

Figures marked *starter* are from memory: replace them with yours. The bid is arithmetic on what was entered, not advice. Repairing ` +
	`wrecks can hurt: restraints hold charges, high-strength steel must not be heated or bent back at will, batteries reignite, ` +
	`two-part paint harms lungs. The maker's procedures, local codes and licensed practice decide what may be done; the agency decides ` +
	`what may be registered.`

// help shows the first steps and the cautions.
func (w *Window) help() {
	text := widget.NewRichTextFromMarkdown(helpText)
	text.Wrapping = fyne.TextWrapWord
	d := w.telling("Walkline", "Close", container.NewVScroll(text))
	d.Resize(fyne.NewSize(720, 520))
	w.open(d)
}
