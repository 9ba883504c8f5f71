package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"strings"
	"time"

	"walkline/assets"
	"walkline/store"
	"walkline/store/casefile"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/hammer"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
)

// shop is what a store holds for learning.
type shop struct {
	know   valuation.Knowledge
	today  lot.Date
	now    learn.Factors
	past   []learn.Build
	went   []hammer.Result          // what lots went for
	frozen map[int64]valuation.Case // of the last prediction of each past lot
	open   []openLot
	doubts []string
}

// openLot is a lot that is still to be bid for.
type openLot struct {
	ID   int64
	Name string
	Case valuation.Case
}

// shopOrder is what the command line asks of a command on a store.
type shopOrder struct {
	path        string
	asJSON, dry bool
}

// readShopOrder reads the arguments of a command on a store.
func readShopOrder(command string, args []string, errs io.Writer) (shopOrder, int) {
	var o shopOrder
	for _, a := range args {
		switch {
		case a == "--json" || a == "-json":
			o.asJSON = true
		case command == "tune" && (a == "--dry-run" || a == "-dry-run"):
			o.dry = true
		case strings.HasPrefix(a, "-"):
			fmt.Fprintf(errs, "walk %s: no option %s\n", command, a)
			return o, faulty
		case o.path != "":
			fmt.Fprintf(errs, "walk %s: one store at a time, got %s and %s\n", command, o.path, a)
			return o, faulty
		default:
			o.path = a
		}
	}
	if o.path == "" {
		fmt.Fprintf(errs, "walk %s: which store?\n", command)
		return o, faulty
	}
	return o, done
}

// readShop reads a store; one that is not there is not made.
func readShop(path string, errs io.Writer) (*shop, int) {
	s := &shop{today: lot.Date(time.Now().Format(time.DateOnly))}
	know, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior())
	if code := report(faults, "", errs); code != done {
		return nil, code
	}
	s.know = know
	if err := s.read(path); err != nil {
		fmt.Fprintf(errs, "%v\n", err)
		return nil, failed
	}
	return s, done
}

func (s *shop) read(path string) error {
	ctx := context.Background()
	file, err := store.OpenToRead(ctx, path)
	if err != nil {
		return err
	}
	defer file.Close()
	s.doubts = append(s.doubts, file.Said()...)
	if err := s.factors(ctx, file); err != nil {
		return err
	}
	if err := s.builds(ctx, file); err != nil {
		return err
	}
	return s.lots(ctx, file)
}

// factors reads the factors in force: those after the last decision.
func (s *shop) factors(ctx context.Context, file *store.Store) error {
	history, err := file.Decisions(ctx)
	if n := len(history); n > 0 {
		s.now = history[n-1].After
	}
	return err
}

func (s *shop) builds(ctx context.Context, file *store.Store) error {
	kept, err := file.Builds(ctx)
	if err != nil {
		return err
	}
	s.past, s.went = desk.Learnt(kept), desk.ResultsOf(kept)
	frozen, doubts, err := file.FrozenCases(ctx)
	s.frozen, s.doubts = frozen, append(s.doubts, doubts...)
	return err
}

// lots reads the lots that are still to be bid for; one that cannot be valued is named and left out.
func (s *shop) lots(ctx context.Context, file *store.Store) error {
	entries, err := file.Entries(ctx)
	if err != nil {
		return err
	}
	shelf, err := file.Shelf(ctx)
	if err != nil {
		return err
	}
	for _, e := range entries {
		if e.Archived || e.State != lot.ToLookAt && e.State != lot.LookedAt && e.State != lot.Bid {
			continue
		}
		l, err := file.Lot(ctx, e.ID)
		if err != nil {
			return err
		}
		name := desk.LotName(e.Number, e.Sale, e.ModelYear, e.Make, e.Model)
		l.Case = desk.Shelved(l, shelf).ByList()
		if faults := l.Case.Check(); len(faults) > 0 {
			s.doubts = append(s.doubts, fmt.Sprintf("%s cannot be valued: %s", name, faults[0].Error()))
			continue
		}
		s.open = append(s.open, openLot{e.ID, name, l.Case})
	}
	return nil
}

// currency returns the currency that most past buys have, else that of the first open lot.
func (s *shop) currency() string {
	count, best := map[string]int{}, ""
	for _, b := range s.past {
		count[b.Currency]++
		if best == "" || count[b.Currency] > count[best] {
			best = b.Currency
		}
	}
	if best == "" && len(s.open) > 0 {
		best = s.open[0].Case.Currency
	}
	return best
}

// writeJSON writes v as an indented document and returns the exit code.
func writeJSON(out, errs io.Writer, v any) int {
	e := json.NewEncoder(out)
	e.SetIndent("", "  ")
	if err := e.Encode(v); err != nil {
		fmt.Fprintf(errs, "walk: writing the answer: %v\n", err)
		return failed
	}
	return done
}
