package book

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// Subject is what an action belongs to: each has a history of its own, which undo and redo walk.
type Subject string

// The subjects that are one of a kind.
const (
	Board  Subject = "board"  // the list of lots
	Sale   Subject = "sale"   // what is recorded while lots are sold
	Buys   Subject = "buys"   // the list of what was won and lost
	Record Subject = "record" // the learned factors
)

// Worksheet is the case and the photographs of one lot.
func Worksheet(lot int64) Subject { return Subject(fmt.Sprintf("lot:%d", lot)) }

// Build is what came of one lot.
func Build(lot int64) Subject { return Subject(fmt.Sprintf("build:%d", lot)) }

// Bench is one section of the shop's own values.
func Bench(section string) Subject { return Subject("bench:" + section) }

// Section returns the section of a subject of the Bench, and whether it is one.
func (s Subject) Section() (string, bool) { return strings.CutPrefix(string(s), "bench:") }

// Step is one action, as it is kept: all of it or nothing.
type Step struct {
	Subject  Subject
	Label    string // what undo names
	Typing   string // a field being typed in: steps that follow each other in the same one are one step; empty: a step of its own
	Forced   bool   // written even where it clashes
	Lots     []Change
	New      []New
	Settings []Setting
	Shelf    []Shelved
	Decision *Decision
}

// Change is what is done to a lot that is there. Only what differs between Before and After is written. Freeze, where it is not
// nil, is frozen with it.
type Change struct {
	Before, After Lot
	Freeze        *Prediction
}

// New is a lot that is not there yet. Taken back, it is removed; done again, it is there with all that it had.
type New struct {
	State    lot.State // empty: to look at
	Archived bool
	Case     valuation.Case
	Build    build.Build
	Freeze   *Prediction // what is foretold of it, kept for good; nil: nothing
}

// Setting is one of the shop's values, any that has a JSON form; nil takes it away. Before is what it was made from; where both
// are objects they are compared field by field.
type Setting struct {
	Name          string
	Before, After any
}

// Shelved is what is done to one comparable on the shelf. Before nil: it is new, and given its place; After nil: it is taken off.
// Only what differs is written.
type Shelved struct{ Before, After *Comparable }

// Done is what came of a step, or of taking one back or doing it again.
type Done struct {
	Did       bool     // false: there was nothing to do, and the rest is empty
	Label     string   // of the step
	Lots      []int64  // that it changed, new ones last and in their order
	Revisions []int64  // of those lots, as they stand now
	Parts     []string // of lots, that it changed: status, lot, damage, findings, lines, risks, rows, build, photos, or a key of the case file
	Settings  []string // that it changed
	Shelf     []int64  // the places on the shelf that it changed, new ones last and in their order
	Merged    bool     // what is kept had moved on: it now holds more than the step's After
	Left      []string // fields that an undo or redo left alone because they were changed since, in words
	Stayed    []string // lots that an undo or redo would have taken off, but for what was done to them since, in words
}

// Reach is what undo and redo of a subject would do next; an empty label: nothing. A long step changes thousands of rows.
type Reach struct {
	Undo, Redo         string
	LongUndo, LongRedo bool
}

// Clash is the error of a step whose fields were changed by something else since.
type Clash struct {
	Lot    string   // its number on the list; empty: none, or a setting
	Fields []string // as paths: lot.odometer
	Stayed []string // lots that would have been taken off, but for what was done to them since, in words
}

// Error says what clashes.
func (c *Clash) Error() string {
	return "changed elsewhere since: " + strings.Join(append(slices.Clip(c.Fields), c.Stayed...), ", ")
}
