package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime/debug"
	"slices"
	"strings"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/store/book"
	"walkline/store/grid"
	"walkline/store/runlist"
	"walkline/store/table"
	"walkline/ui/desk"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/patterns"
)

// ranking is the document of "walk rank --json".
type ranking struct {
	Format  string      `json:"format"`
	Lots    []rankedLot `json:"lots"`
	Refused []refusal   `json:"refused"`
	Doubts  []string    `json:"doubts"`
}

// rankedLot is one lot of a ranked list; a figure that is not known is null.
type rankedLot struct {
	Number      string   `json:"number"`
	VIN         string   `json:"vin,omitempty"`
	Vehicle     string   `json:"vehicle"`
	Currency    string   `json:"currency"`
	FirstGuess  bool     `json:"first_guess"` // nobody has looked: the bid rests on what such lots turn out to be
	Decision    string   `json:"decision"`
	WalkAway    *string  `json:"walk_away"`
	MeanProfit  *float64 `json:"mean_profit"` // at the walk-away bid
	LossChance  *float64 `json:"loss_chance"`
	LookWorth   *float64 `json:"look_worth"` // money a minute that looking at the lot brings; null: it has been looked at
	LookGain    *float64 `json:"look_gain"`  // money
	LookMinutes float64  `json:"look_minutes"`
	Surveyed    int      `json:"surveyed"` // lots in the shop's file whose surveys the first guess rests on; 0: starter values
	WinChance   *float64 `json:"win_chance"`
	WinBasis    string   `json:"win_basis"` // guess | results
	Needs       []string `json:"needs"`     // what a bid still needs
	Trouble     string   `json:"trouble"`   // why it cannot be valued
}

// rank is the command "walk rank": the lots of a run list with first guess or bid, what looking is worth, and the chance to win.
func rank(args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("walk rank", flag.ContinueOnError)
	flags.SetOutput(errs)
	var o grid.Options
	var s table.Stated
	bookPath := flags.String("book", "", "the shop's file")
	asJSON := flags.Bool("json", false, "print JSON")
	r := reading[runlist.Row]{name: "walk rank", kind: runlist.Lists(), keys: lotKeys, out: out, errs: errs}
	given := r.stating(flags, &o, &s)
	paths, err := parseMixed(flags, args)
	if err != nil || len(paths) != 1 {
		fmt.Fprint(errs, "walk rank: one list, walk rank LIST [--book shop.db] [--json]\n")
		return faulty
	}
	if err := given(); err != nil {
		fmt.Fprintf(errs, "walk rank: %v\n", err)
		return faulty
	}
	data, err := readFile(paths[0])
	if err != nil {
		fmt.Fprintf(errs, "walk rank: reading the list: %v\n", err)
		return failed
	}
	res, err := r.read(data, o, s)
	if err == nil && len(res.Open) > 0 {
		for _, q := range res.Open {
			fmt.Fprintf(errs, "%s: %s\n", paths[0], q.Text)
		}
		return faulty
	}
	if err != nil {
		fmt.Fprintf(errs, "%s: %v\n", paths[0], err)
		return faulty
	}
	doc, err := ranked(*bookPath, runlist.Lots(res.Rows))
	if err != nil {
		fmt.Fprintf(errs, "walk rank: %v\n", err)
		return failed
	}
	for _, x := range res.Refused {
		for _, f := range x.Faults {
			doc.Refused = append(doc.Refused, refusal{x.Line, f.Column, f.Value, f.Reason})
		}
	}
	if *asJSON {
		return writeJSON(out, errs, doc)
	}
	return writeText(out, errs, rankText(doc))
}

// sparing is how far the heap may grow, in percent of what is in use, before a ranking looks for what it can give back.
const sparing = 400

// ranked values the lots by what the shop's file says, or with the starter values where there is none.
func ranked(path string, lots []lot.Lot) (ranking, error) {
	doc := ranking{Format: "walkline-rank/1", Refused: []refusal{}, Doubts: []string{}, Lots: []rankedLot{}}
	d, state, done, err := rankDesk(path, &doc)
	if err != nil {
		return doc, err
	}
	defer done()
	defer debug.SetGCPercent(debug.SetGCPercent(sparing)) // a list is valued once, and what it took is given back at the end
	rated, err := d.Rank(context.Background(), state, lots)
	for _, x := range rated {
		doc.Lots = append(doc.Lots, rankedOf(x))
	}
	slices.SortStableFunc(doc.Lots, func(a, b rankedLot) int { return worthOf(b) - worthOf(a) })
	return doc, err
}

// worthOf orders the lots: those most worth a look come first.
func worthOf(l rankedLot) int {
	if l.LookWorth == nil {
		return -1
	}
	return int(1e6 * *l.LookWorth)
}

// noBook is a shop without a file: it holds nothing.
type noBook struct{ wire.Store }

func (noBook) Surveys(context.Context) ([]patterns.Seen, error) { return nil, nil }
func (noBook) Lots(context.Context) ([]book.Listed, error)      { return nil, nil }
func (noBook) Builds(context.Context) ([]book.Bought, error)    { return nil, nil }
func (noBook) Shelf(context.Context) ([]book.Comparable, error) { return nil, nil }

// rankDesk returns the desk over the shop's file, to be read, with what it holds; without a file, over the starter values.
func rankDesk(path string, doc *ranking) (*desk.Desk, desk.State, func() error, error) {
	if path == "" {
		d, err := wire.NewDesk(noBook{})
		if err != nil {
			return nil, desk.State{}, nil, err
		}
		doc.Doubts = append(doc.Doubts, "No shop's file was given: fees, rates, limits and bid steps are those of the invented demo.")
		return d, desk.State{Shop: desk.ShopOf(d.Starter)}, func() error { return nil }, nil
	}
	if _, err := os.Stat(path); err != nil {
		return nil, desk.State{}, nil, fmt.Errorf("opening the shop's file: %w", err)
	}
	ctx := context.Background()
	file, err := store.OpenToRead(ctx, path)
	if err != nil {
		return nil, desk.State{}, nil, err
	}
	d, err := wire.NewDesk(file)
	if err != nil {
		return nil, desk.State{}, nil, errors.Join(err, file.Close())
	}
	state := d.Load(ctx)
	doc.Doubts = append(doc.Doubts, file.Said()...)
	if state.Trouble != "" {
		doc.Doubts = append(doc.Doubts, state.Trouble)
	}
	return d, state, file.Close, nil
}

func rankedOf(x desk.Rated) rankedLot {
	a, c := x.Answer, x.Case
	l := rankedLot{Number: x.Lot.Number, VIN: x.Lot.VIN, Currency: c.Currency, Trouble: x.Trouble, Needs: []string{},
		Vehicle: strings.TrimSpace(fmt.Sprint(x.Lot.ModelYear, " ", x.Lot.Make, " ", x.Lot.Model)), Decision: a.Decision,
		FirstGuess: a.FirstGuess != nil, WinChance: a.WinChance, WinBasis: a.WinBasis}
	if x.Trouble != "" {
		return l
	}
	for _, n := range a.Needs {
		l.Needs = append(l.Needs, n.Key)
	}
	if g := a.FirstGuess; g != nil {
		l.Surveyed = g.Surveyed
		l.LookGain, l.LookWorth, l.LookMinutes = g.LookGain, g.LookRate, g.LookTime
	}
	if a.WalkAway != nil {
		l.WalkAway = bidText(c.Currency, a.WalkAway)
		l.MeanProfit, l.LossChance = &a.Profit.Mean, &a.Profit.LossChance
	}
	return l
}

// restsOn says what first guesses take such lots to turn out to be.
func restsOn(lots []rankedLot) string {
	most := 0
	for _, l := range lots {
		most = max(most, l.Surveyed)
	}
	if most == 0 {
		return "What such lots turn out to be is starter values."
	}
	return fmt.Sprintf("What such lots turn out to be is starter values, moved by what you surveyed: at most %d lots of a kind in your file.",
		most)
}

// rankText writes a ranking for a person at a terminal.
func rankText(doc ranking) string {
	p := page{}
	p.line("%-10s %-28s %14s %12s %8s %14s %8s", "Lot", "Vehicle", "walk-away bid", "", "to win", "look, a minute", "needs")
	for _, l := range doc.Lots {
		cur, _ := money.Lookup(l.Currency)
		bid, called, win, look := "-", "", "-", "-"
		if l.WalkAway != nil {
			bid = *l.WalkAway
		}
		if l.FirstGuess {
			called = "first guess"
		}
		if l.WinChance != nil {
			win = fmt.Sprintf("%.0f %%", 100**l.WinChance)
		}
		if l.LookWorth != nil {
			look = cur.Whole(*l.LookWorth)
		}
		needs := l.Trouble
		for _, n := range l.Needs {
			needs += " " + n
		}
		p.line("%-10s %-28.28s %14s %12s %8s %14s %s", l.Number, l.Vehicle, bid, called, win, look, needs)
	}
	p.list("How to read it", append([]string{
		"A first guess is a bid on a lot that nobody has looked at. Look at the lots at the top before you bid.", restsOn(doc.Lots),
		"The chance to win goes by what lots like it went for, or by starter values where your file holds few results."}, doc.Doubts...))
	return p.String()
}
