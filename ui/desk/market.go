package desk

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"maps"
	"reflect"
	"slices"

	"walkline/store/book"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// marketSetting is the setting that keeps what the shelf teaches: it takes seconds to work out, and is worked out anew where the shelf
// says otherwise.
const marketSetting = "market of the shelf"

// Market is what all comparables on the shelf teach of the shop's own market, by currency.
type Market struct {
	Of      string          `json:"of"` // fingerprint of the rows that it was fitted to
	Markets []resale.Market `json:"markets"`
	Stale   bool            `json:"-"` // the shelf may have changed since
}

// loadMarket reads what the shelf taught last.
func (d *Desk) loadMarket(ctx context.Context, s State) State {
	var m Market
	if _, err := d.Book.Setting(ctx, marketSetting, &m); err != nil {
		return s.troubled("read what the shelf teaches", err)
	}
	m.Stale = true
	s.Market = m
	return s
}

// FitMarket works out what the shelf teaches, unless it says the same as when that was worked out last. It may run on any goroutine.
// Errors: the shelf can't be read, or the work was cancelled.
func (d *Desk) FitMarket(ctx context.Context, before Market) (Market, error) {
	shelf, err := d.Book.Shelf(ctx)
	if err != nil {
		return before, err
	}
	m := Market{Of: fingerprint(shelf)}
	if m.Of == before.Of {
		before.Stale = false
		return before, nil
	}
	by := map[string][]resale.Row{}
	for _, c := range shelf {
		by[c.Currency] = append(by[c.Currency], c.Row)
	}
	for _, code := range slices.Sorted(maps.Keys(by)) {
		currency, known := money.Lookup(code)
		if err := ctx.Err(); err != nil || !known {
			return before, err
		}
		if fitted, ok := resale.ShopMarket(by[code], d.Know.Prior, currency); ok {
			m.Markets = append(m.Markets, fitted)
		}
	}
	return m, nil
}

// fingerprint tells one content of the shelf from another.
func fingerprint(shelf []book.Comparable) string {
	if len(shelf) == 0 {
		return ""
	}
	sum := sha256.New()
	to := json.NewEncoder(sum)
	for _, c := range shelf {
		if err := to.Encode(c); err != nil {
			return "" // a figure that is not finite: nothing is learned
		}
	}
	return hex.EncodeToString(sum.Sum(nil))
}

// MarketFitted is the state once it has been worked out what the shelf teaches. Lots are valued with it from now on.
func (d *Desk) MarketFitted(ctx context.Context, s State, m Market, err error) State {
	if err != nil {
		return s.troubled("work out what the shelf teaches", err)
	}
	same := reflect.DeepEqual(m.Markets, s.Market.Markets)
	if s.Market = m; m.Of != "" || !same {
		if err := d.Book.PutSetting(ctx, marketSetting, m); err != nil {
			return s.troubled("keep what the shelf teaches", err)
		}
	}
	if same {
		return s
	}
	return d.uses(s, s.Own)
}
