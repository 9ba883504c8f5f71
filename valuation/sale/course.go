package sale

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
)

// course is what following the plan meets at each lot.
type course struct {
	reach []float64  // chance that the lot is bid on
	after [][]weight // counts of bids after exactly one win
}

// weight is a count of legal bids with its chance.
type weight struct {
	count  int
	chance float64
}

func newCourse(lots int) *course {
	return &course{make([]float64, lots), make([][]weight, lots)}
}

// meet notes that a lot is met with that chance and bid on up to count.
func (c *course) meet(i, count, wins int, chance float64) {
	if count > 0 {
		c.reach[i] += chance
	}
	if wins == 1 {
		c.after[i] = append(c.after[i], weight{count, chance})
	}
}

// middle returns the weighted median of what was noted after one win, 0 for none.
func (c *course) middle(i int) int {
	slices.SortStableFunc(c.after[i], func(a, b weight) int { return cmp.Compare(a.count, b.count) })
	all := 0.0
	for _, w := range c.after[i] {
		all += w.chance
	}
	sum := 0.0
	for _, w := range c.after[i] {
		if sum += w.chance; 2*sum >= all {
			return w.count
		}
	}
	return 0
}

// place is a state on the way, and how many lots were won.
type place struct {
	state
	wins int
}

// front is the places before one lot with their chances, in the order in which they were met, so that sums never change.
type front struct {
	at     map[place]int
	places []place
	chance []float64
}

func newFront() *front { return &front{at: map[place]int{}} }

func (f *front) add(p place, chance float64) {
	at, met := f.at[p]
	if !met {
		at = len(f.places)
		f.at[p] = at
		f.places, f.chance = append(f.places, p), append(f.chance, 0)
	}
	f.chance[at] += chance
}

// forward follows the exact plan along every course.
func (p *Plan) forward() *course {
	c, now := newCourse(len(p.offers)), newFront()
	now.add(place{state: p.start()}, 1)
	for i := range p.offers {
		next := newFront()
		for j, at := range now.places {
			count := p.stop(i, at.state)
			c.meet(i, count, at.wins, now.chance[j])
			lost := now.chance[j]
			for k := range count {
				if won := now.chance[j] * p.offers[i].chance[k]; won > 0 {
					lost -= won
					next.add(p.merged(i+1, place{at.after(&p.offers[i], k), at.wins + 1}), won)
				}
			}
			if lost > 0 && at.bays > 0 {
				next.add(at, lost)
			}
		}
		now = next
	}
	return c
}

// merged returns the place of a state that no lot to come can tell from this one. After one win it stays as it is.
func (p *Plan) merged(i int, at place) place {
	if at.wins < 2 || at.bays < 1 {
		return at
	}
	wins := p.exact.rooms[i].wins(at.state)
	if wins <= 1 {
		at.state = p.exact.edges.floor(at.state)
	}
	return at
}

// runs is how many courses are drawn where the plan is simulated, and fewer for each of what one more brings.
const (
	runs      = 1000
	moreRuns  = 200
	drawsSeed = 18
)

// simulated is the outcome of following the plan along drawn courses.
type simulated struct {
	*course
	mean, err float64
}

// simulate follows the plan from a state along n drawn courses. Each course counts the value expected at the start and the
// expected surprise of each step, whose mean is that of the profits and whose scatter is far less.
func (p *Plan) simulate(start state, n int) simulated {
	out := simulated{course: newCourse(len(p.offers))}
	rng := rand.New(rand.NewPCG(drawsSeed, uint64(len(p.offers))))
	var sum, squares float64
	for range n {
		at, total := place{state: start}, p.value.at(0, start)
		for i := range p.offers {
			u := rng.Float64()
			count := p.stop(i, at.state)
			out.meet(i, count, at.wins, 1/float64(n))
			total += p.surprise(i, at.state, count)
			if k := p.offers[i].drawn(u); k < count {
				at = place{at.after(&p.offers[i], k), at.wins + 1}
			}
		}
		sum += total
		squares += total * total
	}
	out.mean = sum / float64(n)
	out.err = math.Sqrt(max(0, squares/float64(n)-out.mean*out.mean) / float64(n-1))
	return out
}

// surprise returns what a bid of count is expected to bring from here on, less the value that stands in the grid.
func (p *Plan) surprise(i int, s state, count int) float64 {
	o := &p.offers[i]
	base := p.value.at(i+1, s)
	v := base - p.value.at(i, s)
	for k := o.first; k < min(count, o.last); k++ {
		v += o.chance[k] * (o.gain[k] + p.value.at(i+1, s.after(o, k)) - base)
	}
	return v
}

// drawn returns the place of the price at chance u, the number of bids where it lies above them.
func (o *offer) drawn(u float64) int {
	for k := o.first; k < o.last; k++ {
		if u -= o.chance[k]; u < 0 {
			return k
		}
	}
	return len(o.bids)
}
