package valuation

import (
	"context"
	"slices"
	"sync"

	"walkline/valuation/memory"
	"walkline/valuation/prob"
	"walkline/valuation/resale"
	"walkline/valuation/scenario"
)

// Memory values cases one after another and works out anew only what differs from those before: the columns of the lines and
// risks that were edited, the fit of the comparables where a row, the subject or a belief changed. An answer is the same, to
// the bit, with a memory, with a fresh one and without. Limits: safe for use from any goroutine, one valuation at a time.
type Memory struct {
	mutex   sync.Mutex
	scenes  *scenario.Memory
	markets *memory.Shelf[market]
	doubts  *memory.Shelf[market] // the same with what is not sure of the vehicle itself
	drawn   *drawn                // nil: surveys are drawn anew for each lot, see [Guesser]
}

const (
	mostColumns = 48 << 20 // bytes of columns that a memory keeps: about eighty lines and fifty risks of 16,384 scenarios
	mostMarkets = 6        // fits of comparables that a memory keeps
)

// NewMemory returns a memory that knows nothing yet.
func NewMemory() *Memory {
	return &Memory{scenes: scenario.NewMemory(mostColumns), markets: memory.NewShelf[market](mostMarkets),
		doubts: memory.NewShelf[market](mostMarkets)}
}

// Value is [Value] by way of the memory.
func (m *Memory) Value(c Case, k Knowledge) (Answer, error) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	a, _, err := m.weigh(c, k)
	return a, err
}

// Weigh returns what [Memory.Value] does, and the odds at every other bid, which a lot that is not ready ([Answer.Needs]) has none of.
// Limits and errors: those of Value, and that of ctx where it has ended before the turn comes.
func (m *Memory) Weigh(ctx context.Context, c Case, k Knowledge) (Answer, Odds, error) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if err := ctx.Err(); err != nil {
		return Answer{}, Odds{}, err
	}
	return m.weigh(c, k)
}

// Bands returns the fitted price of the subject over mileage (in the lot's unit) and over model year, within the range of the
// comparables and the subject; nothing when there are no comparables.
func (m *Memory) Bands(c Case, k Knowledge) (byMileage, byYear []BandPoint) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	return m.bands(c, k)
}

// market is a fit of the comparables with what is read off it alone.
type market struct {
	model resale.Model
	table prob.Table
	price resale.Price
	level float64
}

// answer returns the price with rows of its own, for a reader may sort them.
func (m market) answer() resale.Price {
	p := m.price
	p.Adjusted, p.Warnings = slices.Clone(p.Adjusted), slices.Clone(p.Warnings)
	return p
}

// doubtful returns the fit of the case's comparables with what is not sure of the vehicle itself.
func (m *Memory) doubtful(c Case, b resale.Beliefs, p resale.Prior) market {
	s, d := c.subject(), c.doubt()
	fit := m.market(c.Resale.Rows, s, b, p)
	if d.None() {
		return fit
	}
	m.doubts.Turn()
	return m.doubts.Recall(memory.Of(c.Resale.Rows, s, b, m.prior(p), d), func() (market, int) { return fit.doubted(s, d), 1 })
}

// doubted returns the fit with what is not sure of the vehicle itself.
func (m market) doubted(s resale.Subject, d resale.Doubt) market {
	if m.model.Err() != nil || d.None() {
		return m
	}
	m.table, m.level = m.model.Doubted(s, d)
	m.price.Mean, m.price.P10, m.price.P50, m.price.P90 = m.table.Mean(), m.table.Quantile(.1), m.table.Quantile(.5), m.table.Quantile(.9)
	return m
}

// prior names a market's prior; that of a list is named once.
func (m *Memory) prior(p resale.Prior) memory.Key {
	if m.drawn != nil {
		return m.drawn.prior
	}
	return memory.Of(p)
}

// market returns the fit of the case's comparables.
func (m *Memory) market(rows []resale.Row, s resale.Subject, b resale.Beliefs, p resale.Prior) market {
	m.markets.Turn()
	return m.markets.Recall(memory.Of(rows, s, b, m.prior(p)), func() (market, int) {
		fit := market{model: resale.Fit(rows, s, b, p)}
		if fit.model.Err() == nil {
			fit.table, fit.price, fit.level = fit.model.Distribution(), fit.model.Price(), fit.model.LevelSD()
		}
		return fit, 1
	})
}
