package sale

import "slices"

// state is what is left before a lot runs.
type state struct {
	cash  int64 // minor units, with all that comes in later: so it falls by wins alone
	hours int64 // millionths
	bays  int   // with all that come free later
}

// after returns the state after a win of the offer at its k-th price.
func (s state) after(o *offer, k int) state {
	return state{s.cash - o.need[k], s.hours - o.hours, s.bays - 1}
}

// room is what 1, 2, 3 ... wins among the lots from one on take at the least and at the most.
type room struct {
	leastCash, leastHours []int64 // of the lots that can pay
	mostCash, mostHours   []int64 // of all lots
	owed                  int64   // cash that comes in after the first of them
	bound                 int     // bays that come free after it
}

// rooms returns the room before each lot, for no more wins than wins.
func rooms(offers []offer, wins int) []room {
	out := make([]room, len(offers)+1)
	var leastCash, leastHours, mostCash, mostHours []int64
	for i := len(offers) - 1; i >= 0; i-- {
		o := &offers[i]
		if len(o.bids) > 0 {
			mostCash, mostHours = ordered(mostCash, -o.most[len(o.most)-1]), ordered(mostHours, -o.hours)
		}
		if o.live {
			leastCash, leastHours = ordered(leastCash, slices.Min(o.need[o.first:o.last])), ordered(leastHours, o.hours)
		}
		out[i] = room{sums(leastCash, wins, 1), sums(leastHours, wins, 1), sums(mostCash, wins, -1), sums(mostHours, wins, -1),
			o.owed, o.bound}
	}
	return out
}

// ordered returns the rising values with x among them.
func ordered(xs []int64, x int64) []int64 {
	at, _ := slices.BinarySearch(xs, x)
	return slices.Insert(xs, at, x)
}

// sums returns the running sums of the first n values, times sign.
func sums(xs []int64, n int, sign int64) []int64 {
	out := make([]int64, min(n, len(xs)))
	sum := int64(0)
	for i := range out {
		sum += sign * xs[i]
		out[i] = sum
	}
	return out
}

// wins returns how many wins that pay the state has room for at the most.
func (r *room) wins(s state) int {
	most := min(s.bays, len(r.leastCash))
	for k := range most {
		if r.leastCash[k] > s.cash || r.leastHours[k] > s.hours {
			return k
		}
	}
	return max(0, most)
}

// told returns the bays that lots to come can tell apart where there is room for so many wins: those beyond are never waited for.
func (r *room) told(s state, wins int) int {
	if wins == 0 {
		return 0
	}
	return min(s.bays, wins+r.bound)
}

// capped returns the state without the cash and hours that so many wins cannot use.
func (r *room) capped(s state, wins int) state {
	if n := min(wins, len(r.mostCash)); n > 0 {
		s.cash = min(s.cash, r.mostCash[n-1]+r.owed)
		s.hours = min(s.hours, r.mostHours[n-1])
	}
	return s
}

// edges are the amounts at which some lot's bids or hours change: with one win left, nothing between two of them tells.
type edges struct{ cash, hours []int64 }

func edgesOf(offers []offer) edges {
	var e edges
	for i := range offers {
		if len(offers[i].bids) > 0 {
			for _, most := range offers[i].most {
				e.cash = append(e.cash, most+offers[i].owed)
			}
			e.hours = append(e.hours, offers[i].hours)
		}
	}
	slices.Sort(e.cash)
	slices.Sort(e.hours)
	e.cash, e.hours = slices.Compact(e.cash), slices.Compact(e.hours)
	return e
}

// floor returns the state lowered to the edges.
func (e *edges) floor(s state) state {
	s.cash, s.hours = below(e.cash, s.cash), below(e.hours, s.hours)
	return s
}

// below returns the greatest of the rising values that is no more than x, or -1.
func below(xs []int64, x int64) int64 {
	at, found := slices.BinarySearch(xs, x)
	if found {
		return x
	}
	if at == 0 {
		return -1
	}
	return xs[at-1]
}
