package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
)

// Column is one column of a table: its heading, whether figures stand in it, and its share of the width.
type Column struct {
	Title   string
	Figures bool
	Width   float32
}

// BoardColumns are the columns of the Board.
var BoardColumns = []Column{
	{"Sale day", false, 96}, {"Lot", false, 64}, {"Vehicle", false, 200}, {"Walk-away bid", true, 110}, {"What binds", false, 270},
	{"Chance of loss", true, 110}, {"Expected profit", true, 110}, {"Per own hour", true, 104}, {"State", false, 96},
}

// BoardRow is one lot of the Board.
type BoardRow struct {
	ID    int64
	Cells []string
	entry desk.Entry
}

// Filter is what of the Board is shown and in which order.
type Filter struct {
	Search   string
	Sort     int // column
	Down     bool
	Archived bool
}

// Board returns the rows that the filter lets through, in its order.
func Board(entries []desk.Entry, f Filter) []BoardRow {
	var rows []BoardRow
	for _, e := range entries {
		if e.Archived && !f.Archived {
			continue
		}
		r := boardRow(e)
		if contains(r.Cells, f.Search) || contains([]string{e.Sale}, f.Search) {
			rows = append(rows, r)
		}
	}
	slices.SortStableFunc(rows, func(a, b BoardRow) int {
		c := compare(a, b, f.Sort)
		if f.Down {
			return -c
		}
		return c
	})
	return rows
}

// contains reports whether every word of the search stands somewhere in the cells.
func contains(cells []string, search string) bool {
	all := strings.ToLower(strings.Join(cells, " "))
	for _, word := range strings.Fields(strings.ToLower(search)) {
		if !strings.Contains(all, word) {
			return false
		}
	}
	return true
}

func boardRow(e desk.Entry) BoardRow {
	state := string(e.State)
	if e.Archived {
		state += ", archived"
	}
	cells := []string{string(e.SaleDate), e.Number, Vehicle(e.ModelYear, e.Make, e.Model, e.Trim), "", "not valued yet", "", "", "", state}
	if a := e.Answer; a != nil {
		p := NewPurse(e.Currency)
		cells[3], cells[4] = "do not bid", valuation.RuleWords[a.Binding]
		if a.WalkAway != nil {
			cells[3] = p.Show(*a.WalkAway)
			cells[5], cells[6] = Percent(a.LossChance), p.Whole(a.MeanProfit)
			if a.PerHour != nil {
				cells[7] = p.Whole(*a.PerHour)
			}
		}
		if a.Stale {
			cells[4] += " (edited since)"
		}
	}
	return BoardRow{e.ID, cells, e}
}

// compare orders two rows by a column: figures by their value, those without one last.
func compare(a, b BoardRow, column int) int {
	figure := func(r BoardRow) (float64, bool) {
		s := r.entry.Answer
		if s == nil || s.WalkAway == nil {
			return 0, false
		}
		switch column {
		case 3:
			return float64(*s.WalkAway), true
		case 5:
			return s.LossChance, true
		case 6:
			return s.MeanProfit, true
		}
		if s.PerHour == nil {
			return 0, false
		}
		return *s.PerHour, true
	}
	switch column {
	case 3, 5, 6, 7:
		x, okX := figure(a)
		y, okY := figure(b)
		if okX != okY {
			if okX {
				return -1
			}
			return 1
		}
		return cmp.Compare(x, y)
	case 1:
		return cmp.Or(cmp.Compare(len(a.Cells[1]), len(b.Cells[1])), cmp.Compare(a.Cells[1], b.Cells[1]))
	}
	return cmp.Or(cmp.Compare(a.Cells[column], b.Cells[column]), cmp.Compare(fmt.Sprint(len(a.Cells[1]))+a.Cells[1], fmt.Sprint(len(b.Cells[1]))+b.Cells[1]))
}
