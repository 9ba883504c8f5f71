package desk

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Shop is what new lots begin with: the shop's own terms. Money is in its currency.
type Shop struct {
	Format           string            `json:"format"` // walkline-shop/1
	Currency         string            `json:"currency"`
	OdometerUnit     string            `json:"odometer_unit"`
	Rules            bid.Rules         `json:"rules"`
	Labour           valuation.Labour  `json:"labour"`
	Time             valuation.Time    `json:"time"`
	Selling          valuation.Selling `json:"selling"`
	Rivals           int               `json:"rivals"`
	WinnersAllowance bool              `json:"winners_allowance"`
	OwnShare         float64           `json:"own_share"`
	Narrowing        bool              `json:"narrowing"`
	Season           []float64         `json:"season"` // of prices, by month from January; empty: none
	Buying           valuation.Buying  `json:"buying"` // of any sale that is no yard below
	Yards            []Yard            `json:"yards"`
	Builder          Builder           `json:"builder"`
	DecimalMark      string            `json:"decimal_mark,omitempty"` // in the window's fields: "," or "."; empty: "."
}

// Builder is who rebuilds, as the file for the rebuilt inspection names them.
type Builder struct {
	Name    string `json:"name"`
	Address string `json:"address"`
	Licence string `json:"licence"`
}

// Yard is what one sale charges; a lot takes the yard whose name its sale has.
type Yard struct {
	Sale   string           `json:"sale"`
	Buying valuation.Buying `json:"buying"`
}

// ShopFormat is the version of the shop's document.
const ShopFormat = "walkline-shop/1"

// shopSetting is the setting that keeps the shop's document.
const shopSetting = "shop"

// ShopOf returns the terms of a case as those of a shop without yards.
func ShopOf(c valuation.Case) Shop {
	s := Shop{Format: ShopFormat, OdometerUnit: c.Lot.OdometerUnit}
	s.Take(c)
	return s
}

// Take takes the terms of a case, its sale's as those of any sale.
func (s *Shop) Take(c valuation.Case) {
	c = c.Clone()
	s.Currency, s.Rules, s.Labour, s.Time, s.Selling = c.Currency, c.Rules, c.Labour, c.Time, c.Selling
	others, _ := c.Market.Others()
	s.Rivals, s.WinnersAllowance, s.Buying = others, c.Run.WinnersAllowance, c.Buying
	s.OwnShare, s.Narrowing, s.Season = c.Market.OwnShare, c.Market.Narrowing, c.Resale.Season
}

// Onto returns a case with the shop's terms: those of the yard of its sale, where there is one, and of any sale otherwise.
func (s Shop) Onto(c valuation.Case) valuation.Case {
	s = valuation.Copy(s)
	c.Currency, c.Rules, c.Labour, c.Time, c.Selling = s.Currency, s.Rules, s.Labour, s.Time, s.Selling
	c.Market.Rivals, c.Run.WinnersAllowance, c.Buying = &s.Rivals, s.WinnersAllowance, s.Buying
	c.Market.OwnShare, c.Market.Narrowing, c.Resale.Season = s.OwnShare, s.Narrowing, s.Season
	usual := s.Rivals
	c.Market.UsualRivals = &usual
	if y := s.Yard(c.Lot.Sale); y >= 0 {
		c.Buying = s.Yards[y].Buying
	}
	return c
}

// Yard returns the place of the yard that a sale's name means, -1 when it means none. Letters' case and spaces around do
// not count.
func (s Shop) Yard(sale string) int {
	sale = strings.TrimSpace(sale)
	for i, y := range s.Yards {
		if sale != "" && strings.EqualFold(strings.TrimSpace(y.Sale), sale) {
			return i
		}
	}
	return -1
}

// Faults returns what of the shop's terms no lot could be valued with, with the keys of the case file.
func (s Shop) Faults() []valuation.Fault {
	var faults []valuation.Fault
	blank := valuation.Defaults()
	blank.ValuedOn = "2000-01-01" // any day: no fact of a lot is judged here
	for i := -1; i < len(s.Yards); i++ {
		blank.Lot.Sale = ""
		if i >= 0 {
			blank.Lot.Sale = s.Yards[i].Sale
		}
		for _, f := range s.Onto(blank).Check() {
			ofSale := strings.HasPrefix(f.Key, "buying.")
			if i >= 0 && ofSale {
				f.Key = s.Yards[i].Sale + ": " + f.Key
			}
			if ofSale || i < 0 && !strings.HasPrefix(f.Key, "resale") && !strings.HasPrefix(f.Key, "lot.") {
				faults = append(faults, f)
			}
		}
	}
	return faults
}

// The groups of terms.
const (
	HouseRules  = "house rules"
	OwnLabour   = "your labor"
	OwnTime     = "time"
	Selling     = "selling"
	OtherBids   = "who else bids"
	SaleCharges = "what the sale charges"
	BringHome   = "bringing it home"
	OfSeason    = "season"
	OfCurrency  = "currency"
)

// termGroups are the parts of the terms that are compared and put back together.
var termGroups = []struct {
	name string
	at   func(*valuation.Case) []any
}{
	{HouseRules, func(c *valuation.Case) []any { return []any{&c.Rules} }},
	{OwnLabour, func(c *valuation.Case) []any { return []any{&c.Labour} }},
	{OwnTime, func(c *valuation.Case) []any { return []any{&c.Time} }},
	{Selling, func(c *valuation.Case) []any { return []any{&c.Selling} }},
	{OtherBids, func(c *valuation.Case) []any {
		return []any{&c.Market.Rivals, &c.Run.WinnersAllowance, &c.Market.OwnShare, &c.Market.Narrowing}
	}},
	{OfSeason, func(c *valuation.Case) []any { return []any{&c.Resale.Season} }},
	{SaleCharges, func(c *valuation.Case) []any { return []any{&c.Buying.BidSteps, &c.Buying.Terms} }},
	{BringHome, func(c *valuation.Case) []any { return []any{&c.Buying.Freight, &c.Buying.Storage} }},
	{OfCurrency, func(c *valuation.Case) []any { return []any{&c.Currency} }},
}

// PutBack sets a group of terms to what another shop has; the yards keep theirs.
func (s *Shop) PutBack(group string, from Shop) {
	to, with := s.Onto(valuation.Defaults()), from.Onto(valuation.Defaults())
	for _, g := range termGroups {
		if g.name != group {
			continue
		}
		was, is := g.at(&to), g.at(&with)
		for i := range was {
			reflect.ValueOf(was[i]).Elem().Set(reflect.ValueOf(is[i]).Elem())
		}
	}
	s.Take(to)
}

// Differing names the groups of terms in which two cases differ.
func Differing(a, b valuation.Case) []string {
	var names []string
	for _, g := range termGroups {
		if !bytes.Equal(written(g.at(&a)), written(g.at(&b))) {
			names = append(names, g.name)
		}
	}
	return names
}

// alike names the groups of terms that two cases have in common, the currency apart.
func alike(a, b valuation.Case) []string {
	differ := Differing(a, b)
	var names []string
	for _, g := range termGroups {
		if g.name != OfCurrency && !slices.Contains(differ, g.name) {
			names = append(names, g.name)
		}
	}
	return names
}

// written returns values in a form that says the same for an empty list as for none, and for 1.10 as for 1.1.
func written(values []any) []byte {
	text, err := json.Marshal(values)
	if err != nil {
		return []byte(err.Error()) // a figure that is not finite differs from any that is
	}
	for _, none := range []string{"[]", "{}"} {
		text = bytes.ReplaceAll(text, []byte(none), []byte("null"))
	}
	return text
}

// loadShop reads the shop's terms, the starter values where none are kept. What can't be read is said, and not written over.
func (d *Desk) loadShop(ctx context.Context, s State) State {
	starter := ShopOf(d.Starter)
	starter.DecimalMark = d.DecimalMark
	s.Shop, s.StarterShop = starter, starter
	var text json.RawMessage
	found, err := d.Book.Setting(ctx, shopSetting, &text)
	if err != nil {
		return s.troubled("read the Bench's values", err)
	}
	if !found {
		return s
	}
	kept := Shop{OwnShare: d.Starter.Market.OwnShare, Narrowing: d.Starter.Market.Narrowing} // of a document that says nothing of them
	if faults := d.Documents.Decode(text, &kept); len(faults) > 0 {
		return s.troubled("read the Bench's values, so the starter values are shown", faults[0])
	}
	if kept.Format != ShopFormat {
		return s.troubled("read the Bench's values, so the starter values are shown",
			fmt.Errorf("they have the format %q, this version reads %s", kept.Format, ShopFormat))
	}
	s.Shop = kept
	return s
}

// EditShop changes the shop's terms.
func EditShop(words string, change func(*Shop)) Action {
	return keeps(words, func(ctx context.Context, d *Desk, s State, a Action) State {
		shop := valuation.Copy(s.Shop)
		change(&shop)
		return d.keepShop(ctx, s, a, shop)
	})
}

func (d *Desk) keepShop(ctx context.Context, s State, a Action, shop Shop) State {
	encoded := func(x Shop) json.RawMessage { return d.Documents.Encode(x, x.Currency) }
	return d.keepSetting(ctx, s, a, shopSetting, encoded(s.Shop), encoded(shop))
}

// keepSetting keeps one of the shop's own values as a step.
func (d *Desk) keepSetting(ctx context.Context, s State, a Action, name string, before, after any) State {
	step := a.step(s)
	step.Settings = []book.Setting{{Name: name, Before: before, After: after}}
	s, _ = d.keep(ctx, s, "keep "+a.words, step)
	return s
}

// SetCurrency changes the currency of the shop's terms. The figures stay as they are written; nothing is converted.
func SetCurrency(code string) Action {
	return keeps("currency", func(ctx context.Context, d *Desk, s State, a Action) State {
		if code == s.Shop.Currency {
			return s
		}
		if _, known := money.Lookup(code); !known {
			return s.troubled("change the currency", fmt.Errorf("%q is no ISO 4217 code such as USD", code))
		}
		renamed, shop := s.Shop, Shop{}
		renamed.Currency = code
		if faults := d.Documents.Decode(d.Documents.Encode(renamed, s.Shop.Currency), &shop); len(faults) > 0 {
			return s.troubled("change the currency to "+code, faults[0])
		}
		return ifKept(d.keepShop(ctx, s, a, shop),
			"The figures of the Bench are now in "+code+", as they were written: nothing was converted. Lots that are there keep their currency.")
	})
}

// TakeTerms gives the open lot the shop's terms, those of its sale's yard where there is one.
func TakeTerms() Action {
	return keeps("take the Bench's terms", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		c := s.Open.Case
		if c.Currency != s.Shop.Currency && (len(c.Resale.Rows) > 0 || c.Resale.Guess != nil || len(c.Repair.Lines) > 0) {
			return s.troubled(a.words, errors.New("the lot's prices are in "+c.Currency+", the Bench's in "+s.Shop.Currency+"; nothing converts "+
				"them"))
		}
		edit := EditLot(a.words, func(c *valuation.Case) { *c = s.Shop.Onto(*c) })
		return edit.do(ctx, d, s, edit)
	})
}

// blank returns a case with the shop's terms and nothing of a vehicle.
func (d *Desk) blank(s State) valuation.Case {
	c := s.Shop.Onto(d.Starter)
	c.ValuedOn, c.Lot = d.Today(), lot.Lot{OdometerUnit: s.Shop.OdometerUnit, OdometerStatus: d.Starter.Lot.OdometerStatus,
		Condition: d.Starter.Lot.Condition}
	return c
}

// atSale returns a case whose sale's name was just changed with the terms of that sale's yard, unless its own were
// changed by hand.
func (s State) atSale(before, after valuation.Case) valuation.Case {
	if before.Lot.Sale == after.Lot.Sale || len(s.Shop.Yards) == 0 || s.Shop.Currency != after.Currency {
		return after
	}
	kept := s.Shop.Onto(before)
	if bytes.Equal(written([]any{kept.Buying}), written([]any{after.Buying})) {
		after.Buying = s.Shop.Onto(after).Buying
	}
	return after
}

// compared is the state with what sets the open lot's terms apart from the shop's.
func (s State) compared() State {
	if s.Open == nil {
		return s
	}
	o := *s.Open
	o.Yard = ""
	if y := s.Shop.Yard(o.Case.Lot.Sale); y >= 0 {
		o.Yard = s.Shop.Yards[y].Sale
	}
	o.Differs = Differing(o.Case, s.Shop.Onto(o.Case))
	o.Starters = alike(o.Case, s.StarterShop.Onto(o.Case))
	return s.with(o)
}
