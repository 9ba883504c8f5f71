package hidden

import (
	"errors"
)

// ErrTied says that more answers of "yes" hang together through the risks that they share than can be weighed.
var ErrTied = errors.New("too many answers of \"yes\" tell of the same risks: leave some of them open")

// mostTied bounds the answers of "yes" that are open at once while a tie is worked through: each doubles the work.
const mostTied = 16

// tie is a set of risks that answers hang together, in the order in which they are worked through.
//
// Given the common factor, risks come about independently, an answer of "no" is a factor for each risk that is there, and a "yes"
// is that at least one cause spoke: the false alarm, or a risk that is there. The chance of all answers is summed over which of
// the open answers of "yes" have been spoken for so far, risk by risk: the sum that inclusion and exclusion gives, without
// its differences.
type tie struct {
	steps []step
	room  *room
}

// step is one risk of a tie. Bits are places of open answers in the sum.
type step struct {
	risk   int
	absent float64   // chance of the answers that tell of it alone, and of "no" up to a factor, when the damage is not there
	hush   float64   // and when it is
	opens  []float64 // false-alarm chances of the answers of "yes" that begin here, each at the next free bit
	pulls  []pull
	closes []int // bits of the answers that end here, from the highest
	before int   // open answers before the step
}

// pull is how a risk that is there speaks for an answer of "yes".
type pull struct {
	bit    int
	chance float64 // that it does; below 0 where the sign speaks against the risk
}

// room holds the sums of one node of the factor: at each step before the risk, and where the risk is there.
type room struct{ sums, there [][]float64 }

// ties groups the risks that have an answer and orders each group so that few answers are open at once.
func ties(said []sign, of [][]int) ([]tie, error) {
	var all []tie
	left := map[int]bool{}
	for i := range of {
		left[i] = len(of[i]) > 0
	}
	open := map[int]int{} // sign -> risks that it still tells of
	for s := range said {
		open[s] = len(said[s].risks)
	}
	var t tie
	var bit []int // the signs that are open, by bit
	for {
		i := next(said, of, left, bit, open)
		if i < 0 {
			return all, nil
		}
		left[i] = false
		var st step
		st, bit = newStep(i, said, of[i], bit, open)
		if st.before+len(st.opens) > mostTied {
			return nil, ErrTied
		}
		t.steps = append(t.steps, st)
		if len(bit) == 0 {
			t.room = newRoom(t.steps)
			all, t = append(all, t), tie{}
		}
	}
}

// next returns the risk to work through next: the one after which the fewest answers are open, of the tie that is begun.
func next(said []sign, of [][]int, left map[int]bool, bit []int, open map[int]int) int {
	best, least := -1, 0
	for i := range of {
		if !left[i] {
			continue
		}
		after, joined := len(bit), len(bit) == 0
		for _, s := range of[i] {
			if !said[s].yes || len(said[s].risks) == 1 {
				continue
			}
			held := indexOf(bit, s) >= 0
			joined = joined || held
			switch last := open[s] == 1; {
			case held && last:
				after--
			case !held && !last:
				after++
			}
		}
		if joined && (best < 0 || after < least) {
			best, least = i, after
		}
	}
	return best
}

func indexOf(xs []int, x int) int {
	for k, y := range xs {
		if y == x {
			return k
		}
	}
	return -1
}

// newStep returns the step of risk i and the signs that are open after it.
func newStep(i int, said []sign, of, bit []int, open map[int]int) (step, []int) {
	st := step{risk: i, absent: 1, hush: 1, before: len(bit)}
	var done []int
	for _, s := range of {
		f := said[s].factor(i)
		if !said[s].yes {
			st.hush *= f
			continue
		}
		if len(said[s].risks) == 1 {
			st.absent *= 1 - said[s].silent
			st.hush *= 1 - said[s].silent*f
			continue
		}
		b := indexOf(bit, s)
		if b < 0 {
			b, bit = len(bit), append(bit, s)
			st.opens = append(st.opens, 1-said[s].silent)
		}
		st.pulls = append(st.pulls, pull{b, 1 - f})
		if open[s]--; open[s] == 0 {
			done = append(done, s)
		}
	}
	for b := len(bit) - 1; b >= 0; b-- {
		if indexOf(done, bit[b]) >= 0 {
			st.closes = append(st.closes, b)
			bit = append(bit[:b:b], bit[b+1:]...)
		}
	}
	return st, bit
}

func newRoom(steps []step) *room {
	r := &room{}
	for _, st := range steps {
		n := 1 << (st.before + len(st.opens))
		r.sums, r.there = append(r.sums, make([]float64, n)), append(r.there, make([]float64, n))
	}
	return r
}

// weigh returns the chance of all answers of the tie at one value of the factor, q being the chance of each step's risk there,
// and writes into joint the chance of the answers together with that risk.
func (t tie) weigh(q, joint []float64) float64 {
	left := []float64{1}
	for k, st := range t.steps {
		sum, there := t.room.sums[k], t.room.there[k]
		copy(sum, left)
		for n, leak := range st.opens {
			open(sum, st.before+n, leak)
		}
		copy(there, sum)
		for _, p := range st.pulls {
			p.speak(there)
		}
		left = make([]float64, len(sum))
		for m := range sum {
			left[m] = (1-q[k])*st.absent*sum[m] + q[k]*st.hush*there[m]
		}
		for _, b := range st.closes {
			left = kept(left, b)
		}
	}
	back := []float64{1}
	for k := len(t.steps) - 1; k >= 0; k-- {
		back, joint[k] = t.steps[k].back(t.room.there[k], back, q[k])
	}
	return left[0]
}

// back returns what the sum before the step counts for in the whole, given what the sum after it counts for, and the chance of
// all answers together with the step's risk, p being that risk's chance.
func (st step) back(there, back []float64, p float64) (before []float64, joint float64) {
	for k := len(st.closes) - 1; k >= 0; k-- {
		back = spread(back, st.closes[k])
	}
	along := 0.0
	pulled := make([]float64, len(back))
	for m, x := range back {
		along += x * there[m]
		pulled[m] = x
	}
	for k := len(st.pulls) - 1; k >= 0; k-- {
		st.pulls[k].turn(pulled)
	}
	for m, x := range back {
		back[m] = (1-p)*st.absent*x + p*st.hush*pulled[m]
	}
	for n := len(st.opens) - 1; n >= 0; n-- {
		half := 1 << (st.before + n)
		for m := range half {
			back[m] = (1-st.opens[n])*back[m] + st.opens[n]*back[m+half]
		}
		back = back[:half]
	}
	return back, p * st.hush * along
}

// open begins an answer at a bit: a false alarm speaks for it with that chance.
func open(sum []float64, bit int, leak float64) {
	for m := range 1 << bit {
		sum[m|1<<bit] = leak * sum[m]
		sum[m] *= 1 - leak
	}
}

// speak lets the pull speak for its answer. A sign that speaks against the risk takes the false alarm back; what float64
// leaves of none is none.
func (p pull) speak(sum []float64) {
	for m := range sum {
		if m>>p.bit&1 == 0 {
			with := m | 1<<p.bit
			was := sum[with]
			sum[with] += p.chance * sum[m]
			if sum[with] < dust*was {
				sum[with] = 0
			}
			sum[m] *= 1 - p.chance
		}
	}
}

// dust is the share of a chance below which what is left of it is the rounding of float64.
const dust = 1e-12

// turn is speak for what sums count for.
func (p pull) turn(back []float64) {
	for m := range back {
		if m>>p.bit&1 == 0 {
			back[m] = (1-p.chance)*back[m] + p.chance*back[m|1<<p.bit]
		}
	}
}

// kept returns the sum over what has that bit, the bit taken out.
func kept(sum []float64, bit int) []float64 {
	out := make([]float64, 0, len(sum)/2)
	for m, x := range sum {
		if m>>bit&1 == 1 {
			out = append(out, x)
		}
	}
	return out
}

// spread is kept for what sums count for.
func spread(back []float64, bit int) []float64 {
	out := make([]float64, 2*len(back))
	at := 0
	for m := range out {
		if m>>bit&1 == 1 {
			out[m] = back[at]
			at++
		}
	}
	return out
}
