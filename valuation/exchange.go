package valuation

import (
	"cmp"
	"fmt"
	"slices"

	"walkline/valuation/hidden"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// rate returns what one unit of a catalogue's currency is in the case's, and whether that is known. No currency at all is the case's.
func (c Case) rate(code string) (float64, bool) {
	if code == "" || code == c.Currency {
		return 1, true
	}
	r := c.Market.ExchangeRates[code]
	return r, r > 0
}

// foreign returns the currencies of the catalogues in use for which the case has no rate, each once.
func (w *work) foreign() []string {
	var out []string
	note := func(used bool, of, entry string) {
		code := cmp.Or(entry, of)
		if _, known := w.c.rate(code); used && !known && !slices.Contains(out, code) {
			out = append(out, code)
		}
	}
	note(w.c.Repair.UseCatalogue, w.k.Jobs.Currency, "")
	note(w.c.Hidden.UseCatalogue, w.k.Risks.Currency, "")
	for _, j := range w.k.Jobs.Jobs {
		note(w.c.Repair.UseCatalogue, w.k.Jobs.Currency, j.Currency)
	}
	for _, r := range w.k.Risks.Risks {
		note(w.c.Hidden.UseCatalogue, w.k.Risks.Currency, r.Currency)
	}
	return out
}

// missing returns what keeps the lot from a bid: what the case still needs, and a rate for a catalogue in another currency.
func (w *work) missing() []Need {
	out := w.c.Missing()
	for _, code := range w.foreign() {
		out = append(out, Need{Key: "market.exchange_rates." + code,
			Text: fmt.Sprintf("Costs: enter how many %s one %s is. The catalogue's figures are in %s, and are left out until then.",
				w.c.Currency, code, code)})
	}
	return out
}

// Missing returns what a bid still needs beside what [Case.Check] finds wrong, a rate for each catalogue in another currency among it; the
// case may have faults.
func Missing(c Case, k Knowledge) []Need {
	w := work{c: c, k: k}
	if c.Currency == "" {
		return c.Missing()
	}
	return w.missing()
}

// exchanged returns the planned lines with those of the catalogue in the case's currency; one without a rate is left out.
func (w *work) exchanged(lines []repair.Line) []repair.Line {
	own := map[string]bool{}
	for _, l := range w.c.Repair.Lines {
		own[l.ID] = true
	}
	var out []repair.Line
	for _, l := range lines {
		rate, known := w.c.rate(cmp.Or(l.Currency, w.k.Jobs.Currency))
		switch {
		case own[l.ID] || rate == 1:
			out = append(out, l)
		case known:
			out = append(out, inMoney(l, rate))
		}
	}
	return out
}

// inMoney returns a line with its money times a rate.
func inMoney(l repair.Line, rate float64) repair.Line {
	l.Materials, l.Outside = l.Materials.Times(rate), l.Outside.Times(rate)
	l.Parts = slices.Clone(l.Parts)
	for i, p := range l.Parts {
		p.Options = slices.Clone(p.Options)
		for k := range p.Options {
			o := &p.Options[k]
			for _, t := range []*prob.Three{&o.Price, &o.Freight, &o.CoreBack} {
				*t = t.Times(rate)
			}
		}
		if p.Fallback != nil {
			f := *p.Fallback
			f.Price = f.Price.Times(rate)
			p.Fallback = &f
		}
		l.Parts[i] = p
	}
	return l
}

// exchangedRisks is exchanged for hidden damage.
func (w *work) exchangedRisks(risks []hidden.Risk) []hidden.Risk {
	own := map[string]bool{}
	for _, r := range w.c.Hidden.Risks {
		own[r.ID] = true
	}
	var out []hidden.Risk
	for _, r := range risks {
		if own[r.ID] {
			out = append(out, r)
			continue
		}
		if rate, known := w.c.rate(cmp.Or(r.Currency, w.k.Risks.Currency)); known {
			r.Cost = r.Cost.Times(rate)
			out = append(out, r)
		}
	}
	return out
}

// exchange adds the faults of the exchange rates.
func (f *faults) exchange(m Market) {
	for _, code := range sortedKeys(m.ExchangeRates) {
		at := "market.exchange_rates." + code
		_, known := money.Lookup(code)
		f.unless(known, at, code, "an ISO 4217 code such as USD")
		f.between(at, m.ExchangeRates[code], 1e-6, 1e6)
	}
}
