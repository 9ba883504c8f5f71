package repair

import (
	"maps"
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Need is why a job is needed, so that scenarios draw it together with what brings it: where a door is replaced, that door is
// painted. It is called for by the survey itself or by one of the ways, and it is done unless a job that spares it is.
type Need struct {
	ID      string
	Risk    bool // it is hidden damage, there where its own draw has it
	Direct  float64
	Loading *float64
	By      []Way
	Covered []*Need // by an assembly: then it is not called for
	Unless  []*Need
}

// Way is one of the things that bring a job, and how likely it does where it is there.
type Way struct {
	By     *Need
	Chance float64
}

// needs returns why a job is needed, nil where its chance alone says so.
func (p *Planner) needs(id string) *Need {
	if n := p.need(id); len(n.By)+len(n.Covered)+len(n.Unless) > 0 {
		return n
	}
	return nil
}

func (p *Planner) need(id string) *Need {
	if x, is := p.hurt[id]; is {
		return &Need{ID: x.ID, Risk: true, Direct: x.Chance}
	}
	if n, is := p.built[id]; is {
		return n
	}
	n := &Need{ID: id, Direct: p.direct[id], Loading: p.job(id).Loading}
	if l, is := p.own[id]; is {
		n.ID, n.Loading = l.ID, l.Loading
	}
	p.built[id] = nil // on the way: a ring of jobs adds nothing to itself
	for _, b := range p.parents(id) {
		if by := p.built[b.ID]; by == nil && p.begun(b.ID) || p.chance(b.ID) == 0 {
			continue
		}
		n.By = append(n.By, Way{p.need(b.ID), Or(b.Chance, 1)})
	}
	n.Covered, n.Unless = p.doers(p.coverers(id)), p.doers(p.sparers(id))
	p.built[id] = n
	return n
}

// doers returns what decides whether each of those jobs is done, of those that may be.
func (p *Planner) doers(ids []string) []*Need {
	var all []*Need
	for _, id := range ids {
		if done := p.done(id); done > 0 {
			all = append(all, p.sparing(id, done))
		}
	}
	return all
}

func (p *Planner) begun(id string) bool { _, is := p.built[id]; return is }

// sparing returns what decides whether a job that spares another is done: the user's own line where there is one.
func (p *Planner) sparing(id string, done float64) *Need {
	if l, is := p.own[id]; is {
		return &Need{ID: l.ID, Direct: done, Loading: l.Loading}
	}
	if p.begun(id) && p.built[id] == nil { // two jobs spare each other: its chance alone decides
		return &Need{ID: id, Direct: done, Loading: p.job(id).Loading}
	}
	return p.need(id)
}

// Risks returns the ids of the hidden damage that may bring the line's work along, in order.
func (l Line) Risks() []string {
	found := map[string]bool{}
	if l.Needs != nil {
		l.Needs.risks(found, map[*Need]bool{})
	}
	return slices.Sorted(maps.Keys(found))
}

func (n *Need) risks(found map[string]bool, seen map[*Need]bool) {
	if seen[n] {
		return
	}
	seen[n] = true
	if n.Risk {
		found[n.ID] = true
	}
	for _, w := range n.By {
		w.By.risks(found, seen)
	}
	for _, u := range append(slices.Clone(n.Unless), n.Covered...) {
		u.risks(found, seen)
	}
}

// Brought returns the scenarios in which each hidden risk that may bring the line is there, in the order of their ids.
func (p *Player) Brought(l Line) [][]int32 {
	var at [][]int32
	for _, id := range l.Risks() {
		at = append(at, p.There[id])
	}
	return at
}

// needed returns the scenarios in which a line with needs is there. Random: streams named by the ids of the jobs on the way.
func (p *Player) needed(n *Need) []int32 {
	there := slices.Clone(p.called(n))
	p.without(there, n.Unless)
	at := []int32{}
	for i, yes := range there {
		if yes {
			at = append(at, int32(i))
		}
	}
	return at
}

// without takes away the scenarios in which one of those is done.
func (p *Player) without(there []bool, doers []*Need) {
	for _, d := range doers {
		for i, done := range p.called(d) {
			there[i] = there[i] && !done
		}
	}
}

// called says of each scenario whether a job is called for, spared or not.
func (p *Player) called(n *Need) []bool {
	if known := p.calls[n]; known != nil {
		return known
	}
	there := make([]bool, p.Draws.Len())
	switch {
	case n.Risk && n.Direct >= 1:
		for i := range there {
			there[i] = true
		}
	case n.Risk:
		mark(there, p.There[n.ID])
	default:
		lean := prob.Lean{Factor: p.Factor, Rho: Or(n.Loading, p.Loading)}
		p.id = n.ID
		mark(there, p.event("need", n.Direct, lean))
		for _, w := range n.By {
			p.id = n.ID
			p.follow(there, w, lean)
		}
		p.without(there, n.Covered)
	}
	p.calls[n] = there
	return there
}

// follow marks the scenarios in which a way brings the job along.
func (p *Player) follow(there []bool, w Way, lean prob.Lean) {
	id := p.id
	by := p.called(w.By)
	p.id = id
	if w.Chance >= 1 {
		for i, yes := range by {
			there[i] = there[i] || yes
		}
		return
	}
	for _, i := range p.event("with/"+w.By.ID, w.Chance, lean) {
		there[i] = there[i] || by[i]
	}
}

// event returns the scenarios in which an event of that chance of the line in hand comes about.
func (p *Player) event(name string, chance float64, lean prob.Lean) []int32 {
	if chance <= 0 {
		return nil
	}
	yes, _ := p.split(name, chance, lean, nil, 0)
	return slices.Clone(yes)
}

func mark(there []bool, at []int32) {
	for _, i := range at {
		there[i] = true
	}
}

// scaled returns the line with its hours, its parts and bought-in work, and its materials, as the vehicle has them. Freight is
// that of the size, not of the price: it stays.
func (l Line) scaled(f lot.Factors) Line {
	if f == (lot.Factors{Parts: 1, Materials: 1, Hours: 1}) {
		return l
	}
	l.Materials, l.Outside = l.Materials.Times(f.Materials), l.Outside.Times(f.Parts)
	l.Hours = maps.Clone(l.Hours)
	for trade, t := range l.Hours {
		l.Hours[trade] = t.Times(f.Hours)
	}
	l.Parts = slices.Clone(l.Parts)
	for i, part := range l.Parts {
		l.Parts[i] = part.priced(f.Parts)
	}
	return l
}

// priced returns the part with all its prices multiplied.
func (p Part) priced(by float64) Part {
	p.Options = slices.Clone(p.Options)
	for k, o := range p.Options {
		p.Options[k].Price, p.Options[k].CoreBack = o.Price.Times(by), o.CoreBack.Times(by)
	}
	if p.Fallback != nil {
		f := *p.Fallback
		f.Price = f.Price.Times(by)
		p.Fallback = &f
	}
	return p
}
