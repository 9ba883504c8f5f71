package listing_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/listing"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// offered is an invented listing in the short words of a sale; what it says was read by a person and written down by hand.
const offered = "2019 Ostrane Pell LX 4DR, Run & Drive, all airbags deployed, Sec: minor dents/scratches, retail value $14,900, " +
	"sale 12/01/2026, secondary damage rear, no keys"

func fill(t *testing.T, text string, change func(*valuation.Case)) (valuation.Case, listing.Found) {
	c := valuation.Defaults()
	c.Currency, c.ValuedOn = "USD", "2026-11-27"
	if change != nil {
		change(&c)
	}
	c, f, err := listing.Fill(c, text)
	if err != nil {
		t.Fatal(err)
	}
	return c, f
}

func TestTheShortWordsOfASaleAreRead(t *testing.T) {
	c, f := fill(t, offered, nil)
	if l := c.Lot; l.Trim != "LX" || l.Condition != "drives" || l.SaleDate != "2026-12-01" || l.Keys == nil || *l.Keys ||
		l.Listed == nil || *l.Listed.ValueBefore != 14900 || l.Listed.Currency != "USD" || len(l.Airbags) > 0 {
		t.Errorf("%+v, listed %+v", l, l.Listed)
	}
	if c.Survey == nil || c.Survey.Doors != 4 {
		t.Errorf("doors: %+v", c.Survey)
	}
	if len(c.Damage) != 1 || c.Damage[0].Area != "06" {
		t.Errorf("damage %+v", c.Damage)
	}
	for _, words := range []string{"all airbags deployed (which ones", "Sec: minor dents/scratches (names no area"} {
		if !slices.ContainsFunc(f.Left, func(s string) bool { return strings.HasPrefix(s, words) }) {
			t.Errorf("%q is not said among %q", words, f.Left)
		}
	}
	if len(f.Left) != 2 {
		t.Errorf("left %q", f.Left)
	}
}

// A text names doors, airbags, the value and the day in many ways; what it does not say is not filled in.
func TestPlainWordsOfAListing(t *testing.T) {
	for text, right := range map[string]func(c valuation.Case) bool{
		"4-door, starts":         func(c valuation.Case) bool { return c.Survey.Doors == 4 && c.Lot.Condition == "starts" },
		"Doors: 2":               func(c valuation.Case) bool { return c.Survey.Doors == 2 },
		"2DR coupe":              func(c valuation.Case) bool { return c.Survey.Doors == 2 },
		"side airbags deployed":  func(c valuation.Case) bool { return slices.Equal(c.Lot.Airbags, []string{"side"}) },
		"no airbags deployed":    func(c valuation.Case) bool { return len(c.Lot.Airbags) == 0 },
		"no front airbags blown": func(c valuation.Case) bool { return len(c.Lot.Airbags) == 0 },
		"airbags not deployed":   func(c valuation.Case) bool { return len(c.Lot.Airbags) == 0 },
		"no keys front airbags deployed": func(c valuation.Case) bool {
			return slices.Equal(c.Lot.Airbags, []string{"front"}) && !*c.Lot.Keys
		},
		"does not start, worth 9,000": func(c valuation.Case) bool {
			return c.Lot.Condition == "dead" && *c.Lot.Listed.ValueBefore == 9000
		},
		"Value: EUR 8,200":           func(c valuation.Case) bool { return c.Lot.Listed.Currency == "EUR" },
		"sells on Dec 3, 2026":       func(c valuation.Case) bool { return c.Lot.SaleDate == "2026-12-03" },
		"Sale date: 03/04/2027":      func(c valuation.Case) bool { return c.Lot.SaleDate == "" }, // both are ahead
		"Sale date: 12/30/2026":      func(c valuation.Case) bool { return c.Lot.SaleDate == "2026-12-30" },
		"Secondary: left side":       func(c valuation.Case) bool { return c.Damage[0].Area == "09" },
		"brakes value for the money": func(c valuation.Case) bool { return c.Lot.Listed == nil },
	} {
		if c, f := fill(t, text, nil); !right(c) {
			t.Errorf("%q: %+v %+v %+v; facts %v, left %q", text, c.Lot, c.Survey, c.Damage, f.Facts, f.Left)
		}
	}
}

// Two texts of the day of the sale, in either order: they may agree, and one may settle the other; else neither is taken.
func TestTwoDaysOfASaleAreHeldTogether(t *testing.T) {
	for text, want := range map[string]lot.Date{
		"Sale date: 12/01/2026\nsells on 25/12/2026":        "",
		"Sale date: 25/12/2026\nSale date: 12/01/2026":      "",
		"Sale date: Dec 1, 2026\nsells on 12/01/2026":       "2026-12-01",
		"Sale date: 03/04/2027\nsells on April 3, 2027":     "2027-04-03",
		"Sale date: 12/01/2026\nSale date: 12/01/2026":      "2026-12-01",
		"Sale date: 2026-12-01\nsells on 2026-12-02, lot 4": "",
	} {
		c, f := fill(t, text, nil)
		if c.Lot.SaleDate != want || want == "" && len(f.Left) != 2 || want != "" && len(f.Left) != 0 {
			t.Errorf("%q: %q, facts %v, left %q", text, c.Lot.SaleDate, f.Facts, f.Left)
		}
	}
}

// What a part of the vehicle is worth is not what the vehicle was.
func TestTheWorthOfAPartIsLeft(t *testing.T) {
	for _, text := range []string{"new tires worth 800", "stereo worth $400", "Needs parts worth 1,500", "Vehicle has rims valued at 1200",
		"worth 1.2 miles", "well worth 100 bucks", "not worth 900", "2019 Kettrick Pell stereo worth $400", "value for money 2019"} {
		c, f := fill(t, text, nil)
		if c.Lot.Listed != nil || len(f.Left) == 0 || strings.ContainsAny(c.Lot.Make+c.Lot.Trim, "$v0") {
			t.Errorf("%q: %+v of %+v, facts %v, left %q", text, c.Lot.Listed, c.Lot, f.Facts, f.Left)
		}
	}
	for _, text := range []string{"worth 9,000", "the vehicle is valued at $9,000", "est value 9000", "Value before loss: 9,000"} {
		if c, f := fill(t, text, nil); c.Lot.Listed == nil || *c.Lot.Listed.ValueBefore != 9000 || len(f.Left) > 0 {
			t.Errorf("%q: %+v, left %q", text, c.Lot.Listed, f.Left)
		}
	}
}

func TestWhatACaseDoesNotBearIsLeftAndSaid(t *testing.T) {
	value := 12000.0
	c, f := fill(t, "value $14,900, sale 03/04/2027", func(c *valuation.Case) {
		c.Lot.Listed = &lot.Listed{ValueBefore: &value, Currency: "USD"}
	})
	if *c.Lot.Listed.ValueBefore != value || len(f.Facts) > 0 || len(f.Left) != 2 {
		t.Errorf("listed %+v, facts %v, left %q", c.Lot.Listed, f.Facts, f.Left)
	}
	if c, f = fill(t, "value $14,900", func(c *valuation.Case) { c.Currency = "EUR" }); c.Lot.Listed != nil || len(f.Left) != 1 {
		t.Errorf("dollars in a book of euros: %+v, left %q", c.Lot.Listed, f.Left)
	}
}

// A figure that the lot has from its list already stays beside one that a text adds in the same currency, and keeps out one of another.
func TestAFigureOfTheListOutlastsAText(t *testing.T) {
	estimate, value := 4000.0, 9000.0
	for _, has := range []lot.Listed{{RepairEstimate: &estimate, RunOrder: 3}, {RepairEstimate: &estimate, ValueBefore: &value},
		{RepairEstimate: &estimate, Currency: "USD"}} {
		had := func(c *valuation.Case) { c.Lot.Listed = new(has) }
		c, f := fill(t, "value: $9,000", had)
		if l := c.Lot.Listed; l.RepairEstimate == nil || *l.ValueBefore != value || l.Currency != has.Currency || len(f.Left) > 0 {
			t.Errorf("%+v to %+v, left %q", has, l, f.Left)
		}
		c, f = fill(t, "value: EUR 9,000", had)
		if !reflect.DeepEqual(c.Lot.Listed, &has) || len(f.Left) != 1 || len(f.Facts) > 0 {
			t.Errorf("%+v to %+v, left %q", has, c.Lot.Listed, f.Left)
		}
	}
}
