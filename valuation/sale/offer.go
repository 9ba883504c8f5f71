package sale

import (
	"sort"

	"walkline/valuation/invoice"
	"walkline/valuation/money"
)

// offer is a lot laid out by the legal bids up to its walk-away bid, in rising order.
type offer struct {
	bids   []money.Amount
	need   []int64   // cash that a win at that price takes
	most   []int64   // the greatest need so far: the cash that a bid of it asks for
	owed   int64     // cash of the state that comes in only after this lot
	bound  int       // bays of the state that come free only after this lot
	gain   []float64 // profit of a win at that price
	chance []float64 // of that price
	best   []float64 // the greatest mean profit of a bid so far, when nothing follows
	first  int       // prices that can come are first..last-1
	last   int
	hours  int64
	live   bool // some price that can come pays
}

// newOffer lays a lot out. Limits: the sale has passed Check.
func newOffer(l Lot, later Later, cur money.Currency) offer {
	o := offer{hours: ticks(l.Hours)}
	if l.WalkAway == nil {
		return o
	}
	_, count := invoice.Stand(l.Steps, *l.WalkAway)
	n := int(count)
	o.bids = make([]money.Amount, n)
	for k := range o.bids {
		o.bids[k] = invoice.Nth(l.Steps, int64(k)+1)
	}
	o.need, o.most = make([]int64, n), make([]int64, n)
	o.gain, o.chance, o.best = make([]float64, n), make([]float64, n), make([]float64, n)
	before, most := 0.0, int64(0)
	for k, b := range o.bids {
		total := l.Terms.Total(b, cur).Total
		o.need[k] = int64(total + l.Beside)
		most = max(most, o.need[k])
		o.most[k] = most
		o.gain[k] = cur.Major(l.Worth-total) - later.Cash*cur.Major(total+l.Beside) - later.Hour*l.Hours - later.Bay
		upTo := l.Hammer.CDF(cur.Major(b))
		o.chance[k], before = max(0, upTo-before), max(before, upTo)
	}
	o.span()
	return o
}

// span finds the prices that can come and what they bring alone.
func (o *offer) span() {
	o.last = len(o.bids)
	for o.last > 0 && o.chance[o.last-1] == 0 {
		o.last--
	}
	for o.first < o.last && o.chance[o.first] == 0 {
		o.first++
	}
	sum, top := 0.0, 0.0
	for k := range o.bids {
		sum += o.chance[k] * o.gain[k]
		top = max(top, sum)
		o.best[k] = top
		o.live = o.live || o.chance[k] > 0 && o.gain[k] > 0
	}
}

// affordable returns how many of the legal bids, from the lowest on, the state allows.
func (o *offer) affordable(s state) int {
	if s.bays <= o.bound || s.hours < o.hours || s.cash < o.owed {
		return 0
	}
	return sort.Search(len(o.most), func(k int) bool { return o.most[k]+o.owed > s.cash })
}

// mean returns the mean profit of the first count bids, and the chance that the price is one of them.
func (o *offer) mean(count int) (profit, chance float64) {
	for k := range count {
		profit += o.chance[k] * o.gain[k]
		chance += o.chance[k]
	}
	return profit, chance
}

// thin returns the offer with runs of prices gathered so that about groups remain, each with its mean gain and need.
func (o *offer) thin(groups int) offer {
	t := offer{hours: o.hours, owed: o.owed, bound: o.bound, live: o.live}
	size := max(1, (o.last-o.first+groups-1)/groups)
	for from := o.first; from < o.last; from += size {
		to := min(from+size, o.last)
		var chance, gain, need float64
		for k := from; k < to; k++ {
			chance += o.chance[k]
			gain += o.chance[k] * o.gain[k]
			need += o.chance[k] * float64(o.need[k])
		}
		if chance == 0 {
			continue
		}
		t.bids = append(t.bids, o.bids[to-1])
		t.chance = append(t.chance, chance)
		t.gain = append(t.gain, gain/chance)
		t.need = append(t.need, int64(need/chance))
		t.most = append(t.most, o.most[to-1])
	}
	t.best = make([]float64, len(t.bids))
	t.span()
	return t
}
