package salefile

import (
	"encoding/json"
	"fmt"

	"github.com/shopspring/decimal"

	"walkline/store/casefile"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

// Format is the version of the document that this program reads.
const Format = "walkline-sale/1"

// Fault is one thing wrong with a document.
type Fault = casefile.Fault

type document struct {
	Format   string       `json:"format"`
	Currency string       `json:"currency"`
	Cash     money.Amount `json:"cash"`
	Hours    float64      `json:"hours"`
	Bays     int          `json:"bays"`
	CashIn   []income     `json:"cash_in"`
	BaysFree []freed      `json:"bays_free"`
	Later    later        `json:"later"`
	Lots     []row        `json:"lots"`
}

// income is money that comes in between the lots.
type income struct {
	Day    lot.Date     `json:"day"`
	Amount money.Amount `json:"amount"`
}

// freed is bays that come free between the lots.
type freed struct {
	Day  lot.Date `json:"day"`
	Bays int      `json:"bays"`
}

// later holds rates, not invoiced money: any decimals, as a number or a string.
type later struct {
	Cash decimal.Decimal `json:"cash"`
	Hour decimal.Decimal `json:"hour"`
	Bay  decimal.Decimal `json:"bay"`
}

func (l later) rates() sale.Later {
	return sale.Later{Cash: l.Cash.InexactFloat64(), Hour: l.Hour.InexactFloat64(), Bay: l.Bay.InexactFloat64()}
}

type row struct {
	ID       string         `json:"id"`
	Day      lot.Date       `json:"day"`
	Worth    money.Amount   `json:"worth"`
	WalkAway *money.Amount  `json:"walk_away"`
	Beside   money.Amount   `json:"beside"`
	Hours    float64        `json:"hours"`
	Days     float64        `json:"days"`
	Hammer   prob.Three     `json:"hammer" unit:"money"`
	BidSteps []invoice.Step `json:"bid_steps"`
	invoice.Terms
}

// The keys that must stand.
var (
	needed      = []string{"cash", "hours", "bays", "lots"}
	neededOfLot = []string{"id", "worth", "walk_away", "beside", "hours", "hammer", "bid_steps"}
)

// Read returns the sale that the document describes, and every fault found in it; with any fault it must not be planned.
func Read(data []byte) (sale.Sale, []Fault) {
	var d document
	form := casefile.Decode(data, &d)
	cur, known := money.Lookup(d.Currency)
	if !known {
		return sale.Sale{}, append(form, missing(data)...)
	}
	if d.Format != Format {
		return sale.Sale{}, []Fault{{Key: "format", Value: fmt.Sprintf("%q", d.Format), Want: Format + ", the version that this program reads"}}
	}
	form = append(form, missing(data)...)
	s := sale.Sale{Currency: cur, Purse: sale.Purse{Cash: d.Cash, Hours: d.Hours, Bays: d.Bays}, Later: d.Later.rates()}
	for _, in := range d.CashIn {
		s.In = append(s.In, sale.Income(in))
	}
	for _, f := range d.BaysFree {
		s.Freed = append(s.Freed, sale.Freed(f))
	}
	var values []Fault
	for i, r := range d.Lots {
		if r.Tax.Base == "" {
			r.Tax.Base = "hammer"
		}
		values = append(values, hammer(fmt.Sprintf("lots[%d].hammer", i), r.Hammer)...)
		s.Lots = append(s.Lots, sale.Lot{ID: r.ID, Day: r.Day, Worth: r.Worth, WalkAway: r.WalkAway, Beside: r.Beside, Hours: r.Hours,
			Days: r.Days, Hammer: r.Hammer, Steps: r.BidSteps, Terms: r.Terms})
	}
	return s, append(form, casefile.Unsaid(form, append(values, Faults(s.Check())...))...)
}

// Faults returns the faults of a sale or of its results under their keys.
func Faults(found []sale.Fault) []Fault {
	var out []Fault
	for _, f := range found {
		out = append(out, Fault{Key: f.Path, Value: f.Value, Want: f.Want})
	}
	return out
}

// mostHammer is beyond any vehicle in any currency.
const mostHammer = 1e12

func hammer(key string, t prob.Three) []Fault {
	if !t.Ordered() || t.Low < 0 || t.High > mostHammer {
		return []Fault{{Key: key, Value: t.Text(),
			Want: "rising from 0 or more to no more than " + prob.Plain(mostHammer)}}
	}
	return nil
}

// missing names the keys that must stand and do not. What is no object has its own fault already.
func missing(data []byte) []Fault {
	var faults []Fault
	absent := func(keys map[string]json.RawMessage, at string, wanted []string) {
		for _, k := range wanted {
			if _, stands := keys[k]; !stands && keys != nil {
				faults = append(faults, Fault{Key: at + k, Value: "nothing", Want: "a value: it must be said"})
			}
		}
	}
	var root map[string]json.RawMessage
	if json.Unmarshal(trimmed(data), &root) != nil {
		return nil
	}
	absent(root, "", needed)
	var lots []json.RawMessage
	if json.Unmarshal(root["lots"], &lots) != nil {
		return faults
	}
	for i, l := range lots {
		var keys map[string]json.RawMessage
		if json.Unmarshal(l, &keys) == nil {
			absent(keys, fmt.Sprintf("lots[%d].", i), neededOfLot)
		}
	}
	return faults
}
