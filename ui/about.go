package ui

import (
	"fmt"
	"runtime"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/widgets"
)

// About is what the program says of itself.
type About struct {
	Version  string // the program with its version, in one line
	Engine   string // the version of the arithmetic
	File     string // where the lots are kept
	Folder   string // the data folder, with the log and what is known of crashes
	Licences string // of all that is inside, as Markdown
}

// lines returns the About as lines of text.
func (a About) lines() string {
	return fmt.Sprintf("%s\nArithmetic: %s\nSystem: %s/%s\nLots: %s\nData folder, with the log: %s", a.Version, a.Engine, runtime.GOOS,
		runtime.GOARCH, a.File, a.Folder)
}

// Describe tells the window what it is to say of the program.
func (w *Window) Describe(a About) { w.about = a }

// Warn says something at the foot of the window, after what else it warns of, until the user does something.
func (w *Window) Warn(words string) {
	w.state.Notice, w.state.Trouble = "", strings.TrimSpace(w.state.Trouble+" "+words)
	w.say(w.state)
}

// Tell says something at the foot of the window, unless something else is said there.
func (w *Window) Tell(words string) {
	if w.state.Trouble == "" && w.state.Notice == "" {
		w.say(desk.State{Notice: words})
	}
}

// Leave takes the keyboard from the field in hand, which takes what was typed in it.
func (w *Window) Leave() { w.window.Canvas().Unfocus() }

// showAbout shows version, engine, data folder and licences, with a button that copies it all.
func (w *Window) showAbout() {
	lines := widget.NewLabel(w.about.lines())
	lines.Selectable, lines.Wrapping = true, fyne.TextWrapBreak
	notices := widget.NewLabel(plain(w.about.Licences))
	notices.Wrapping = fyne.TextWrapWord
	copied := widgets.NewButton("Copy all of it, for a report", nil)
	copied.OnTapped = func() {
		w.app.Clipboard().SetContent(w.about.lines() + "\n\n" + w.about.Licences)
		copied.SetText("Copied")
	}
	top := container.NewVBox(lines, container.NewHBox(copied),
		widget.NewLabel("Walkline's own source is under the MIT license. What is inside besides:"))
	d := w.telling("About Walkline", "Close", container.NewBorder(top, nil, nil, nil, container.NewVScroll(notices)))
	d.Resize(fyne.NewSize(760, 560))
	w.open(d)
}

// plain turns the tables of a Markdown text into lines, for a label has none.
func plain(markdown string) string {
	var out []string
	for _, line := range strings.Split(markdown, "\n") {
		switch {
		case strings.HasPrefix(line, "| ---") || strings.HasPrefix(line, "<!--"):
			continue
		case strings.HasPrefix(line, "|"):
			line = strings.Join(strings.Split(strings.Trim(line, "| "), " | "), " · ")
		}
		out = append(out, strings.TrimLeft(line, "# "))
	}
	return strings.Join(out, "\n")
}
