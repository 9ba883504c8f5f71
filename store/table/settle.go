package table

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/grid"
)

// notation is how the cells of one column are read.
type notation struct {
	decimal  byte
	order    cell.Order
	unit     string
	thousand bool // its heading says that its numbers are thousands
}

// settling works out the notation of whole columns.
type settling struct {
	columns []Became
	forms   []Form // by column; of those that are read
	used    []bool
	body    []grid.Row
	must    int // the column of money without which no row is one, -1 for none
	stated  *Stated
	open    []Question
	notes   []string
	words   []TitleWord
	priced  []bool // by row: it has a price where it must; nil: no row was looked at for it
}

func (s *settling) ask(key, text string, options ...string) {
	s.open = append(s.open, Question{Key: key, Text: text, Options: options})
}

// cells yields the cells of a column that say something, with the places of their rows.
func (s *settling) cells(column int) func(yield func(int, string) bool) {
	return func(yield func(int, string) bool) {
		for i := range s.body {
			r := &s.body[i]
			if column < len(r.Cells) && r.Fault == "" && !cell.Nothing(r.Cells[column]) && !yield(i, r.Cells[column]) {
				return
			}
		}
	}
}

// tally counts what cells prove of one of two notations.
type tally struct{ a, b int }

// settled returns 1 or 2 where nine of ten prove one way, 0 where none does, -1 where they contradict each other.
func (t tally) settled() int {
	switch {
	case t.a == 0 && t.b == 0:
		return 0
	case t.a >= 9*t.b:
		return 1
	case t.b >= 9*t.a:
		return 2
	}
	return -1
}

var marksBy = map[int]byte{1: '.', 2: ','}

// decimals settles the decimal mark of every column of numbers.
func (s *settling) decimals(out []notation) {
	if s.stated.Decimal != "" {
		for i := range out {
			out[i].decimal = s.stated.Decimal[0]
		}
		return
	}
	tallies, all, lone := make([]tally, len(out)), tally{}, make([]string, len(out))
	for i := range out {
		if !s.used[i] || !numeric(s.forms[i]) {
			continue
		}
		t := &tallies[i]
		thousand := tally{}
		for r, c := range s.cells(i) {
			if s.body[r].Number(i) {
				continue
			}
			proves, mark := cell.Evidence(c)
			count(t, proves)
			if mark != 0 && s.forms[i] == Distance {
				lone[i] = c
			} else if mark != 0 {
				count(&thousand, ','+'.'-mark)
			}
		}
		if t.settled() == 0 {
			*t = tally{min(1, thousand.a), min(1, thousand.b)} // 12.500 beside 8,000 proves nothing
			if t.a == t.b {
				*t = tally{}
			}
		}
		all = tally{all.a + t.a, all.b + t.b}
	}
	for i := range out {
		switch way := tallies[i].settled(); {
		case way > 0:
			out[i].decimal = marksBy[way]
		case way < 0:
			s.ask("decimal", fmt.Sprintf("Numbers in %q are written in two ways. Which mark stands before decimals?",
				s.columns[i].Heading), ".", ",")
		case all.settled() > 0 && lone[i] != "":
			out[i].decimal = marksBy[all.settled()]
		case lone[i] != "":
			s.ask("decimal", fmt.Sprintf("%q in %q is a thousand or a fraction. Which mark stands before decimals?", lone[i],
				s.columns[i].Heading), ".", ",")
		}
	}
}

func count(t *tally, mark byte) {
	switch mark {
	case '.':
		t.a++
	case ',':
		t.b++
	}
}

func numeric(f Form) bool { return f == Money || f == Odometer || f == Distance || f == Number }

// orders settles the order of days.
func (s *settling) orders(out []notation) {
	tallies, all, example := make([]tally, len(out)), tally{}, make([]string, len(out))
	for i := range out {
		if !s.used[i] || s.forms[i] != Day {
			continue
		}
		for _, c := range s.cells(i) {
			proven, either := cell.Proves(c)
			switch {
			case proven == cell.DayFirst:
				tallies[i].a++
			case proven == cell.MonthFirst:
				tallies[i].b++
			case either && example[i] == "":
				example[i] = c
			}
		}
		all = tally{all.a + tallies[i].a, all.b + tallies[i].b}
	}
	by := map[int]cell.Order{1: cell.DayFirst, 2: cell.MonthFirst}
	for i := range out {
		way := tallies[i].settled()
		if way == 0 {
			way = all.settled()
		}
		switch {
		case s.stated.Dates != "":
			out[i].order = s.stated.Dates
		case way > 0:
			out[i].order = by[way]
		case tallies[i].settled() < 0:
			s.ask("dates", fmt.Sprintf("Days in %q are written in two ways. Which comes first?", s.columns[i].Heading),
				string(cell.DayFirst), string(cell.MonthFirst))
		case example[i] != "":
			s.ask("dates", fmt.Sprintf("%q in %q can be read in two ways. Which comes first?", example[i], s.columns[i].Heading),
				string(cell.DayFirst), string(cell.MonthFirst))
		}
	}
}

// units settles the unit of lengths that don't say it: the heading's, else what is stated, else the one that half of all cells at
// least say. A cell that says its unit keeps it.
func (s *settling) units(out []notation) {
	unitColumn := slices.Contains(s.forms, Unit)
	known := s.stated.Unit
	for i := range out {
		if s.used[i] && s.forms[i] == Unit && known == "" {
			known = s.oneUnit(i)
		}
	}
	defer func() { s.inVehicles(known) }()
	for _, form := range []Form{Odometer, Distance} {
		for i := range out {
			if !s.used[i] || s.forms[i] != form {
				continue
			}
			says := s.unitsSaid(i, out[i].decimal)
			switch unit := unitIn(s.columns[i].Heading); {
			case unit != "":
				out[i].unit = unit
			case form == Distance && s.stated.Distance != "":
				out[i].unit = s.stated.Distance
			case s.stated.Unit != "":
				out[i].unit = s.stated.Unit
			case says.settles() != "":
				out[i].unit = says.settles()
			case form == Distance && known != "":
				out[i].unit = known
			case says.silent > 0 && (form == Distance || !unitColumn || s.lacksUnit(i)):
				s.ask("unit", fmt.Sprintf("Is %q in miles or kilometers?", s.columns[i].Heading), "mi", "km")
			}
			if !unitColumn {
				s.notes = append(s.notes, says.mixed(s.columns[i].Heading, out[i].unit)...)
			}
			if form == Odometer && known == "" {
				known = out[i].unit
			}
		}
	}
}

// unitsSaid counts the cells of lengths by the unit that they say.
func (s *settling) unitsSaid(column int, decimal byte) unitTally {
	t := unitTally{said: map[string]int{}}
	if s.priced == nil {
		s.price()
	}
	for r, c := range s.cells(column) {
		if !s.priced[r] {
			continue
		}
		if c[len(c)-1] >= '0' && c[len(c)-1] <= '9' && c[0] >= '0' && c[0] <= '9' {
			t.silent++
			continue
		}
		switch l, err := cell.ReadLength(c, decimal); {
		case err != nil:
		case l.Unit != "":
			t.said[l.Unit]++
		case l.Known:
			t.silent++
		}
	}
	return t
}

// price looks for the rows that have the price that they must have: what else another leaves open need not be asked.
func (s *settling) price() {
	s.priced = make([]bool, len(s.body))
	for i, r := range s.body {
		s.priced[i] = s.must < 0
		if s.must >= 0 && s.must < len(r.Cells) {
			_, err := cell.ReadMoney(r.Cells[s.must], 0)
			s.priced[i] = err == nil
		}
	}
}

// oneUnit returns the unit that every cell of a column of units names, empty where they differ.
func (s *settling) oneUnit(column int) (unit string) {
	for _, c := range s.cells(column) {
		if says := cell.UnitOf(c); unit == "" {
			unit = says
		} else if says != unit {
			return ""
		}
	}
	return unit
}

// lacksUnit reports whether a reading stands in a row whose column of units says nothing.
func (s *settling) lacksUnit(column int) bool {
	at := slices.Index(s.forms, Unit)
	for r := range s.cells(column) {
		if cells := s.body[r].Cells; at >= len(cells) || cell.Nothing(cells[at]) {
			return true
		}
	}
	return false
}

// inVehicles asks for the unit of a reading that stands in the cell of a vehicle.
func (s *settling) inVehicles(known string) {
	for i := range s.forms {
		if known != "" || !s.used[i] || s.forms[i] != Vehicle {
			continue
		}
		for _, c := range s.cells(i) {
			if l := cell.Vehicle(c, "", "").Length; l.Known && l.Unit == "" {
				s.ask("unit", fmt.Sprintf("Is the odometer in %q in miles or kilometers?", s.columns[i].Heading), "mi", "km")
				return
			}
		}
	}
}

// unitIn returns the unit that a heading states, empty for none.
func unitIn(heading string) string {
	for _, word := range cell.Words(heading) {
		if unit := cell.UnitOf(word); unit != "" {
			return unit
		}
	}
	return ""
}

// titleUnknown is the answer for a word of a title that says nothing of it.
const titleUnknown = "unknown"

// titles asks for every word of a title that is not known, with how often it stands there.
func (s *settling) titles() {
	times := map[string]int{}
	for i := range s.columns {
		if !s.used[i] || s.forms[i] != Title {
			continue
		}
		for _, c := range s.cells(i) {
			times[c]++
		}
	}
	for _, word := range slices.Sorted(maps.Keys(times)) {
		means, known := titleOf(word, s.stated)
		if known && len(s.words) < mostQuestions {
			s.words = append(s.words, TitleWord{word, times[word], means, mapped(word, s.stated)})
		}
		if known || len(s.open) >= mostQuestions {
			continue
		}
		s.ask("titles", fmt.Sprintf("Title %q, rows with it: %d. What does it mean?", word, times[word]), TitleMeanings...)
		s.open[len(s.open)-1].Word = word
	}
}

// TitleMeanings are the answers to choose from for a word of a title.
var TitleMeanings = []string{"clear", "rebuilt", "salvage", "flood damage", "fire damage", "hail damage", "junk", "parts only",
	titleUnknown}

// TitleWord is a word that stands in the titles of a table, and how it was read.
type TitleWord struct {
	Word   string
	Rows   int    // that have it
	Means  string // clear or a brand; empty: it says nothing of the title
	Stated string // the word under which somebody stated what it means; empty: the program knows it
}

// mapped returns the word under which somebody stated what a word of a title means, empty where nobody did.
func mapped(word string, s *Stated) string {
	for said := range s.Titles {
		if sameTitle(said, word) {
			return said
		}
	}
	return ""
}

func sameTitle(a, b string) bool {
	return strings.EqualFold(a, b) || strings.Join(cell.Words(a), " ") == strings.Join(cell.Words(b), " ")
}

// mostQuestions bounds what is asked of one table.
const mostQuestions = 40

// titleOf returns what a word of a title means, and whether it is known.
func titleOf(word string, s *Stated) (string, bool) {
	if said := mapped(word, s); said != "" {
		means := s.Titles[said]
		if means == titleUnknown {
			means = ""
		}
		return means, true
	}
	return cell.Title(word)
}
