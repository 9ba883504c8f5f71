package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/test"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/ui"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/theme"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
)

// folder is where the pictures go.
const folder = "pictures"

// look is how one set of pictures is dressed.
type look struct {
	name string
	size fyne.Size
	// As the window remembers it.
	Look  theme.Look `json:"look"`
	Scale float32    `json:"scale"`
}

// every has the pages drawn in every look, not in the first alone.
var every = flag.Bool("all", false, "write every page in every look: light and dark, two sizes of window, two of text")

// only, where given, is in the name of every picture that is written.
var only = flag.String("only", "", "write only the pictures whose name contains this")

// dressed, where given, is in the name of every look that is drawn.
var dressed = flag.String("look", "", "draw only the looks whose name contains this, as text1.5")

func main() {
	flag.Parse()
	if err := run(); err != nil {
		fmt.Fprintln(os.Stderr, "gallery:", err)
		os.Exit(1)
	}
}

func run() error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	chosen := looks()[:1]
	if *every || *dressed != "" {
		chosen = looks()
	}
	chosen = slices.DeleteFunc(chosen, func(l look) bool { return !strings.Contains(l.name, *dressed) })
	for _, l := range looks() { // the whole name of a picture names its look
		if strings.Contains(*only, l.name) {
			chosen = []look{l}
		}
	}
	for _, l := range chosen {
		if err := gallery(l); err != nil {
			return err
		}
	}
	return nil
}

// looks returns every way the pages are drawn, the usual one first.
func looks() []look {
	var all []look
	for _, size := range []fyne.Size{{Width: 1280, Height: 720}, {Width: 1920, Height: 1080}} {
		for _, scale := range []float32{1, 1.5} {
			all = append(all, look{fmt.Sprintf("light-%.0f-text%.1f", size.Width, scale), size, theme.Light, scale})
			all = append(all, look{fmt.Sprintf("dark-%.0f-text%.1f", size.Width, scale), size, theme.Dark, scale})
		}
	}
	return all
}

// side is the number on the list of the demo lot that the worksheet shows.
const side = "27"

// gallery draws every page in one look.
func gallery(l look) error {
	s, err := open(l)
	if err != nil {
		return err
	}
	return errors.Join(s.pages(), s.close())
}

// pages draws every page.
func (s *stage) pages() error {
	if err := s.save("board-empty"); err != nil {
		return err
	}
	s.window.LoadDemo()
	if err := s.save("board"); err != nil {
		return err
	}
	if err := s.list(); err != nil {
		return err
	}
	id, err := s.lot(side)
	if err != nil {
		return err
	}
	s.window.Do(desk.OpenLot(id))
	for i, section := range []string{"facts", "damage", "repair", "resale", "costs", "checks"} {
		s.press(fyne.KeyName(rune('1' + i)))
		if err := s.save("worksheet-" + section); err != nil {
			return err
		}
	}
	if err := s.price(); err != nil {
		return err
	}
	if err := s.comparables(); err != nil {
		return err
	}
	if err := s.line(); err != nil {
		return err
	}
	s.press(fyne.Key2)
	if err := s.photos(); err != nil {
		return err
	}
	s.press(fyne.KeyP)
	if err := s.save("decision-sheet"); err != nil {
		return err
	}
	s.screen.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if err := s.why(); err != nil {
		return err
	}
	if err := s.live(); err != nil {
		return err
	}
	if err := s.salePlan(); err != nil {
		return err
	}
	if err := s.builds(); err != nil {
		return err
	}
	if err := s.record(); err != nil {
		return err
	}
	if err := s.bench(); err != nil {
		return err
	}
	return errors.Join(s.listing(), s.trade())
}

// price draws the Resale section with the chances of the price.
func (s *stage) price() error {
	s.press(fyne.Key4)
	s.choose("what it may bring")
	return s.save("worksheet-price")
}

// line draws the groups of fields of a repair line.
func (s *stage) line() error {
	s.press(fyne.Key3)
	list := seen.All[*table.Table](s.screen.Content())[0]
	list.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	for _, b := range seen.All[*widgets.Button](s.screen.Content()) {
		if group := strings.ToLower(strings.Fields(b.Text + " ?")[0]); slices.Contains([]string{"work", "hours", "parts"}, group) {
			b.OnTapped()
			if err := s.save("worksheet-repair-" + group); err != nil {
				return err
			}
		}
	}
	return nil
}

// choose chooses an option of the first choice in view that has it.
func (s *stage) choose(option string) {
	for _, c := range seen.All[*widgets.Select](s.screen.Content()) {
		if slices.Contains(c.Options, option) {
			c.SetSelected(option)
			return
		}
	}
}

// bench draws every section of the Bench.
func (s *stage) bench() error {
	s.press(fyne.KeyK)
	for _, c := range s.desk.Demo() { // the demo's rows are its lots' own: as if they had been imported
		for _, r := range c.Resale.Rows {
			r.Make, r.Model = c.Lot.Make, c.Lot.Model
			s.window.Do(desk.AddComparable(r))
		}
	}
	for _, name := range s.window.BenchSections() {
		s.window.GoBench(name)
		if f, ok := s.screen.Canvas().Focused().(*widgets.TextEntry); ok {
			f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) // a search goes to its first entry
		}
		if err := s.save("bench-" + strings.ReplaceAll(strings.ToLower(name), " ", "-")); err != nil {
			return err
		}
	}
	return nil
}

// stage is the program's window on the test driver.
type stage struct {
	look   look
	book   *store.Store
	folder string // that the book lies in
	know   valuation.Knowledge
	desk   *desk.Desk
	window *ui.Window
	screen fyne.Window
}

// open returns the window over an empty book in a file of its own, at the size of the look.
func open(l look) (*stage, error) {
	return openWith(l, task.Inline{})
}

func openWith(l look, r task.Runner) (*stage, error) {
	folder, err := os.MkdirTemp("", "walkline-gallery")
	if err != nil {
		return nil, err
	}
	b, err := store.Open(context.Background(), filepath.Join(folder, "walkline.db"))
	if err != nil {
		return nil, err
	}
	if err := b.PutSetting(context.Background(), "looks", l); err != nil {
		return nil, err
	}
	d, err := wire.NewDesk(b)
	if err != nil {
		return nil, err
	}
	a := test.NewApp()
	w := ui.NewWindow(a, ui.Parts{Desk: d, First: d.Load(context.Background()), Runner: r})
	windows := a.Driver().AllWindows()
	s := &stage{look: l, book: b, folder: folder, know: d.Know, desk: d, window: w, screen: windows[len(windows)-1]}
	s.screen.Resize(l.size)
	w.Show()
	w.Begin()
	return s, nil
}

// close closes the window and throws its book away.
func (s *stage) close() error {
	s.screen.Close()
	return errors.Join(s.book.Close(), os.RemoveAll(s.folder))
}

// lot returns the id of the lot with a number on the list.
func (s *stage) lot(number string) (int64, error) {
	entries, err := s.book.Entries(context.Background())
	for _, e := range entries {
		if e.Number == number {
			return e.ID, nil
		}
	}
	return 0, fmt.Errorf("no lot %s in the demo sale: %w", number, err)
}

// press presses a key with the modifier of the window's shortcuts.
func (s *stage) press(key fyne.KeyName, more ...fyne.KeyModifier) {
	type typer interface{ TypedShortcut(fyne.Shortcut) }
	modifier := fyne.KeyModifierShortcutDefault
	for _, m := range more {
		modifier |= m
	}
	s.screen.Canvas().(typer).TypedShortcut(&desktop.CustomShortcut{KeyName: key, Modifier: modifier})
}

// save draws the window as it stands, keeps the picture and prints its name.
func (s *stage) save(page string) error {
	path := filepath.Join(folder, page+"-"+s.look.name+".png")
	if !strings.Contains(path, *only) {
		return nil
	}
	s.screen.Resize(s.look.size.AddWidthHeight(1, 1))
	s.screen.Resize(s.look.size) // again: a text that wraps knows its height after it had its width
	f, err := os.Create(path)
	if err != nil {
		return err
	}
	err = png.Encode(f, s.screen.Canvas().Capture())
	if closing := f.Close(); err == nil {
		err = closing
	}
	if err == nil {
		fmt.Println(path)
	}
	return err
}

// top returns the topmost dialog, or the window's content.
func (s *stage) top() fyne.CanvasObject {
	if d := s.screen.Canvas().Overlays().Top(); d != nil {
		return d
	}
	return s.screen.Content()
}
