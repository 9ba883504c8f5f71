package repair

import (
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// Plan returns the user's lines followed by the lines of the catalogue that the survey calls for, and what those bring
// along, each job once. A line of the user with a job's id stands in its place (edited or struck out).
// The chance of a job is that the survey calls for it or that at least one of the jobs that bring it does.
func Plan(own []Line, c Catalogue, l lot.Lot, survey []lot.Damage) []Line {
	p := newPlanner(c, l, survey)
	lines := slices.DeleteFunc(slices.Clone(own), func(l Line) bool { return l.Removed })
	for _, j := range c.Jobs {
		chance := p.chance(j.ID)
		if chance == 0 || slices.ContainsFunc(own, func(l Line) bool { return l.ID == j.ID }) {
			continue
		}
		line := j.Line
		line.Chance, line.Why = &chance, p.why(j)
		if line.Area == "" {
			line.Area = p.area(j.ID)
		}
		lines = append(lines, line)
	}
	return lines
}

// planner knows which jobs are called for and by what.
type planner struct {
	jobs    map[string]Job
	cells   map[string][]lot.Damage
	direct  map[string]float64   // chance of a job that the survey itself calls for
	parents map[string][]Brought // who brings a job, and how likely
	known   map[string]float64   // chances worked out so far
}

func newPlanner(c Catalogue, l lot.Lot, survey []lot.Damage) planner {
	p := planner{map[string]Job{}, map[string][]lot.Damage{}, map[string]float64{}, map[string][]Brought{}, map[string]float64{}}
	for _, j := range c.Jobs {
		p.jobs[j.ID] = j
		if cells, ok := called(j, l, survey); ok {
			p.direct[j.ID], p.cells[j.ID] = Or(j.Chance, 1), cells
		}
		for _, b := range j.Brings {
			p.parents[b.ID] = append(p.parents[b.ID], Brought{j.ID, b.Chance})
		}
	}
	return p
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

// beyond returns the chance that a job is needed by something that the jobs on the way do not bring along themselves.
func (p planner) beyond(id string, way []string) float64 {
	if slices.Contains(way, id) {
		return 0 // a ring of jobs adds nothing to itself
	}
	not := 1 - p.direct[id]
	for _, b := range p.parents[id] {
		not *= 1 - p.beyond(b.ID, append(way, id))*Or(b.Chance, 1)
	}
	return 1 - not
}

// why says what calls for a job: the survey, or the jobs that bring it.
func (p planner) why(j Job) string {
	if p.direct[j.ID] > 0 {
		return because(j.Why, p.cells[j.ID])
	}
	var with []string
	for _, b := range p.parents[j.ID] {
		if p.chance(b.ID) > 0 {
			with = append(with, p.jobs[b.ID].Job)
		}
	}
	return strings.TrimSpace(j.Why + " (comes with: " + strings.Join(with, "; ") + ")")
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
		if j := p.jobs[b.ID]; j.Area != "" {
			return j.Area
		}
		if at := p.area(b.ID, append(way, id)...); at != "" {
			return at
		}
	}
	return ""
}

// called returns the cells that call for a job, and whether any of its signs is met.
func called(j Job, l lot.Lot, survey []lot.Damage) ([]lot.Damage, bool) {
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
