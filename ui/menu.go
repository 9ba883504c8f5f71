package ui

import (
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/worksheet"
	"walkline/valuation/lot"
)

// command is one thing that the menu and a key do alike.
type command struct {
	words string
	key   fyne.KeyName
	shift bool
	do    func()
}

// modifier of every shortcut.
const modifier = fyne.KeyModifierShortcutDefault

func (c command) shortcut() fyne.Shortcut {
	if c.key == fyne.KeyZ && !c.shift {
		return &fyne.ShortcutUndo{} // the toolkit's own, which it makes of Ctrl+Z
	}
	if c.key == fyne.KeyC {
		return &fyne.ShortcutCopy{} // as well; a field copies its own words
	}
	m := modifier
	if c.shift {
		m |= fyne.KeyModifierShift
	}
	return &desktop.CustomShortcut{KeyName: c.key, Modifier: m}
}

// item returns the menu item of a command, with its key behind the words: where the toolkit draws the menu itself it writes
// keys so faintly that they cannot be read, and it hears them behind a dialog too. macOS draws its menus itself.
func (c command) item(system string) *fyne.MenuItem {
	i := fyne.NewMenuItem(c.words, c.do)
	switch {
	case c.key == "":
	case system == "darwin":
		i.Shortcut = c.shortcut()
	default:
		i.Label += "   " + c.keys()
	}
	return i
}

// keys returns the keys of a command in words: Ctrl+Shift+P.
func (c command) keys() string {
	key := string(c.key)
	if c.key == fyne.KeyDelete {
		key = "Del"
	}
	if c.shift {
		key = "Shift+" + key
	}
	return "Ctrl+" + key
}

// groups are the menus with their commands.
func (w *Window) groups() []struct {
	name     string
	commands []command
} {
	undo, redo := "Undo", "Redo"
	reach := w.state.Reach
	if reach.Undo != "" {
		undo += ": " + reach.Undo
	}
	if reach.Redo != "" {
		redo += ": " + reach.Redo
	}
	lots := []command{
		{"Duplicate", fyne.KeyD, false, func() { w.withThose(desk.DuplicateLots) }},
		{"Archive", "", false, func() { w.archive(true) }},
		{"Take out of the archive", "", false, func() { w.archive(false) }},
		{"Move to another sale…", fyne.KeyM, false, func() { w.moveLots(w.those()) }},
		{"Remove", fyne.KeyDelete, false, w.remove},
	}
	for _, s := range lot.States {
		lots = append(lots, command{"Mark: " + string(s), "", false,
			func() { w.withThose(func(ids ...int64) desk.Action { return desk.MarkLots(s, ids...) }) }})
	}
	lots = append(lots, command{"Went for…", "", false, func() { w.tellResult(w.those()) }})
	var places []command
	for _, s := range w.places.stations {
		places = append(places, command{s.name, s.key, false, func() { w.goTo(s.place) }})
	}
	for i, name := range worksheet.Sections {
		places = append(places, command{name, fyne.KeyName(rune('1' + i)), false, func() { w.section(i) }})
	}
	return []struct {
		name     string
		commands []command
	}{
		{"File", []command{{"New lot", fyne.KeyN, false, w.NewLot}, {"Import a run list…", fyne.KeyR, false, w.ImportList},
			{"Import comparables…", fyne.KeyI, false, w.Import},
			{"Decision sheet…", fyne.KeyP, false, w.PrintDecision}, {"File for the rebuilt inspection…", fyne.KeyP, true, w.PrintRebuilt},
			{"Shopping list…", fyne.KeyG, false, w.Shop}, {"Sale plan…", "", false, w.PrintPlan},
			{"Open what was saved", fyne.KeyO, false, w.saved.open}, {"Show its folder", fyne.KeyO, true, w.saved.reveal},
			{"Add the demo sale", "", false, w.LoadDemo}, {"Quit", fyne.KeyQ, false, w.app.Quit}}},
		{"Edit", []command{{undo, fyne.KeyZ, false, w.undo}, {redo, fyne.KeyZ, true, w.redo}, {"Copy this table", fyne.KeyC, false, w.copyTable},
			{"Search the Board", fyne.KeyF, false, w.search}}},
		{"Lot", lots},
		{"Go to", places},
		{"Display", []command{{"Light", "", false, func() { w.setLook(theme.Light) }}, {"Dark", "", false, func() { w.setLook(theme.Dark) }},
			{"As the system", "", false, func() { w.setLook(theme.System) }},
			{"Larger text", fyne.KeyEqual, false, func() { w.scale(+0.1) }}, {"Smaller text", fyne.KeyMinus, false, func() { w.scale(-0.1) }}}},
		{"Help", []command{{"First steps and cautions", fyne.KeyF1, false, w.help}, {"About Walkline…", "", false, w.showAbout}}},
	}
}

// menu returns the menu for the state of the moment.
func (w *Window) menu() *fyne.MainMenu {
	var menus []*fyne.Menu
	for _, g := range w.groups() {
		var items []*fyne.MenuItem
		for _, c := range g.commands {
			i := c.item(runtime.GOOS)
			i.IsQuit = c.words == "Quit"
			items = append(items, i)
		}
		menus = append(menus, fyne.NewMenu(g.name, items...))
	}
	return fyne.NewMainMenu(menus...)
}

// shortcuts puts every key on the window itself, so that they work whatever has the keyboard, but not behind a dialog.
func (w *Window) shortcuts() {
	for _, g := range w.groups() {
		for _, c := range g.commands {
			if c.key != "" {
				w.window.Canvas().AddShortcut(c.shortcut(), func(fyne.Shortcut) { w.alone(c.do) })
			}
		}
	}
	last := command{key: fyne.Key7} // a build has a section more than the menu names
	w.window.Canvas().AddShortcut(last.shortcut(), func(fyne.Shortcut) { w.alone(func() { w.section(len(worksheet.Sections)) }) })
	w.window.Canvas().AddShortcut(&fyne.ShortcutRedo{}, func(fyne.Shortcut) { w.alone(w.redo) })
	w.window.Canvas().AddShortcut(&fyne.ShortcutPaste{}, func(fyne.Shortcut) {
		w.alone(func() { w.Paste(fyne.CurrentApp().Clipboard().Content()) })
	})
	w.window.Canvas().SetOnTypedKey(w.typed)
}

// alone does what a key of the window asks for, unless a dialog lies over the window.
func (w *Window) alone(do func()) {
	if !w.modal() {
		w.guard(do)
	}
}

// back goes from a page about the lot to its worksheet, from an open build to the list, and from there to the Board.
func (w *Window) back() {
	if w.state.Place == desk.Builds && w.state.Build != nil {
		w.Do(desk.CloseBuild())
		return
	}
	if w.state.Place != desk.Worksheet && w.places.at(w.state.Place).lot {
		w.goTo(desk.Worksheet)
		return
	}
	w.toBoard()
}

func (w *Window) undo() { w.Do(desk.Undo()) }
func (w *Window) redo() { w.Do(desk.Redo()) }

func (w *Window) search() {
	w.toBoard()
	w.window.Canvas().Focus(w.board.Search())
}

func (w *Window) section(i int) {
	if w.state.Place == desk.Builds && w.state.Build != nil {
		w.builds().Go(i)
		w.focusPage()
		return
	}
	if i >= len(worksheet.Sections) {
		return
	}
	if w.state.Place == desk.Record {
		w.record().Go(i)
		w.focusPage()
		return
	}
	if w.goTo(desk.Worksheet); w.state.Place != desk.Worksheet {
		return // there is no lot
	}
	w.sheet().Go(i)
	w.focusPage()
}

// remove takes the lots off every list; that of the build on screen as a step of the list of builds, which is shown then.
func (w *Window) remove() {
	if b := w.state.BuildInHand(); b != nil {
		w.Do(desk.RemoveBuild(b.ID))
		return
	}
	w.withThose(desk.RemoveLots)
}

func (w *Window) archive(on bool) {
	w.withThose(func(ids ...int64) desk.Action { return desk.ArchiveLots(on, ids...) })
}
