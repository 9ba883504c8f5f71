package repair

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// Plan returns the user's lines followed by the lines of the catalogue that the survey calls for, and what those bring
// along, each job once. A line of the user with a job's id, or with its words, stands in its place (edited or struck out).
// The chance of a job is that the survey calls for it or that at least one of the jobs, or of the hidden damage, that brings it
// does, and that no job that makes it needless is done: a panel that is replaced is not repaired as well, one that is painted is
// not blended. An assembly covers what it holds: what is covered is not called for at all, and brings nothing. What a job
// that is spared brings along stays, since the job that spares it seldom does without.
// A line's Needs tell the same to the scenarios, in which it is there with what brings it.
func Plan(own []Line, c Catalogue, l lot.Lot, survey []lot.Damage, hurt ...Cause) []Line {
	survey = l.All(survey)
	p := newPlanner(own, c, l, survey, hurt)
	level := lot.Scaled(c.Scales, l, survey)
	lines := slices.DeleteFunc(slices.Clone(own), func(l Line) bool { return l.Removed })
	for i := range lines {
		lines[i].Needs = nil
	}
	for _, j := range c.Jobs {
		if _, is := p.own[j.ID]; is || p.never[j.ID] {
			continue
		}
		chance := p.chance(j.ID) * p.left(j.ID)
		if chance == 0 {
			continue
		}
		line := j.Line.scaled(level.Times(lot.Scaled(j.Scales, l, survey)))
		line.Chance, line.Why, line.Needs = &chance, p.why(j), p.needs(j.ID)
		if line.Area == "" {
			line.Area = p.area(j.ID)
		}
		lines = append(lines, line)
	}
	return lines
}

// Cause is hidden damage that brings work along where it comes true.
type Cause struct {
	ID, Name string
	Chance   float64
	Brings   []Brought
}

// planner knows which jobs are called for and by what.
type planner struct {
	own     map[string]Line // the user's lines
	jobs    map[string]*Job
	hurt    map[string]Cause // hidden damage, by riskKey
	never   map[string]bool  // jobs that such a vehicle has no use for
	cells   map[string][]lot.Damage
	direct  map[string]float64   // chance of a job that the survey itself calls for
	parents map[string][]Brought // who brings a job, and how likely
	spared  map[string][]string  // who makes a job needless
	covered map[string][]string  // who does a job along with its own
	known   map[string]float64   // chances worked out so far
	built   map[string]*Need
}

// riskKey keeps the ids of risks apart from those of jobs.
func riskKey(id string) string { return "risk/" + id }

func newPlanner(own []Line, c Catalogue, l lot.Lot, survey []lot.Damage, hurt []Cause) planner {
	p := planner{map[string]Line{}, map[string]*Job{}, map[string]Cause{}, map[string]bool{}, map[string][]lot.Damage{},
		map[string]float64{},
		map[string][]Brought{}, map[string][]string{}, map[string][]string{}, map[string]float64{}, map[string]*Need{}}
	for _, l := range own {
		p.own[l.ID] = l
	}
	for _, x := range hurt {
		p.hurt[riskKey(x.ID)] = x
		p.bring(riskKey(x.ID), x.Brings)
	}
	p.name(own, c)
	for i := range c.Jobs {
		j := &c.Jobs[i]
		p.jobs[j.ID] = j
		if p.never[j.ID] = lot.Any(j.Never, l, survey); p.never[j.ID] {
			continue
		}
		if cells, ok := called(j, l, survey); ok {
			p.direct[j.ID], p.cells[j.ID] = lot.Moved(Or(j.Chance, 1), j.Moves, l, survey), cells
		}
		p.bring(j.ID, j.Brings)
		for _, id := range j.Spares {
			p.spared[id] = append(p.spared[id], j.ID)
		}
		for _, id := range j.Covers {
			p.covered[id] = append(p.covered[id], j.ID)
		}
	}
	p.move(c, l, survey)
	p.owned()
	return p
}

// name has the user's lines that say a job in the catalogue's own words stand for it, the first of those alike: nothing counts twice.
func (p planner) name(own []Line, c Catalogue) {
	for _, j := range c.Jobs {
		at := slices.IndexFunc(own, func(l Line) bool { return !l.Removed && PlainWords(l.Job) == PlainWords(j.Job) })
		if _, is := p.own[j.ID]; !is && at >= 0 {
			p.own[j.ID] = own[at]
		}
	}
}

// PlainWords returns words without regard to case and space; no id is written so.
func PlainWords(s string) string { return " " + strings.Join(strings.Fields(strings.ToLower(s)), " ") }

// bring books what a job or a risk brings along.
func (p planner) bring(id string, brings []Brought) {
	for _, b := range brings {
		p.parents[b.ID] = append(p.parents[b.ID], Brought{id, b.Chance})
	}
}

// move moves the chances with which jobs are brought, as the lot moves the chance of each.
func (p planner) move(c Catalogue, l lot.Lot, survey []lot.Damage) {
	for _, j := range c.Jobs {
		if len(j.Moves) == 0 {
			continue
		}
		for i, b := range p.parents[j.ID] {
			chance := lot.Moved(Or(b.Chance, 1), j.Moves, l, survey)
			p.parents[j.ID][i].Chance = &chance
		}
	}
}

// owned has the user's lines stand for their jobs in what those bring along, and nothing else call for them or cover them: a panel
// that the user adds carries its refinish, and one that is struck out brings nothing.
func (p planner) owned() {
	for id, l := range p.own {
		if _, job := p.jobs[id]; job {
			p.direct[id], p.parents[id], p.covered[id] = Or(l.Chance, 1), nil, nil
			if l.Removed {
				p.direct[id] = 0
			}
		}
	}
}

// chance returns the chance that a job is needed. Limits: no job brings itself along, however far round.
func (p planner) chance(id string) float64 {
	c, ok := p.known[id]
	if !ok {
		c = p.beyond(id, nil)
		p.known[id] = c
	}
	return c
}

// left returns the chance that no job that makes this one needless is done. A line of the user counts as the user has it.
func (p planner) left(id string) float64 {
	left := 1.0
	for _, by := range p.spared[id] {
		left *= 1 - p.done(by)
	}
	return left
}

func (p planner) done(id string) float64 {
	l, is := p.own[id]
	switch {
	case !is:
		return p.chance(id)
	case l.Removed:
		return 0
	}
	return Or(l.Chance, 1)
}

// beyond returns the chance that a job is needed by something that the jobs on the way do not bring along themselves.
func (p planner) beyond(id string, way []string) float64 {
	if x, is := p.hurt[id]; is {
		return x.Chance
	}
	if slices.Contains(way, id) || p.never[id] {
		return 0 // a ring of jobs adds nothing to itself
	}
	not := 1 - p.direct[id]
	for _, b := range p.parents[id] {
		not *= 1 - p.beyond(b.ID, append(way, id))*Or(b.Chance, 1)
	}
	return (1 - not) * p.uncovered(id, append(way, id))
}

// uncovered returns the chance that no assembly does the job along with its own.
func (p planner) uncovered(id string, way []string) float64 {
	left := 1.0
	for _, by := range p.covered[id] {
		if _, is := p.own[by]; is {
			left *= 1 - p.done(by)
		} else {
			left *= 1 - p.beyond(by, way)
		}
	}
	return left
}

// why says what calls for a job, the survey or the jobs that bring it, and what makes it needless.
func (p planner) why(j Job) string {
	var with, unless []string
	for _, b := range p.parents[j.ID] {
		if x, is := p.hurt[b.ID]; is {
			with = append(with, x.Name)
		} else if p.chance(b.ID) > 0 {
			with = append(with, p.job(b.ID).Job)
		}
	}
	for _, by := range append(slices.Clone(p.spared[j.ID]), p.covered[j.ID]...) {
		if p.done(by) > 0 {
			unless = append(unless, p.job(by).Job)
		}
	}
	why := because(j.Why, p.cells[j.ID])
	if p.direct[j.ID] == 0 {
		why = strings.TrimSpace(j.Why + " (comes with: " + strings.Join(with, "; ") + ")")
	}
	if len(unless) > 0 {
		why = strings.TrimSpace(why + " (needless with: " + strings.Join(unless, "; ") + ")")
	}
	return why
}

// area returns where a job without an area of its own is done: at the cell that calls for it or for what brings it,
// directly or by way of other jobs; empty where none has a place.
func (p planner) area(id string, way ...string) string {
	if cells := p.cells[id]; len(cells) > 0 {
		return cells[0].Area
	}
	for _, b := range p.parents[id] {
		if p.chance(b.ID) == 0 || slices.Contains(way, b.ID) {
			continue
		}
		if j := p.job(b.ID); j.Area != "" {
			return j.Area
		}
		if at := p.area(b.ID, append(way, id)...); at != "" {
			return at
		}
	}
	return ""
}

// called returns the cells that call for a job, and whether any of its signs is met.
func called(j *Job, l lot.Lot, survey []lot.Damage) ([]lot.Damage, bool) {
	for _, s := range j.Calls {
		if cells, ok := s.Match(l, survey); ok {
			return cells, true
		}
	}
	return nil, false
}

// because puts the cells that call for a job behind its reason.
func because(why string, cells []lot.Damage) string {
	if len(cells) == 0 {
		return why
	}
	var at []string
	for _, d := range cells {
		at = append(at, d.Area+" "+d.Extent+", "+d.Depth)
	}
	return strings.TrimSpace(why + " (" + strings.Join(at, "; ") + ")")
}

// job returns a job of the catalogue, an empty one where the id is that of hidden damage.
func (p planner) job(id string) *Job {
	if j := p.jobs[id]; j != nil {
		return j
	}
	return &Job{}
}
