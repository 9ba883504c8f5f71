package sale

import (
	"fmt"
	"math"
	"strings"

	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Fault is one thing wrong with a sale or its results: where, the value, and what would be right.
type Fault = invoice.Fault

// What a sale may hold at the most.
const (
	mostLots  = 1_000
	mostLegal = 1_000_000 // legal bids up to the walk-away bids, over all lots
	mostBays  = 1_000
	mostTime  = 1e5
	mostLater = 1e9
)

// Check returns every fault of the sale, where something comes in also a lot without a day; none means that New is safe. The laws of the
// hammer price are their owner's to check.
func (s Sale) Check() []Fault {
	c := checking{cur: s.Currency}
	c.amount("cash", s.Cash)
	c.number("hours", s.Hours, mostTime)
	c.number("bays", float64(s.Bays), mostBays)
	c.number("later.cash", s.Later.Cash, mostLater)
	c.number("later.hour", s.Later.Hour, mostLater)
	c.number("later.bay", s.Later.Bay, mostLater)
	c.comesIn(s)
	if len(s.Lots) > mostLots {
		c.add("lots", len(s.Lots), fmt.Sprintf("no more than %d lots", mostLots))
	}
	seen, legal := map[string]bool{}, int64(0)
	for i, l := range s.Lots {
		at := fmt.Sprintf("lots[%d].", i)
		if l.ID == "" || seen[l.ID] {
			c.add(at+"id", fmt.Sprintf("%q", l.ID), "an id of its own")
		}
		seen[l.ID] = true
		c.day(at+"day", l.Day, len(s.In)+len(s.Freed) > 0)
		if i > 0 && l.Day < s.Lots[i-1].Day {
			c.add(at+"day", l.Day, "no day before that of the lot that runs before it")
		}
		legal += c.lot(at, l)
		if legal > mostLegal {
			c.add(at+"bid_steps", legal, fmt.Sprintf("no more than %d legal bids up to the walk-away bids of all lots", mostLegal))
			break
		}
	}
	return c.faults
}

// comesIn checks the money that comes in and the bays that come free.
func (c *checking) comesIn(s Sale) {
	if len(s.In) > mostLots {
		c.add("cash_in", len(s.In), fmt.Sprintf("no more than %d amounts", mostLots))
	}
	for i, in := range s.In {
		at := fmt.Sprintf("cash_in[%d].", i)
		c.amount(at+"amount", in.Amount)
		c.day(at+"day", in.Day, true)
	}
	if len(s.Freed) > mostLots {
		c.add("bays_free", len(s.Freed), fmt.Sprintf("no more than %d days", mostLots))
	}
	for i, f := range s.Freed {
		at := fmt.Sprintf("bays_free[%d].", i)
		c.number(at+"bays", float64(f.Bays), mostBays)
		c.day(at+"day", f.Day, true)
	}
}

// checking collects faults.
type checking struct {
	cur    money.Currency
	faults []Fault
}

func (c *checking) add(path string, value any, want string) {
	c.faults = append(c.faults, Fault{Path: path, Value: fmt.Sprint(value), Want: want})
}

func (c *checking) amount(path string, a money.Amount) {
	if a < 0 {
		c.add(path, c.cur.Text(a), "no less than 0")
	}
}

func (c *checking) number(path string, x, most float64) {
	if !(x >= 0 && x <= most) {
		c.add(path, x, "a number from 0 to "+prob.Plain(most))
	}
}

// day checks a day; needed says that it has to stand.
func (c *checking) day(path string, d lot.Date, needed bool) {
	if !d.Known() && (needed || d != "") {
		c.add(path, fmt.Sprintf("%q", d), "a day such as 2026-11-30")
	}
}

// lot checks one lot and returns how many legal bids it has up to its walk-away bid.
func (c *checking) lot(at string, l Lot) int64 {
	c.amount(at+"beside", l.Beside)
	c.number(at+"hours", l.Hours, mostTime)
	c.number(at+"days", l.Days, mostTime)
	before := len(c.faults)
	for _, f := range append(invoice.CheckSteps(l.Steps, c.cur), l.Terms.Check(c.cur)...) {
		f.Path = at + f.Path
		c.faults = append(c.faults, f)
	}
	if l.WalkAway == nil || len(c.faults) > before {
		return 0
	}
	c.amount(at+"walk_away", *l.WalkAway)
	_, n := invoice.Stand(l.Steps, *l.WalkAway)
	return n
}

// Result is what came of one lot: won at a price, lost, or withdrawn.
type Result struct {
	ID    string
	Won   bool
	Price money.Amount
}

// ParseResult reads ID=won@PRICE, ID=lost or ID=withdrawn. Errors: what is none of these.
func ParseResult(text string, cur money.Currency) (Result, error) {
	at := strings.LastIndex(text, "=")
	if at < 1 {
		return Result{}, fmt.Errorf("%q is no result: want ID=won@PRICE, ID=lost or ID=withdrawn", text)
	}
	r := Result{ID: text[:at]}
	price, won := strings.CutPrefix(text[at+1:], "won@")
	if !won {
		if what := text[at+1:]; what != "lost" && what != "withdrawn" {
			return r, fmt.Errorf("%q: want won@PRICE, lost or withdrawn after the id", text)
		}
		return r, nil
	}
	a, err := cur.Parse(price)
	r.Won, r.Price = true, a
	return r, err
}

// After returns the sale that is left after the results, which are in running order, one for each lot from the first on; what was
// left may lie below zero. Faults: a lot that is not the next to run, and a price that cannot be bid. Limits: s has passed Check.
func (s Sale) After(results []Result) (Sale, []Fault) {
	for i, r := range results {
		path := fmt.Sprintf("then[%d]", i)
		if len(s.Lots) == 0 {
			return s, []Fault{{Path: path, Value: r.ID, Want: "no more results than lots"}}
		}
		l := s.Lots[0]
		if r.ID != l.ID {
			return s, []Fault{{Path: path, Value: r.ID, Want: "the result of lot " + l.ID + ", the next in running order"}}
		}
		if r.Won {
			if !invoice.Legal(l.Steps, r.Price) {
				return s, []Fault{{Path: path, Value: s.Currency.Text(r.Price), Want: "a legal bid"}}
			}
			s.Purse = s.Purse.Won(l, r.Price, s.Currency)
		}
		s.Lots = s.Lots[1:]
	}
	return s, nil
}

// Won returns what is left after a win at that price, which need not be a legal bid.
func (p Purse) Won(l Lot, price money.Amount, cur money.Currency) Purse {
	return Purse{p.Cash - l.Terms.Total(price, cur).Total - l.Beside, fromTicks(ticks(p.Hours) - ticks(l.Hours)), p.Bays - 1}
}

// Hours are counted in millionths, so that the order of wins does not tell in the last bit.
func ticks(hours float64) int64 { return int64(math.Round(hours * 1e6)) }
func fromTicks(t int64) float64 { return float64(t) / 1e6 }
