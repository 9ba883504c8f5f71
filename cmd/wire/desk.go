package wire

import (
	"fmt"
	"sync"
	"time"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/store/csvfile"
	"walkline/store/grid"
	"walkline/store/plain"
	"walkline/store/table"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/hammer"
	"walkline/valuation/lot"
)

// Store is what the desk needs of whatever keeps the lots; *store.Store is one.
type Store interface {
	desk.Book
	desk.Files
	desk.Vault
}

// NewDesk returns the desk over a store, with the catalogues and the demo that the program ships.
// Errors: a shipped document has a fault, named.
func NewDesk(book Store) (*desk.Desk, error) {
	know, err := Shipped()
	if err != nil {
		return nil, err
	}
	went := hammer.Starter()
	know.Hammer = &went
	demo, err := demos()
	if err != nil {
		return nil, err
	}
	return &desk.Desk{Book: book, Read: plain.Read, Put: plain.Put, Files: book, Vault: book, Importer: Importer{}, Lister: Lister{},
		Past: PastTables{know.Risks}, Look: Kinds, Copied: grid.Tabbed, Listing: Listing, Press: Press{}, Documents: Documents{}, Know: know,
		Edition: assets.Edition(),
		Memory:  valuation.NewMemory(),
		Share:   Share,
		Starter: starter(demo[0]),
		Demo:    func() []valuation.Case { return demo },
		Today:   func() lot.Date { return lot.Date(time.Now().Format(time.DateOnly)) }}, nil
}

// Shipped returns the catalogues that the program ships. They are read once, which takes a tenth of a second, and nobody changes them.
// Errors: those of [NewDesk].
var Shipped = sync.OnceValues(func() (valuation.Knowledge, error) {
	know, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults) > 0 {
		return know, fmt.Errorf("reading the shipped catalogues: %w", faults[0])
	}
	if know.Parts, faults = casefile.Assemblies(assets.Assemblies()); len(faults) > 0 {
		return know, fmt.Errorf("reading the shipped assemblies: %w", faults[0])
	}
	return know, nil
})

// demos is the demo sale, read once.
var demos = sync.OnceValues(demoCases)

// Documents reads and writes documents as package casefile does.
type Documents struct{}

// Decode reads a document strictly.
func (Documents) Decode(data []byte, into any) []valuation.Fault { return casefile.Decode(data, into) }

// Encode writes a document.
func (Documents) Encode(v any, currency string) []byte { return casefile.Encode(v, currency) }

// demoCases returns the three lots of the demo sale with their comparables inside.
func demoCases() ([]valuation.Case, error) {
	var cases []valuation.Case
	for _, name := range assets.DemoCases() {
		c, err := demoCase(name)
		if err != nil {
			return nil, fmt.Errorf("reading the demo lot %s: %w", name, err)
		}
		cases = append(cases, c)
	}
	return cases, nil
}

func demoCase(name string) (valuation.Case, error) {
	data, err := assets.Demo(name)
	if err != nil {
		return valuation.Case{}, err
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		return c, faults[0]
	}
	if c.Resale.Comparables == "" {
		return c, nil
	}
	file, err := assets.Demo(c.Resale.Comparables)
	if err != nil {
		return c, err
	}
	rows, _, err := csvfile.RowsOf(file, table.Stated{Wanted: c.Currency, Distance: "mi", On: c.ValuedOn})
	if err != nil {
		return c, err
	}
	c.Resale.Comparables = ""
	c.Resale.Rows = csvfile.Merge(nil, rows).Rows
	return c, nil
}

// starter returns the starter values of the shop's terms: the demo's terms, rates and rules, and nothing of its vehicle.
//
// The house rules are those of a beginner with little cash. Starter values, ours: 1,000 of expected profit, or the weeks are given away; a
// loss in one of four at most, because starter values are wide and a tighter limit refuses for the width alone; 2,500 lost on average in
// the worst tenth and 15,000 tied up, which a first year can bear; 15 an hour, about what other work pays; 150 days.
// A margin of 5 % is for what was forgotten. Of the wrecks of testdata whose rebuild leaves that profit four in five get a bid, and what is
// refused is heavy (a test of package assets).
func starter(demo valuation.Case) valuation.Case {
	c := valuation.Defaults()
	c.Currency = demo.Currency
	c.Buying, c.Time, c.Selling, c.Labour = demo.Buying, demo.Time, demo.Selling, demo.Labour
	c.Rules, c.Market.Rivals = demo.Rules, demo.Market.Rivals
	return c
}
