package main

import (
	"context"
	"image"
	"image/png"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/store"
	"walkline/valuation"
	"walkline/valuation/money"
)

// screen drives the shipping program under a virtual display, by keyboard and mouse, as a user would.
type screen struct {
	t        *testing.T
	program  string
	store    string
	pictures string
	running  *exec.Cmd
	errs     io.Writer // what the program says on stderr; nil: to that of the test
}

// newScreen returns the screen for the program, which is not started yet, with a store of its own of that name.
func newScreen(t *testing.T, store string) *screen {
	return &screen{t: t, program: os.Getenv("WALKLINE_BIN"), store: filepath.Join(t.TempDir(), store),
		pictures: os.Getenv("WALKLINE_PICTURES")}
}

// TestFirstStartToWalkAwayBid goes from the first start to a walk-away bid for a new lot, closes the window, opens it
// again and finds the same bid.
func TestFirstStartToWalkAwayBid(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	s := newScreen(t, "lots #1.db")
	s.start()
	s.picture("first-start")
	s.enterLot()
	before := s.picture("verdict")
	bid := s.walkAway()
	s.close()
	s.start()
	s.keys("Down", "Return", "ctrl+4")
	s.until("the verdict looks as it did: compare verdict.png and reopened.png",
		func() bool { return same(before, s.shot("reopened"), verdictArea) })
	if again := s.walkAway(); again != bid {
		t.Errorf("the bid was %d and is %d after opening again", bid, again)
	}
	s.undo()
	s.close()
}

// verdictArea holds the walk-away bid on a window of 1280 x 720.
var verdictArea = image.Rect(960, 90, 1260, 380)

// enterLot enters a lot: its facts and damage, and what it should sell for.
func (s *screen) enterLot() {
	s.keys("ctrl+n", "ctrl+1")
	s.typed("2017\tOstrane\tPell\tS\t\t61,200")
	s.salvage()
	s.keys("ctrl+2")
	s.typed("2b")     // 12 front, the first area: functional, bolted
	s.click(355, 359) // 03 right side: a click selects, and gives the plan the keyboard
	s.typed("1")
	s.picture("damage")
	s.keys("ctrl+4")
	s.typed("9,000\t10.5k\t12000")
	s.until("a walk-away bid is kept", func() bool { return s.bid() != nil })
	for _, section := range []string{"1", "3", "5", "6"} {
		s.keys("ctrl+" + section)
		s.picture("section-" + section)
	}
	s.keys("ctrl+4")
}

// salvage goes on from the odometer to the title document, and chooses the second: salvage.
func (s *screen) salvage() {
	s.typed(strings.Repeat("\t", 14))
	s.keys("Down", "Down", "Down", "Return")
	s.until("the title is a salvage title", func() bool { return s.lotCase().Lot.Title.Document == "salvage" })
}

// undo takes an edit back that was made before the window was closed.
func (s *screen) undo() {
	s.keys("ctrl+z")
	s.until("undo after opening again takes the price back", func() bool {
		guess := s.lotCase().Resale.Guess
		return guess == nil || guess.High != 12000
	})
	s.picture("undone")
}

// lotCase reads the case of the one lot that the store keeps.
func (s *screen) lotCase() valuation.Case {
	book := s.open()
	defer book.Close()
	entries, err := book.Entries(context.Background())
	if err != nil || len(entries) > 1 {
		s.t.Fatal(len(entries), err)
	}
	if len(entries) == 0 {
		return valuation.Case{}
	}
	l, err := book.Lot(context.Background(), entries[0].ID)
	if err != nil {
		s.t.Fatal(err)
	}
	return l.Case
}

// waited is how long anything may take on a machine that is busy with other work.
const waited = 30 * time.Second

// until polls until something holds that the program is to bring about.
func (s *screen) until(what string, holds func() bool) {
	s.t.Helper()
	for end := time.Now().Add(waited); !holds(); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			s.shot("failed")
			s.t.Fatalf("not within %v: %s", waited, what)
		}
	}
}

// cursor is how many pixels may differ between two pictures of a screen that stands still: more than a blinking cursor has.
const cursor = 120

// settled returns a picture of the screen once it stands still.
func (s *screen) settled(name string) image.Image {
	last := s.shot(name)
	s.until("the screen stands still", func() bool {
		next := s.shot(name)
		still := differing(last, next) <= cursor
		last = next
		return still
	})
	return last
}

// differing counts the pixels in which two pictures of one size differ.
func differing(a, b image.Image) int {
	n := 0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				n++
			}
		}
	}
	return n
}

// blank reports whether a picture of the screen is of one colour below the menu.
func blank(p image.Image) bool {
	first := p.At(300, 200)
	for y := 60; y < 600; y += 3 {
		for x := 0; x < 1200; x += 3 {
			if p.At(x, y) != first {
				return false
			}
		}
	}
	return true
}

func (s *screen) open() *store.Store {
	book, err := store.Open(context.Background(), s.store)
	if err != nil {
		s.t.Fatal(err)
	}
	return book
}

// bid reads the walk-away bid that the store keeps of the lot as it stands; nil: none yet.
func (s *screen) bid() *money.Amount {
	book := s.open()
	defer book.Close()
	entries, err := book.Entries(context.Background())
	if err != nil || len(entries) != 1 || entries[0].Answer == nil || entries[0].Answer.Stale {
		return nil
	}
	return entries[0].Answer.WalkAway
}

// walkAway waits for that bid.
func (s *screen) walkAway() money.Amount {
	s.until("a walk-away bid is kept", func() bool { return s.bid() != nil })
	return *s.bid()
}

// start opens the program and waits for its window.
func (s *screen) start() {
	s.running = exec.Command(s.program, "--store", s.store)
	if s.running.Stderr = s.errs; s.errs == nil {
		s.running.Stderr = os.Stderr
	}
	if err := s.running.Start(); err != nil {
		s.t.Fatal(err)
	}
	running := s.running.Process
	s.t.Cleanup(func() { _ = running.Kill() }) // after a failure: it would take the keys meant for the next
	s.until("a window comes up", func() bool {
		return exec.Command("xdotool", "search", "--onlyvisible", "--name", "^Walkline$").Run() == nil
	})
	s.until("the window is painted", func() bool { return !blank(s.shot("started")) })
	s.settled("started")
}

// closing asks the window to close as a window manager does.
const closing = `
from Xlib import X, display, protocol
d = display.Display()
def walk(w):
    if w.get_wm_name() == 'Walkline':
        return w
    for c in w.query_tree().children:
        found = walk(c)
        if found:
            return found
w = walk(d.screen().root)
w.send_event(protocol.event.ClientMessage(window=w, client_type=d.intern_atom('WM_PROTOCOLS'),
    data=(32, [d.intern_atom('WM_DELETE_WINDOW'), X.CurrentTime, 0, 0, 0])))
d.flush()
`

// close closes the window and waits until the program has ended by itself.
func (s *screen) close() {
	if out, err := exec.Command("/usr/bin/python3", "-c", closing).CombinedOutput(); err != nil {
		s.t.Fatalf("closing: %v %s", err, out)
	}
	timer := time.AfterFunc(20*time.Second, func() { _ = s.running.Process.Kill() })
	err := s.running.Wait()
	timer.Stop()
	if err != nil {
		s.t.Errorf("the program did not end by itself: %v", err)
	}
}

func (s *screen) do(args ...string) {
	if out, err := exec.Command("xdotool", args...).CombinedOutput(); err != nil {
		s.t.Fatalf("xdotool %s: %v %s", strings.Join(args, " "), err, out)
	}
}

func (s *screen) keys(keys ...string) {
	for _, k := range keys {
		s.do("key", "--delay", "40", k)
	}
}

// typed types a text; a tab goes to the next field.
func (s *screen) typed(text string) {
	for i, part := range strings.Split(text, "\t") {
		if i > 0 {
			s.do("key", "Tab")
		}
		if part != "" {
			s.do("type", "--delay", "40", "--args", "1", part, "getmouselocation") // asks the display, which has then passed on the keys
		}
	}
}

func (s *screen) click(x, y int) {
	s.do("mousemove", strconv.Itoa(x), strconv.Itoa(y), "click", "1")
}

// picture writes what the screen shows once it stands still, and returns it.
func (s *screen) picture(name string) image.Image { return s.settled(name) }

// shot writes what the screen shows now, and returns it.
func (s *screen) shot(name string) image.Image {
	path := filepath.Join(s.pictures, "window-"+name+".png")
	if out, err := exec.Command("import", "-window", "root", path).CombinedOutput(); err != nil {
		s.t.Fatalf("taking a picture: %v %s", err, out)
	}
	f, err := os.Open(path)
	if err != nil {
		s.t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		s.t.Fatal(err)
	}
	return img
}

// same reports whether two pictures agree in an area.
func same(a, b image.Image, area image.Rectangle) bool {
	for y := area.Min.Y; y < area.Max.Y; y++ {
		for x := area.Min.X; x < area.Max.X; x++ {
			if a.At(x, y) != b.At(x, y) {
				return false
			}
		}
	}
	return true
}
