package checks

import (
	"strings"

	"github.com/shopspring/decimal"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Pack is what one jurisdiction asks. JSON keys are those of its document, one file a jurisdiction.
type Pack struct {
	Format       string      `json:"format"`   // walkline-jurisdiction/1
	ID           string      `json:"id"`       // "US-MI", "US" for a whole country, "*" for anywhere
	Name         string      `json:"name"`     // in words
	Currency     string      `json:"currency"` // of its fees
	Note         string      `json:"note"`
	Thresholds   []Threshold `json:"thresholds"` // salvage and scrap
	Rebuild      []Rebuild   `json:"rebuild"`    // what may be rebuilt
	Documents    []Row       `json:"documents"`  // that the rebuilt inspection asks for
	Fees         []Charge    `json:"fees"`       // and typical days
	PrivateSales *Limit      `json:"private_sales"`
	Inspections  []Row       `json:"inspections"` // emissions and safety, to register or to sell
	Questions    []Row       `json:"questions"`   // insurance, tax and other standing of the seller
}

// PackFormat is the version of a pack's document that this engine reads.
const PackFormat = "walkline-jurisdiction/1"

// Anywhere is the id of the pack that stands in where a jurisdiction has none.
const Anywhere = "*"

// Source is what one row rests on.
type Source struct {
	Citation string   `json:"citation"`
	Status   string   `json:"status"` // read | secondary | from memory
	Read     lot.Date `json:"read"`   // the day on which it was read; empty: from memory
}

// Statuses are the ways in which a row may be known.
var Statuses = []string{"read", "secondary", "from memory"}

// Words says what the row rests on, and to ask.
func (s Source) Words() string {
	switch {
	case s.Citation == "":
		return "From memory: ask the agency."
	case s.Status == "from memory":
		return s.Citation + ", from memory: ask the agency."
	}
	how := map[string]string{"read": "read", "secondary": "read where another page quotes it"}[s.Status]
	return s.Citation + ", " + how + " " + string(s.Read) + ": check with the agency."
}

// Row is one thing that is asked for, in words.
type Row struct {
	Text string `json:"text"`
	Source
}

// Threshold is one total-loss rule: the repair cost is compared with a share of the value, or with what the damage
// leaves of it.
type Threshold struct {
	Name         string           `json:"name"`          // what the rule calls the vehicle
	From         *decimal.Decimal `json:"from"`          // share of the value from which it applies; nil: value less salvage value
	Reached      bool             `json:"reached"`       // the share itself is enough (>=); false: it must be exceeded (>)
	Below        *decimal.Decimal `json:"below"`         // share at which it ends; nil: it does not
	SalvageShare *decimal.Decimal `json:"salvage_share"` // share of the value taken for the salvage value where that is not known
	Note         string           `json:"note"`          // whom the rule is for and what counts as repair
	Source
}

// Rebuild says whether a title may be rebuilt for the road.
type Rebuild struct {
	Title   string `json:"title"` // document or brand
	Allowed bool   `json:"allowed"`
	Row
}

// Charge is a fee or a wait; either may be not known.
type Charge struct {
	Name   string        `json:"name"`
	Amount *money.Amount `json:"amount"`
	Days   *prob.Three   `json:"days"`
	Source
}

// Limit is how many vehicles may be sold before a rule counts the seller as a dealer; it grants no leave to sell that many.
type Limit struct {
	Most   int `json:"most"`   // vehicles
	Months int `json:"months"` // within so many months
	Row
}

// PackFault is one thing wrong with a pack: the key it stands under, the value, and what would be right.
type PackFault struct{ Key, Value, Want string }

// Choose returns the packs that speak for a jurisdiction, the nearest first: its own, its country's, and the one for
// anywhere. Codes are ISO 3166-2 ("US-MI"); letters' case does not count. A later pack with an id stands in the place of
// an earlier one, so that a user's comes before the program's.
func Choose(packs []Pack, code string) []Pack {
	code = strings.ToUpper(strings.TrimSpace(code))
	country, _, _ := strings.Cut(code, "-")
	var chosen []Pack
	for n, id := range []string{code, country, Anywhere} {
		if id == "" || n == 1 && country == code {
			continue
		}
		for i := len(packs) - 1; i >= 0; i-- {
			if strings.EqualFold(packs[i].ID, id) {
				chosen = append(chosen, packs[i])
				break
			}
		}
	}
	return chosen
}

// nearest returns the first list that has anything, with the pack that it is from.
func nearest[T any](packs []Pack, rows func(Pack) []T) (Pack, []T) {
	for _, p := range packs {
		if r := rows(p); len(r) > 0 {
			return p, r
		}
	}
	return Pack{}, nil
}

// shown writes an amount with its currency.
func shown(a money.Amount, code string) string {
	c, _ := money.Lookup(code)
	return c.Show(a)
}
