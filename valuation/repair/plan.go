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
	return NewPlanner(own, NewIndex(c), l, survey).Lines(hurt...)
}

// Lines returns what [Plan] does with that hidden damage.
func (p *Planner) Lines(hurt ...Cause) []Line {
	lines := p.begin(hurt)
	level := lot.Scaled(p.scales, p.lot, p.survey)
	for i := range p.all {
		j := &p.all[i]
		chance := p.planned(j)
		if chance == 0 {
			continue
		}
		line := j.Line.scaled(level.Times(lot.Scaled(j.Scales, p.lot, p.survey)))
		line.Chance, line.Why, line.Needs = &chance, p.why(j), p.needs(j.ID)
		if line.Area == "" {
			line.Area = p.area(j.ID)
		}
		lines = append(lines, line)
	}
	return lines
}

// Settling returns the user's lines, and of the catalogue's those that may put hidden damage right: their names and chances alone.
func (p *Planner) Settling() []Line {
	lines := p.begin(nil)
	for i := range p.all {
		j := &p.all[i]
		if len(p.Settles(j.Line)) == 0 {
			continue
		}
		if chance := p.planned(j); chance > 0 {
			lines = append(lines, Line{ID: j.ID, Job: j.Job, Currency: j.Currency, Chance: &chance})
		}
	}
	return lines
}

// planned returns the chance with which a job is in the plan beside the user's lines.
func (p *Planner) planned(j *Job) float64 {
	if _, is := p.own[j.ID]; is || p.never[j.ID] {
		return 0
	}
	return p.chance(j.ID) * p.left(j.ID)
}

// begin begins a plan with that hidden damage, and returns the user's lines in it.
func (p *Planner) begin(hurt []Cause) []Line {
	p.hit(hurt)
	lines := slices.DeleteFunc(slices.Clone(p.lines), func(l Line) bool { return l.Removed })
	for i := range lines {
		lines[i].Needs = nil
	}
	return lines
}

// Cause is hidden damage that brings work along where it comes true.
type Cause struct {
	ID, Name string
	Chance   float64
	Brings   []Brought
}

// riskKey keeps the ids of risks apart from those of jobs.
func riskKey(id string) string { return "risk/" + id }

// chance returns the chance that a job is needed. Limits: no job brings itself along, however far round.
func (p *Planner) chance(id string) float64 {
	c, ok := p.known[id]
	if !ok {
		c = p.beyond(id, p.way[:0])
		p.known[id] = c
	}
	return c
}

// left returns the chance that no job that makes this one needless is done. A line of the user counts as the user has it.
func (p *Planner) left(id string) float64 {
	left := 1.0
	for _, by := range p.sparers(id) {
		left *= 1 - p.done(by)
	}
	return left
}

func (p *Planner) done(id string) float64 {
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
func (p *Planner) beyond(id string, way []string) float64 {
	if x, is := p.hurt[id]; is {
		return x.Chance
	}
	ringed, job := p.ringed[id]
	alone := job && !ringed // the way here makes no difference
	if c, known := p.known[id]; known && alone {
		return c
	}
	if slices.Contains(way, id) || p.never[id] {
		return 0 // a ring of jobs adds nothing to itself
	}
	not := 1 - p.direct[id]
	for _, b := range p.parents(id) {
		not *= 1 - p.beyond(b.ID, append(way, id))*Or(b.Chance, 1)
	}
	c := (1 - not) * p.uncovered(id, append(way, id))
	if alone {
		p.known[id] = c
	}
	return c
}

// uncovered returns the chance that no assembly does the job along with its own.
func (p *Planner) uncovered(id string, way []string) float64 {
	left := 1.0
	for _, by := range p.coverers(id) {
		if _, is := p.own[by]; is {
			left *= 1 - p.done(by)
		} else {
			left *= 1 - p.beyond(by, way)
		}
	}
	return left
}

// why says what calls for a job, the survey or the jobs that bring it, and what makes it needless.
func (p *Planner) why(j *Job) string {
	var with, unless []string
	for _, b := range p.parents(j.ID) {
		if x, is := p.hurt[b.ID]; is {
			with = append(with, x.Name)
		} else if p.chance(b.ID) > 0 {
			with = append(with, p.job(b.ID).Job)
		}
	}
	for _, by := range slices.Concat(p.sparers(j.ID), p.coverers(j.ID)) {
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
func (p *Planner) area(id string, way ...string) string {
	if cells := p.cells[id]; len(cells) > 0 {
		return cells[0].Area
	}
	for _, b := range p.parents(id) {
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
func called(j *Job, l *lot.Lot, survey []lot.Damage) ([]lot.Damage, bool) {
	for i := range j.Calls {
		if cells, ok := j.Calls[i].Match(l, survey); ok {
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
func (p *Planner) job(id string) *Job {
	if j := p.jobs[id]; j != nil {
		return j
	}
	return &Job{}
}
