package sale

// What the grid may cost, and how finely it is laid.
const (
	gridEffort = 20_000_000 // prices looked at
	gridGroups = 16         // groups of prices of a lot
	fewCash    = 64         // nodes of cash at the least
	mostCash   = 96
	fewHours   = 8 // nodes of hours at the least, where hours bind
)

// axis is evenly spaced nodes from 0 on.
type axis struct {
	step  int64
	nodes int
}

// place returns the node at or below x, and how far x lies from it towards the next.
func (a axis) place(x int64) (node int, along float64) {
	x = max(0, x)
	node = int(x / a.step)
	if node >= a.nodes-1 {
		return a.nodes - 1, 0
	}
	return node, float64(x-int64(node)*a.step) / float64(a.step)
}

// grid holds the values at nodes of cash and hours for each number of bays; between nodes they run straight.
type grid struct {
	rooms       []room
	bays        int
	cash, hours axis
	whole       bool // hours are whole steps: no use is made of a part of one
	v           [][]float64
}

// newGrid works the values out for all that is left up to the reserve.
func newGrid(offers []offer, reserve state) *grid {
	thin := make([]offer, len(offers))
	for i := range offers {
		thin[i] = offers[i].thin(gridGroups)
	}
	g := &grid{rooms: rooms(offers, max(1, reserve.bays)), v: make([][]float64, len(offers)+1)}
	wins := max(1, g.rooms[0].wins(reserve))
	g.bays = max(1, g.rooms[0].told(reserve, wins))
	g.lay(offers, g.rooms[0].capped(reserve, wins))
	cells := g.bays * g.cash.nodes * g.hours.nodes
	g.v[len(offers)] = make([]float64, cells)
	for i := len(offers) - 1; i >= 0; i-- {
		g.v[i] = make([]float64, cells)
		for cell := range cells {
			s := g.stateOf(cell)
			base := g.v[i+1][cell]
			gain, _ := step(i, &thin[i], s, base, g)
			g.v[i][cell] = base + gain
		}
	}
	return g
}

// lay chooses the axes so that the grid stays within its effort: whole hours where they leave room for the cash.
func (g *grid) lay(offers []offer, top state) {
	cells := gridEffort / (max(1, len(offers)) * gridGroups * g.bays)
	g.hours = axis{step: 1, nodes: 1}
	if unit, all := hoursOf(offers); unit > 0 && top.hours < all {
		wanted, room := max(0, top.hours)/unit+1, int64(max(fewHours, cells/(2*fewCash)))
		g.whole = wanted <= room
		g.hours = axis{max(1, top.hours/(room-1)), int(room)}
		if g.whole {
			g.hours = axis{unit, int(wanted)}
		}
	}
	nodes := min(max(fewCash, cells/g.hours.nodes), mostCash)
	g.cash = axis{max(1, top.cash/int64(nodes-1)+1), nodes}
}

// hoursOf returns the greatest number of hours of which each lot takes a whole multiple, and what all lots take.
func hoursOf(offers []offer) (unit, all int64) {
	for _, o := range offers {
		all += o.hours
		a, b := unit, o.hours
		for b > 0 {
			a, b = b, a%b
		}
		unit = a
	}
	return unit, all
}

// stateOf returns the state at a cell.
func (g *grid) stateOf(cell int) state {
	c := cell % g.cash.nodes
	cell /= g.cash.nodes
	s := state{cash: int64(c) * g.cash.step, hours: int64(cell%g.hours.nodes) * g.hours.step, bays: cell/g.hours.nodes + 1}
	if g.hours.nodes == 1 {
		s.hours = plenty
	}
	return s
}

// plenty is more hours than any sale takes.
const plenty = int64(1) << 60

func (g *grid) at(i int, s state) float64 {
	if i == len(g.v)-1 {
		return 0
	}
	bays := min(g.bays, g.rooms[i].told(s, g.rooms[i].wins(s)))
	if bays < 1 {
		return 0
	}
	c, along := g.cash.place(s.cash)
	h, up := g.hours.place(s.hours)
	if g.whole {
		up = 0
	}
	row := ((bays-1)*g.hours.nodes + h) * g.cash.nodes
	v := g.along(i, row+c, along)
	if up > 0 {
		v += up * (g.along(i, row+g.cash.nodes+c, along) - v)
	}
	return v
}

// along returns the value a part of the way from a cell to the next of more cash.
func (g *grid) along(i, cell int, part float64) float64 {
	v := g.v[i][cell]
	if part > 0 {
		v += part * (g.v[i][cell+1] - v)
	}
	return v
}
