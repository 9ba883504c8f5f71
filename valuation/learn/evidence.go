package learn

import (
	"math"

	"walkline/valuation/lot"
)

// widest is how far a ratio may lie from 1, either way, before it is taken for a slip of the pen and left out by name.
// Starter value, from memory.
const widest = 8

// observed is one ratio of one build: the logarithm of actual / foretold median, taken back to the starter values.
type observed struct {
	key     string // of the factor; empty: all of its family together
	log     float64
	own     float64 // log variance that the forecast states itself
	pull    float64 // sum of the items' standard deviations over the forecast: how it leans on the common factor
	squares float64 // sum of the items' variances over the forecast squared
}

// forgotten is how little a build may count before it counts for nothing: it is more than thirteen half-lives old.
const forgotten = 1e-4

// faded returns how much a build of that day counts today: one half for each half-life of age; 1 where the day is not known.
func faded(day, today lot.Date, halfLife float64) float64 {
	age, known := day.Days(today)
	if !known || age <= 0 {
		return 1
	}
	w := math.Exp2(-float64(age) / halfLife)
	if w < forgotten {
		return 0
	}
	return w
}

// tally is a build's foretold and actual figures of one key.
type tally struct {
	mean, squares, sum float64 // of the forecast: mean, sum of variances, sum of standard deviations
	came               float64
	itemised           bool // every actual figure names its line or risk
	any                bool // there is an actual figure
}

func (t *tally) add(mean, sd float64) {
	t.mean += mean
	t.squares += sd * sd
	t.sum += sd
}

// observed returns the ratio that a tally shows, and whether it shows one.
func (t tally) observed(key string, loading float64) (observed, bool) {
	if !t.any || t.mean <= 0 || t.came <= 0 {
		return observed{}, false
	}
	own := ((1-loading*loading)*t.squares + loading*loading*t.sum*t.sum) / (t.mean * t.mean)
	own = math.Log1p(own)
	return observed{key, math.Log(t.came/t.mean) + own/2, own, t.sum / t.mean, t.squares / (t.mean * t.mean)}, true
}

// hours returns the ratios of a build's own hours: by trade where trades are known, else of all hours.
func (b Build) hours() []observed {
	if b.Foretold == nil {
		return nil
	}
	var out []observed
	for _, trade := range lot.Trades {
		t := b.tally(HoursKind, trade)
		for _, w := range b.Came.Worked {
			if w.Trade == trade {
				t.came += w.Hours
			}
		}
		if o, ok := t.observed(trade, b.loading()); ok {
			out = append(out, o)
		}
	}
	if len(out) == 0 && b.Came.Hours != nil {
		t := tally{came: *b.Came.Hours, any: true}
		for _, i := range b.Foretold.Items {
			if i.Kind == HoursKind {
				b.expect(&t, i)
			}
		}
		if o, ok := t.observed("", b.loading()); ok {
			out = append(out, o)
		}
	}
	return b.allowed(out)
}

// moneyKey names the factor of a money item: the source of a part, else its kind.
func moneyKey(k Kind, source string) string {
	if k == PartKind {
		return "parts/" + source
	}
	return string(k)
}

// spent returns the ratios of a build's money for parts by source, materials, outside work and hidden damage; where
// receipts are not told apart, of all money for known work.
func (b Build) spent() []observed {
	if b.Foretold == nil {
		return nil
	}
	var out []observed
	seen := map[string]bool{}
	for _, r := range b.Came.Receipts {
		key := moneyKey(r.Kind, r.Source)
		if seen[key] {
			continue
		}
		seen[key] = true
		t := b.tally(r.Kind, r.Source)
		for _, other := range b.Came.Receipts {
			if moneyKey(other.Kind, other.Source) == key && b.foreseen(other) {
				t.came += b.Major(other.Paid)
			}
		}
		if o, ok := t.observed(key, b.loading()); ok {
			out = append(out, o)
		}
	}
	if o, ok := b.looseParts(); ok {
		out = append(out, o)
	}
	if len(out) == 0 && b.Came.Repair != nil {
		t := tally{came: b.Major(*b.Came.Repair), any: true}
		for _, i := range b.Foretold.Items {
			if i.Kind != HoursKind && i.Kind != HiddenKind {
				b.expect(&t, i)
			}
		}
		if o, ok := t.observed("", b.loading()); ok {
			out = append(out, o)
		}
	}
	return b.allowed(out)
}

// foreseen reports whether a receipt can be held against the forecast of its kind. A part that was bought from a source
// which its line does not know says nothing of that source's prices, nor does a bill that may be for any of several parts.
func (b Build) foreseen(r Receipt) bool {
	if r.Kind != PartKind || r.Line == "" {
		return true
	}
	known, parts := false, map[string]bool{}
	for _, i := range b.Foretold.Items {
		if i.Kind != PartKind || i.Line != r.Line {
			continue
		}
		known = true
		if i.Key == r.Source && !i.Quoted && (r.Part == "" || i.Part == r.Part) {
			parts[i.Part] = true
		}
	}
	return !known || len(parts) == 1
}

// tally returns the foretold figures of one kind and key that the build's actual figures are to be held against. Where
// every actual figure names its line, each line counts as needed that has one; else each counts by its chance.
func (b Build) tally(k Kind, key string) tally {
	t := tally{itemised: true}
	named := map[string]bool{}
	note := func(kind Kind, source, line, risk, part string) {
		if kind != k || source != key {
			return
		}
		t.any = true
		if line == "" && risk == "" {
			t.itemised = false
		}
		named[line+"\x00"+risk+"\x00"+part], named[line+"\x00"+risk+"\x00"] = true, true
	}
	for _, r := range b.Came.Receipts {
		if b.foreseen(r) {
			note(r.Kind, r.Source, r.Line, r.Risk, r.Part)
		}
	}
	for _, w := range b.Came.Worked {
		note(HoursKind, w.Trade, w.Line, w.Risk, "")
	}
	for _, i := range b.Foretold.Items {
		if i.Kind != k || i.Key != key || i.Quoted {
			continue
		}
		switch {
		case !t.itemised:
			b.expect(&t, i)
		case named[i.Line+"\x00"+i.Risk+"\x00"+i.Part] || named[i.Line+"\x00"+i.Risk+"\x00"] && partless(b.Came.Receipts, i),
			i.Risk == "" && i.Chance >= 1, i.Risk != "" && b.Came.Risks[i.Risk] == Found:
			f := b.Foretold.Factors.of(i)
			t.add(i.Mean/f, i.SD/f)
		}
	}
	return t
}

// partless reports whether a receipt of the item's line and source names no part, so that it may be for this one.
func partless(receipts []Receipt, i Item) bool {
	if i.Kind != PartKind {
		return true
	}
	for _, r := range receipts {
		if r.Kind == PartKind && r.Line == i.Line && r.Source == i.Key && r.Part == "" {
			return true
		}
	}
	return false
}

// expect adds an item by its chance: of a risk that was found 1, of one that was not there 0.
func (b Build) expect(t *tally, i Item) {
	chance := i.Chance
	switch b.Came.Risks[i.Risk] {
	case Found:
		chance = 1
	case NotThere:
		chance = 0
	}
	f := b.Foretold.Factors.of(i)
	mean, sd := i.Mean/f, i.SD/f
	t.add(chance*mean, math.Sqrt(chance*sd*sd+chance*(1-chance)*mean*mean))
}

// of returns the factor that the factors in force put on an item.
func (f Factors) of(i Item) float64 {
	var r *Ratio
	switch i.Kind {
	case HoursKind:
		return factorIn(f.Hours, i.Key)
	case PartKind:
		return factorIn(f.Parts, i.Key)
	case MaterialsKind:
		r = f.Materials
	case OutsideKind:
		r = f.Outside
	case HiddenKind:
		r = f.Hidden
	}
	return r.factor()
}

func factorIn(m map[string]Ratio, key string) float64 {
	if r, ok := m[key]; ok {
		return r.Factor
	}
	return 1
}

// factor returns the factor of a ratio, 1 where there is none.
func (r *Ratio) factor() float64 {
	if r == nil {
		return 1
	}
	return r.Factor
}

// loading returns the loading that was in force at the forecast.
func (b Build) loading() float64 {
	if l := b.Foretold.Factors.Loading; l != nil {
		return l.Value
	}
	return starterLoading
}

// starterLoading is the loading of a case that names none: the default of the case file.
const starterLoading = 0.3

// allowed takes off the part of each ratio that the winner's allowance had counted already: a lot that was won costs more
// than it seemed, on average, and the forecast's profit knew that.
func (b Build) allowed(all []observed) []observed {
	p := b.Foretold
	if p.Cost.Mean <= 0 || p.Terms.CostAllow <= 0 {
		return all
	}
	for i := range all {
		all[i].log -= math.Log1p(p.Terms.CostAllow / p.Cost.Mean)
	}
	return all
}
