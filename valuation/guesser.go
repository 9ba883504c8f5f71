package valuation

import (
	"reflect"
	"slices"

	"walkline/valuation/hammer"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/memory"
	"walkline/valuation/patterns"
	"walkline/valuation/repair"
)

// Guesser values the lots of a list one after the other under one knowledge, and draws the scenarios of a survey once for all lots that it
// means the same to. The answers are those of [Value] without the ladder, to the bit. Limits: safe for use from any goroutine, one
// valuation at a time.
type Guesser struct {
	memory *Memory
	k      Knowledge
}

// drawn keeps what surveys came to, and knows at which ages and mileages the catalogues change their mind.
type drawn struct {
	works       *memory.Shelf[*work]
	jobs        *repair.Index
	prior       memory.Key
	ages, miles []int
}

// mostWorks is how many surveys are kept: of 400 scenarios in 15 columns each takes 50 kB.
const mostWorks = 1500

// NewGuesser returns a guesser for that knowledge, which nobody changes meanwhile.
func NewGuesser(k Knowledge) *Guesser {
	g := &Guesser{NewMemory(), k}
	d := &drawn{works: memory.NewShelf[*work](mostWorks), jobs: repair.NewIndex(k.Jobs), prior: memory.Of(k.Prior)}
	d.thresholds(reflect.ValueOf(k.Jobs))
	d.thresholds(reflect.ValueOf(k.Risks))
	slices.Sort(d.ages)
	slices.Sort(d.miles)
	g.memory.drawn = d
	return g
}

// Beside returns another guesser under the same knowledge, for a goroutine beside this one's: it shares what is only read.
func (g *Guesser) Beside() *Guesser {
	other, d := &Guesser{NewMemory(), g.k}, *g.memory.drawn
	d.works = memory.NewShelf[*work](mostWorks)
	other.memory.drawn = &d
	return other
}

// Knowing returns the guesser with other results of sales, all else being as it knows it: what it drew stays at hand.
func (g *Guesser) Knowing(went *hammer.Model) *Guesser {
	k := g.k
	k.Hammer = went
	return &Guesser{g.memory, k}
}

// Value is [Value] under the guesser's knowledge.
func (g *Guesser) Value(c Case) (Answer, error) { return g.memory.Value(c, g.k) }

// Compare is [Memory.Compare] under the guesser's knowledge.
func (g *Guesser) Compare(c Case, now, proposed learn.Factors) (Effect, error) {
	return g.memory.Compare(c, g.k, now, proposed)
}

// Over is Value over surveys of the caller's own in the place of those that the list leaves possible, for a lot that nobody has looked at.
// Limits: at least one, their chances sum to 1, the most like each other side by side.
func (g *Guesser) Over(c Case, all []patterns.Pattern) (Answer, error) {
	g.memory.mutex.Lock()
	defer g.memory.mutex.Unlock()
	a, _, err := g.memory.weigh(c, g.k, all...)
	return a, err
}

// thresholds gathers the ages and mileages that the signs below a value ask for.
func (d *drawn) thresholds(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() {
			d.thresholds(v.Elem())
		}
	case reflect.Slice:
		for i := range v.Len() {
			d.thresholds(v.Index(i))
		}
	case reflect.Struct:
		if s, is := v.Interface().(lot.Sign); is {
			d.ages, d.miles = append(d.ages, s.MinAge), append(d.miles, s.MinMiles)
			return
		}
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				d.thresholds(v.Field(i))
			}
		}
	}
}

// class returns how many of the rising thresholds x reaches, -1 where it is not known.
func class(thresholds []int, x float64, known bool) int {
	if !known {
		return -1
	}
	n, _ := slices.BinarySearchFunc(thresholds, x, func(t int, x float64) int {
		if float64(t) <= x {
			return -1
		}
		return 1
	})
	return n
}

// terms names what the scenarios of all surveys of a lot hang on.
func terms(c Case) memory.Key {
	return memory.Of(c.Repair, c.Hidden, c.Labour, c.Time, c.Factors, c.Run, c.Currency, c.Market.ExchangeRates, c.Buying.Freight,
		c.Buying.Storage)
}

// key names all that the scenarios of a survey are drawn from.
func (d *drawn) key(c Case, terms memory.Key) memory.Key {
	miles, knownMiles := c.Lot.Miles()
	age, knownAge := c.Lot.Age()
	return memory.Of(c.feared().Loss, c.Lot.Loss, c.causes(), c.Lot.Airbags, c.Lot.Condition, c.Lot.Keys, c.Damage, c.Survey, c.Findings,
		class(d.ages, float64(age), knownAge), class(d.miles, miles, knownMiles), terms)
}

// playedBy fills the fields from the risks up to the scenarios, from what was drawn before where that is the same.
func (w *work) playedBy(m *Memory, terms memory.Key) error {
	if m.drawn == nil {
		return w.play(m)
	}
	from := m.drawn.works.Recall(m.drawn.key(w.c, terms), func() (*work, int) {
		one := &work{c: w.c, k: w.k, currency: w.currency, jobs: m.drawn.jobs}
		one.failed = one.play(m)
		one.planners = nil
		return one, 1
	})
	w.lines, w.risks, w.struck, w.belief, w.chances, w.played = from.lines, from.risks, from.struck, from.belief, from.chances, from.played
	return from.failed
}
