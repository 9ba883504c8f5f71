package repair

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// Index is a catalogue with what its jobs do to one another, worked out once for all lots. Limits: nobody changes the catalogue meanwhile.
type Index struct {
	all     []Job
	scales  []lot.Scale
	jobs    map[string]*Job
	by      map[string][]Brought // who brings a job, and how likely
	spared  map[string][]string  // who makes a job needless
	covered map[string][]string  // who does a job along with its own
	settles map[string][]string  // hidden risks that a job puts right, by its id and by its plain name
	plain   map[string]string    // plain names of the jobs, by their own
	named   map[string][]string  // the jobs of a plain name
	ringed  map[string]bool      // jobs that lead to a ring of jobs that bring or cover each other; false: to none
}

// NewIndex returns the index of a catalogue.
func NewIndex(c Catalogue) *Index {
	x := &Index{c.Jobs, c.Scales, map[string]*Job{}, map[string][]Brought{}, map[string][]string{}, map[string][]string{},
		map[string][]string{}, map[string]string{}, map[string][]string{}, map[string]bool{}}
	for i := range c.Jobs {
		j := &c.Jobs[i]
		x.jobs[j.ID] = j
		bring(x.by, j.ID, j.Brings)
		x.plain[j.Job] = PlainWords(j.Job)
		x.named[x.plain[j.Job]] = append(x.named[x.plain[j.Job]], j.ID)
		if len(j.Settles) > 0 {
			x.settles[j.ID] = append(x.settles[j.ID], j.Settles...)
			x.settles[x.plain[j.Job]] = append(x.settles[x.plain[j.Job]], j.Settles...)
		}
		for _, id := range j.Spares {
			x.spared[id] = append(x.spared[id], j.ID)
		}
		for _, id := range j.Covers {
			x.covered[id] = append(x.covered[id], j.ID)
		}
	}
	way := map[string]bool{}
	for i := range c.Jobs {
		x.rings(c.Jobs[i].ID, way)
	}
	return x
}

// rings reports whether a job leads to a ring, and notes it; way holds the jobs that led here.
func (x *Index) rings(id string, way map[string]bool) bool {
	ringed, known := x.ringed[id]
	if known || way[id] {
		return ringed || way[id]
	}
	way[id] = true
	for _, b := range x.by[id] {
		ringed = x.rings(b.ID, way) || ringed
	}
	for _, by := range x.covered[id] {
		ringed = x.rings(by, way) || ringed
	}
	delete(way, id)
	x.ringed[id] = ringed
	return ringed
}

// Settles returns the hidden risks that a line puts right, in order, each once: a line with the id or the name of a job is that job's,
// whoever entered it.
func (x *Index) Settles(l Line) []string {
	byID, byName := x.settles[l.ID], x.settles[x.Plain(l.Job)]
	if len(byID)+len(byName) == 0 {
		return nil
	}
	all := slices.Concat(byID, byName)
	slices.Sort(all)
	return slices.Compact(all)
}

// Plain returns the plain words of a line's name.
func (x *Index) Plain(name string) string {
	if plain, known := x.plain[name]; known {
		return plain
	}
	return PlainWords(name)
}

// PlainWords returns words without regard to case and space; no id is written so.
func PlainWords(s string) string { return " " + strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// bring books what a job or a risk brings along.
func bring(by map[string][]Brought, id string, brings []Brought) {
	for _, b := range brings {
		by[b.ID] = append(by[b.ID], Brought{id, b.Chance})
	}
}

// Planner knows which jobs a survey calls for, and plans with one hidden damage or another.
type Planner struct {
	*Index
	lot    lot.Lot
	survey []lot.Damage
	lines  []Line          // the user's
	own    map[string]Line // the same, by id, and by that of the job that they name
	never  map[string]bool // jobs that such a vehicle has no use for
	cells  map[string][]lot.Damage
	direct map[string]float64 // chance of a job that the survey itself calls for

	hurt    map[string]Cause     // hidden damage, by riskKey
	hurtBy  map[string][]Brought // which of it brings a job
	brought map[string][]Brought // who brings a job on this lot, as far as it was asked
	known   map[string]float64   // chances worked out so far
	built   map[string]*Need
	way     []string // room for the jobs on the way
}

// deepest is how many jobs bring one another along in a row before the way needs more room.
const deepest = 32

// NewPlanner returns a planner of a lot's survey with the user's lines.
func NewPlanner(own []Line, x *Index, l lot.Lot, survey []lot.Damage) *Planner {
	p := &Planner{Index: x, lot: l, survey: l.All(survey), lines: own, own: map[string]Line{}, never: map[string]bool{},
		cells: map[string][]lot.Damage{}, direct: map[string]float64{}, hurt: map[string]Cause{}, hurtBy: map[string][]Brought{},
		brought: make(map[string][]Brought, len(x.all)), known: make(map[string]float64, len(x.all)), built: map[string]*Need{},
		way: make([]string, 0, deepest)}
	for i := range x.all {
		j := &x.all[i]
		if len(j.Never) > 0 && lot.Any(j.Never, l, p.survey) {
			p.never[j.ID] = true
			continue
		}
		if cells, ok := called(j, &l, p.survey); ok {
			p.direct[j.ID] = lot.Moved(Or(j.Chance, 1), j.Moves, l, p.survey)
			if len(cells) > 0 {
				p.cells[j.ID] = cells
			}
		}
	}
	p.take(own)
	return p
}

// take has the user's lines stand for their jobs: those of the same id, and the first that says a job in the catalogue's own words, so that
// nothing counts twice. A panel that the user adds carries its refinish, and one that is struck out brings nothing.
func (p *Planner) take(own []Line) {
	for _, line := range own {
		p.own[line.ID] = line
	}
	for _, line := range own {
		for _, id := range p.named[p.Plain(line.Job)] {
			if _, is := p.own[id]; !is && !line.Removed {
				p.own[id] = line
			}
		}
	}
	for id, line := range p.own {
		if _, job := p.jobs[id]; !job {
			continue
		}
		if p.direct[id] = Or(line.Chance, 1); line.Removed {
			p.direct[id] = 0
		}
	}
}

// hit begins a plan with that hidden damage.
func (p *Planner) hit(hurt []Cause) {
	for id := range p.hurtBy {
		delete(p.brought, id)
	}
	clear(p.hurt)
	clear(p.hurtBy)
	clear(p.known)
	clear(p.built)
	for _, x := range hurt {
		p.hurt[riskKey(x.ID)] = x
		bring(p.hurtBy, riskKey(x.ID), x.Brings)
	}
	for id := range p.hurtBy { // of the others the hidden damage changes nothing
		delete(p.brought, id)
	}
}

// parents returns who brings a job, each with the chance that the lot moves it to. The user's line stands for its job: nothing brings it.
func (p *Planner) parents(id string) []Brought {
	all, known := p.brought[id]
	if known {
		return all
	}
	j := p.jobs[id]
	if _, own := p.own[id]; !own || j == nil {
		if all = p.by[id]; len(p.hurtBy[id]) > 0 {
			all = slices.Concat(p.hurtBy[id], all)
		}
		if j != nil && len(j.Moves) > 0 {
			all = slices.Clone(all)
			for i, b := range all {
				chance := lot.Moved(Or(b.Chance, 1), j.Moves, p.lot, p.survey)
				all[i].Chance = &chance
			}
		}
	}
	p.brought[id] = all
	return all
}

// sparers returns the jobs that make one needless, of those that the vehicle has use for.
func (p *Planner) sparers(id string) []string { return p.useful(p.spared[id]) }

// coverers returns the jobs that do one along with their own, none where it is the user's line.
func (p *Planner) coverers(id string) []string {
	if _, own := p.own[id]; own && p.jobs[id] != nil {
		return nil
	}
	return p.useful(p.covered[id])
}

// useful returns the jobs that the vehicle has use for.
func (p *Planner) useful(ids []string) []string {
	if !slices.ContainsFunc(ids, func(id string) bool { return p.never[id] }) {
		return ids
	}
	return slices.DeleteFunc(slices.Clone(ids), func(id string) bool { return p.never[id] })
}
