package scenario

import (
	"walkline/valuation/memory"
	"walkline/valuation/prob"
)

// Memory keeps the columns that earlier scenarios drew, each under the content that it was drawn from, so that an edit draws anew
// what it changed and nothing else. The outcome is the same with and without. Limits: for one goroutine at a time.
type Memory struct {
	frames  *memory.Shelf[*frame]
	strands *memory.Shelf[*strand]
	knowns  *memory.Shelf[*known]
	room    int // bytes of columns that one outcome holds on to
}

// mostFrames is how many pairs of size and seed are kept at once.
const mostFrames = 2

// mostKnown is how many bytes of means by factor are kept.
const mostKnown = 1 << 20

// NewMemory returns an empty memory that keeps columns of no more than that many bytes together.
func NewMemory(bytes int) *Memory {
	return &Memory{memory.NewShelf[*frame](mostFrames), memory.NewShelf[*strand](bytes), memory.NewShelf[*known](mostKnown), mostHeld}
}

// frame is what all scenarios of one size and seed share. Nobody changes it.
type frame struct {
	draws  *prob.Draws
	factor []float64 // the lot's common factor, one score a scenario
	moved  []float64 // what the findings made of it, see [hidden.Posterior.Moves]; nil: nothing
	strata           // by the factor before the findings, which stands in the same order
}

func (m *Memory) frame(l *Lot) *frame {
	f := m.plainFrame(l)
	if l.Belief == nil || l.Belief.Moves() == nil {
		return f
	}
	moved := *f
	moved.moved, moved.factor = l.Belief.Moves(), l.Belief.Factor(f.factor)
	return &moved
}

// plainFrame returns the frame before any findings.
func (m *Memory) plainFrame(l *Lot) *frame {
	return m.frames.Recall(memory.Of(l.N, l.Seed), func() (*frame, int) {
		f := &frame{draws: prob.NewDraws(l.N, l.Seed), factor: make([]float64, l.N)}
		f.draws.Column("lot/factor", f.factor)
		f.strata = newStrata(f.factor)
		return f, 1
	})
}
