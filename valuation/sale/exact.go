package sale

// values says what the lots from one on bring, when the best is made of what is left.
type values interface {
	at(i int, s state) float64
}

// usualEffort is how many prices the exact program looks at before it gives up: about a second.
const usualEffort = 5_000_000

// exact is the dynamic program over the states that can be reached, each worked out when it is first asked for.
type exact struct {
	offers []offer
	rooms  []room
	edges  edges
	known  []map[state]float64
	left   int // prices that may still be looked at; below zero the values mean nothing
}

func newExact(offers []offer, wins, effort int) *exact {
	e := &exact{offers: offers, rooms: rooms(offers, wins), edges: edgesOf(offers), left: effort}
	e.known = make([]map[state]float64, len(offers))
	for i := range e.known {
		e.known[i] = map[state]float64{}
	}
	return e
}

// over reports whether the effort ran out.
func (e *exact) over() bool { return e.left < 0 }

func (e *exact) at(i int, s state) float64 {
	if i == len(e.offers) || s.bays < 1 || e.over() {
		return 0
	}
	wins := e.rooms[i].wins(s)
	if wins == 0 {
		return 0
	}
	s.bays = e.rooms[i].told(s, wins)
	s = e.rooms[i].capped(s, wins)
	if wins == 1 {
		s = e.edges.floor(s)
	}
	v, known := e.known[i][s]
	if !known {
		base := e.at(i+1, s)
		gain, looks := step(i, &e.offers[i], s, base, e)
		e.left -= looks + 1
		v = base + gain
		e.known[i][s] = v
	}
	return v
}

// step returns what the best bid on lot i adds to base, the value of letting it go, and how many prices were looked at.
func step(i int, o *offer, s state, base float64, v values) (gain float64, looks int) {
	n := min(o.affordable(s), o.last)
	if n <= o.first {
		return 0, 0
	}
	if s.bays == 1 && base == 0 {
		return o.best[n-1], 1
	}
	sum := 0.0
	for k := o.first; k < n; k++ {
		g := o.gain[k] - base
		if s.bays > 1 {
			g += v.at(i+1, s.after(o, k))
		}
		sum += o.chance[k] * g
		gain = max(gain, sum)
	}
	return gain, n - o.first
}
