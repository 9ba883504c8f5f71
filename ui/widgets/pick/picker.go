package pick

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"

	"walkline/ui/widgets"
	"walkline/ui/widgets/table"
)

// For is what is looked for.
type For struct {
	Folder  string                 // where to begin; empty, or gone: at home
	Folders bool                   // a folder is wanted, and no file
	Many    bool                   // files can be marked, and are taken together
	Endings []string               // of the files, in lower case with the dot; none: any file
	What    string                 // the files in a word, "photo"
	Day     func(time.Time) string // how a day is written
	First   string                 // the folder of the user's own to begin in where Folder is empty: "Pictures"; empty: home itself
	// Away does work away from the window, then calls what it returns where widgets may be touched: a folder of a network that is gone
	// answers late or never. Newer work of a name takes the place of older. Nil: the work is done at once.
	Away func(name string, work func() (show func()))
}

// Picker lists one folder of the machine at a time.
type Picker struct {
	// OnPicked is called with what was taken: one path, or the marked ones; it is never called with none.
	OnPicked func(paths []string)
	// OnEscape is called on Escape in the path.
	OnEscape func()

	of      For
	folder  string
	entries []entry
	marked  map[string]bool // paths in the folder on show
	path    *widgets.TextEntry
	list    *table.Table
	said    *widgets.Words
	body    fyne.CanvasObject
	ended   bool
}

// New returns a picker that shows the folder to begin in.
func New(of For) *Picker {
	p := &Picker{of: of, path: widgets.NewTextEntry(), said: widgets.NewCaption("")}
	p.list = table.New([]table.Column{{Title: "Name", Width: 380, Grows: true}, {Title: "Size", Width: 90, Right: true},
		{Title: "Changed", Width: 110}})
	p.list.OnOpen = p.open
	if of.Many {
		p.list.OnTick, p.list.OnTickMany = p.mark, p.markRange
	}
	p.list.Empty = "Nothing to choose is in this folder."
	p.path.OnSubmitted = func(string) { p.typed() }
	p.path.OnEscape = func() { p.OnEscape() }
	head := container.NewBorder(nil, nil, nil, p.placeChoice(), p.path)
	foot := container.NewBorder(nil, nil, nil, p.markAll(), container.NewVBox(layout.NewSpacer(), p.said, layout.NewSpacer()))
	ordered := container.New(layout.NewBorderLayout(head, foot, nil, nil), head, p.list, foot) // the keyboard goes down the page
	p.body = ordered
	p.goTo(beginnings(of)...)
	return p
}

// beginnings returns the folders to begin in, the best first.
func beginnings(of For) (folders []string) {
	if of.Folder != "" {
		folders = append(folders, of.Folder)
	}
	if home, err := os.UserHomeDir(); err == nil {
		folders = append(folders, filepath.Join(home, of.First), home)
	}
	return append(folders, string(os.PathSeparator))
}

// away does work away from the window where it can; what comes back after the end is dropped.
func (p *Picker) away(name string, work func() (show func())) {
	while := func() func() {
		show := work()
		return func() {
			if !p.ended {
				show()
			}
		}
	}
	if p.of.Away == nil {
		while()()
		return
	}
	p.of.Away(name, while)
}

// End ends the picking: a folder or a path that answers later is neither shown nor taken.
func (p *Picker) End() { p.ended = true }

// placeChoice returns the choice among the folders that people look in.
func (p *Picker) placeChoice() fyne.CanvasObject {
	var there []place
	choice := widgets.NewSelect(nil, nil)
	choice.PlaceHolder = "Places"
	choice.OnChanged = func(string) {
		if i := choice.SelectedIndex(); i >= 0 {
			p.goTo(there[i].path)
			choice.ClearSelected()
		}
	}
	p.away("places", func() func() {
		found := places()
		return func() {
			there = found
			for _, x := range found {
				choice.Options = append(choice.Options, x.name)
			}
			choice.Refresh()
		}
	})
	return choice
}

// markAll returns the button that marks every file of the folder, where many can be marked.
func (p *Picker) markAll() fyne.CanvasObject {
	if !p.of.Many {
		return layout.NewSpacer()
	}
	return widgets.NewButton("Mark all", func() { p.markRange(0, len(p.entries)-1) })
}

// Object returns the picker to be laid out.
func (p *Picker) Object() fyne.CanvasObject { return p.body }

// First returns what takes the keyboard: the list.
func (p *Picker) First() fyne.Focusable { return p.list }

// Folder returns the folder on show.
func (p *Picker) Folder() string { return p.folder }

// Take takes what was chosen: the marked files, else the selected one; where a folder is wanted, the one on show.
func (p *Picker) Take() {
	switch row := p.list.Selected(); {
	case p.of.Folders && p.folder != "":
		p.OnPicked([]string{p.folder})
	case len(p.marked) > 0:
		p.OnPicked(p.inOrder())
	case row >= 0 && !p.entries[row].folder:
		p.OnPicked([]string{p.entries[row].path})
	default:
		p.warn("Select a " + p.of.What + " first.")
	}
}

// inOrder returns the marked files as they are listed.
func (p *Picker) inOrder() (paths []string) {
	for _, e := range p.entries {
		if p.marked[e.path] {
			paths = append(paths, e.path)
		}
	}
	return paths
}

// open goes into a folder, or takes a file with those that are marked.
func (p *Picker) open(row int) {
	e := p.entries[row]
	if e.folder {
		p.goTo(e.path)
		return
	}
	if p.of.Many {
		p.marked[e.path] = true
	}
	p.Take()
}

// typed goes to the folder, or takes the file, whose path was typed.
func (p *Picker) typed() {
	path := strings.TrimSpace(p.path.Text)
	p.tell("Looking for " + path + "…")
	p.away("folder", func() func() {
		info, err := os.Stat(path)
		return func() { p.take(path, info, err) }
	})
}

// take goes to the folder, or takes the file, that was found at a typed path.
func (p *Picker) take(path string, info os.FileInfo, err error) {
	switch {
	case err != nil:
		p.warn("There is nothing at " + path + ".")
	case info.IsDir():
		p.goTo(path)
	case p.of.Folders:
		p.warn("That is a file. A folder is wanted.")
	case !hasEnding(path, p.of.Endings):
		p.warn("That is no " + p.of.What + ". It should end in " + strings.Join(p.of.Endings, ", ") + ".")
	default:
		p.OnPicked([]string{path})
	}
}

// goTo shows the first of some folders that can be read. Where none can, the last one is named and what is on show stays.
func (p *Picker) goTo(folders ...string) {
	p.tell("Reading " + folders[0] + "…")
	p.away("folder", func() func() {
		var why error
		for _, folder := range folders {
			folder = filepath.Clean(folder)
			all, err := entriesOf(folder, !p.of.Folders, p.of.Endings)
			if err == nil {
				return func() { p.showFolder(folder, all) }
			}
			why = err
		}
		return func() { p.warn("This folder can't be read: " + why.Error()) }
	})
}

// showFolder shows what is in a folder, with the keyboard on the folder that was left.
func (p *Picker) showFolder(folder string, all []entry) {
	from := p.folder
	p.folder, p.entries, p.marked = folder, all, map[string]bool{}
	p.path.SetText(folder)
	p.list.SelectRow(-1)
	p.show()
	p.list.SelectRow(max(0, slices.IndexFunc(all, func(e entry) bool { return e.path == from && e.name != above })))
}

// mark marks a file or takes its mark back; the row of a folder has no box.
func (p *Picker) mark(row int, marked bool) {
	if marked {
		p.marked[p.entries[row].path] = true
	} else {
		delete(p.marked, p.entries[row].path)
	}
	p.show()
}

// markRange marks all files from one row to another.
func (p *Picker) markRange(from, to int) {
	for _, e := range p.entries[from : to+1] {
		if !e.folder {
			p.marked[e.path] = true
		}
	}
	p.show()
}

func (p *Picker) show() {
	rows := make([]table.Row, len(p.entries))
	for i, e := range p.entries {
		rows[i] = table.Row{Cells: []string{e.name, sizeWords(e.size), p.of.Day(e.changed)}, Ticked: p.marked[e.path]}
		if e.folder {
			rows[i].Cells, rows[i].Boxless = []string{e.name, "folder", ""}, true
		}
	}
	p.list.SetRows(rows)
	p.tell(p.count())
}

// tell says how things stand.
func (p *Picker) tell(words string) {
	p.said.SetWarning(false)
	p.said.SetText(words)
}

// count says what is there to choose from, and what is marked.
func (p *Picker) count() string {
	files := 0
	for _, e := range p.entries {
		files += btoi(!e.folder)
	}
	switch {
	case p.of.Folders:
		return "This folder is taken: " + p.folder
	case !p.of.Many:
		return fmt.Sprintf("%d to choose from.", files)
	case len(p.marked) == 0:
		return fmt.Sprintf("%d to choose from. Space marks one, Shift and a click mark all up to there.", files)
	}
	return fmt.Sprintf("%d of %d marked.", len(p.marked), files)
}

// warn says why nothing was taken.
func (p *Picker) warn(words string) {
	p.said.SetWarning(true)
	p.said.SetText("! " + words)
}
