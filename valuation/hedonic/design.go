package hedonic

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"walkline/valuation/prob"
)

// Cause is what an adjustment is for.
type Cause int

// The causes of adjustments.
const (
	CauseNone Cause = iota // the level, which all rows share
	CauseAsked
	CauseDate
	CauseMileage
	CauseAge
	CauseTrim
	CauseBrand
	CauseOther  // another model, condition, any further column
	CauseEngine // a column of the engine, fuel or gearbox
	CausePlace  // a column of where it stands
	Causes      // how many there are
)

// term is one effect on the logarithm of the price, with its Gaussian prior.
type term struct {
	name  string
	cause Cause
	prob.Term
}

// group is a set of effects with one spread, which the table tells.
type group struct {
	name  string
	prior prob.Scale
}

// design lays out the effects for one table, one market prior and one form of mileage. Every effect is measured from the
// subject, so that the level is the subject's own expected log price but for effects of levels.
type design struct {
	terms   []term
	groups  []group
	links   []prob.Link
	names   []string // of the columns of the table
	form    Form
	centre  Traits
	age     int
	bend    int
	mileage int // -1: the subject's mileage or the rows' isn't known
	asked   int // -1: no row is asked
	cond    int // -1: no row states its condition
	brand   int // -1: neither the subject nor a row is branded
	brands  map[string]int
	steps   []step
	years   []yearTerm // in order; nil: all rows are of the subject's model year
	yearly  int        // the group of the years' steps
	trims   levelled
	models  levelled
	slopes  map[string][2]int // each model's own age and mileage slopes
	columns []column
	gap     line // mileage over age, for rows without a mileage
}

// levelled is a set of named levels with an effect each.
type levelled struct {
	terms map[string]int // nil: not used
	group int
}

// step is a stretch of time over which the market drifts.
type step struct {
	from, to float64 // years before the subject's sale
	term     int
}

// line is a straight line.
type line struct{ at, slope float64 }

// bendAt is the age in years about which the curvature of the price over age is measured.
const bendAt = 8

// levelSD is the prior spread of the level: flat for any purpose.
const levelSD = 10

func (d *design) add(t term) int {
	d.terms = append(d.terms, t)
	return len(d.terms) - 1
}

func (d *design) addGroup(name string, s prob.Scale) int {
	d.groups = append(d.groups, group{name, s})
	return len(d.groups) - 1
}

// newDesign lays out the effects that the rows and the subject call for.
func newDesign(t table, b Outlook, m Market, form Form) *design {
	rows := t.rows
	d := &design{names: t.names, form: form, centre: t.subject, mileage: -1, asked: -1, cond: -1, brand: -1}
	d.add(term{name: "level", Term: prob.Term{SD: levelSD, Group: -1}})
	d.age = d.addEffect("age", CauseAge, m.Effects[effectAge])
	d.bend = d.addEffect("bend", CauseAge, m.Effects[effectBend])
	d.addMileage(rows, m)
	d.addAsked(rows, b)
	d.addBrand(rows, b)
	d.addCondition(rows, m)
	d.addSteps(rows, b.Walk)
	d.addModels(rows, m)
	d.addYears(rows, m)
	d.addTrims(rows, m)
	d.columns = t.columns()
	for i := range d.columns {
		d.addColumn(&d.columns[i], m)
	}
	return d
}

func (d *design) addEffect(name string, c Cause, e Effect) int {
	return d.add(term{name: name, cause: c, Term: prob.Term{Mean: e.Mean, SD: e.SD, Group: -1}})
}

func (d *design) addMileage(rows []Sale, m Market) {
	known := 0
	var age, miles []float64
	for _, r := range rows {
		if r.MilesKnown {
			known++
			age, miles = append(age, r.Age), append(miles, r.Miles)
		}
	}
	if !d.centre.MilesKnown || known == 0 {
		return
	}
	d.gap = through(age, miles)
	d.mileage = d.addEffect("mileage", CauseMileage, m.Effects[d.form.effect()])
}

// through returns the least-squares line of y over x, flat when x doesn't vary.
func through(x, y []float64) line {
	n := float64(len(x))
	var mx, my, xx, xy float64
	for i := range x {
		mx += x[i] / n
		my += y[i] / n
	}
	for i := range x {
		xx += (x[i] - mx) * (x[i] - mx)
		xy += (x[i] - mx) * (y[i] - my)
	}
	if xx < 1e-9 {
		return line{at: my}
	}
	return line{at: my - xy/xx*mx, slope: xy / xx}
}

func (d *design) addAsked(rows []Sale, b Outlook) {
	for _, r := range rows {
		if r.Asked {
			d.asked = d.addEffect("asked", CauseAsked, Effect{-b.Asked.Mean, b.Asked.SD})
			return
		}
	}
}

// otherBrandSD is how far the effect of another title brand than the subject's may lie from the subject's, on the log of
// the price. Starter value, from memory: replace it with yours.
const otherBrandSD = 0.15

func (d *design) addBrand(rows []Sale, b Outlook) {
	names := map[string]bool{}
	branded := d.centre.Brand != ""
	for _, r := range rows {
		if r.Brand != "" {
			branded = true
			names[r.Brand] = true
		}
	}
	if !branded {
		return
	}
	d.brand = d.addEffect("brand", CauseBrand, b.Brand)
	own := d.centre.Brand
	if own == "" {
		own = usualBrand
	}
	delete(names, own)
	d.brands = map[string]int{}
	for _, name := range sorted(names) {
		d.brands[name] = d.addEffect("brand "+name, CauseBrand, Effect{0, otherBrandSD})
	}
}

// usualBrand is the title brand that a rebuilt vehicle is usually sold with.
const usualBrand = "rebuilt"

func (d *design) addCondition(rows []Sale, m Market) {
	known := 0
	for _, r := range rows {
		if r.CondKnown {
			known++
		}
	}
	if known > 0 && float64(known) >= leastFilled*float64(len(rows)) {
		d.cond = d.addEffect("condition", CauseOther, m.Effects[effectCondition])
	}
}

// stepEdges are the ends, in years before the sale, of the stretches over which the market drifts.
var stepEdges = []float64{0, 0.125, 0.25, 0.5, 0.75, 1, 1.5, 2, 3, 5, 8, math.Inf(1)}

// driftWorth is how many stretches the usual drift of the market is worth against what the table shows: few, for the years in which a
// market moves by several times its usual drift are those that matter.
const driftWorth = 4

func (d *design) addSteps(rows []Sale, walk float64) {
	oldest := 0.0
	for _, r := range rows {
		oldest = max(oldest, r.Back)
	}
	if oldest == 0 || walk <= 0 {
		return
	}
	g := d.addGroup("drift", prob.Scale{SD: walk, Worth: driftWorth})
	for i := 1; i < len(stepEdges) && stepEdges[i-1] < oldest; i++ {
		from, to := stepEdges[i-1], min(stepEdges[i], oldest)
		at := d.add(term{name: "drift", cause: CauseDate, Term: prob.Term{Group: g}})
		d.steps = append(d.steps, step{from, to, at})
	}
}

// slopeRows is the Number of rows from which a model gets slopes of its own: fewer say nothing of them.
const slopeRows = 8

func (d *design) addModels(rows []Sale, m Market) {
	counts := map[string]int{}
	for _, r := range rows {
		counts[r.Model]++
	}
	if len(counts) == 0 || (len(counts) == 1 && (counts[d.centre.Model] > 0 || d.centre.Model == "")) {
		return
	}
	g := d.addGroup("model", m.Spreads[spreadModel])
	d.models = levelled{commonest(counts, d.centre.Model), g}
	slope := d.addGroup("model slopes", m.Spreads[spreadSlope])
	d.slopes = map[string][2]int{}
	for _, name := range sorted(d.models.terms) {
		d.models.terms[name] = d.add(term{name: "model " + name, cause: CauseOther, Term: prob.Term{Group: g}})
		if name != d.centre.Model && counts[name] < slopeRows {
			continue
		}
		at := [2]int{d.add(term{name: "age of " + name, cause: CauseAge, Term: prob.Term{Group: slope}}), -1}
		if d.mileage >= 0 {
			at[1] = d.add(term{name: "mileage of " + name, cause: CauseMileage, Term: prob.Term{Group: slope}})
		}
		d.slopes[name] = at
	}
}

func (d *design) addTrims(rows []Sale, m Market) {
	if d.centre.Trim == "" {
		return
	}
	counts := map[string]int{}
	for _, r := range rows {
		if r.Trim != "" {
			counts[d.trimOf(r.Traits)]++
		}
	}
	own := d.trimOf(d.centre)
	if len(counts) == 0 || (len(counts) == 1 && counts[own] > 0) {
		return
	}
	g := d.addGroup("trim", m.Spreads[spreadTrim])
	d.trims = levelled{commonest(counts, own), g}
	for _, name := range sorted(d.trims.terms) {
		d.trims.terms[name] = d.add(term{name: "trim " + name, cause: CauseTrim, Term: prob.Term{Group: g}})
	}
}

// yearTerm is the effect of a model year beside what its age makes of it: a vehicle changes from year to year in steps.
type yearTerm struct {
	year, term int // term -1: the subject's own year, from which the others are measured
}

// mostYears is the Number of different model years above which a table holds slips of the pen: then years get no effects.
const mostYears = 60

// addYears chains the model years of the rows and the subject: each lies a step from the year before it.
func (d *design) addYears(rows []Sale, m Market) {
	seen := map[int]bool{d.centre.Year: true}
	for _, r := range rows {
		seen[r.Year] = true
	}
	if len(seen) == 1 || len(seen) > mostYears {
		return
	}
	d.yearly = d.addGroup(spreadYear, m.Spreads[spreadYear])
	for _, year := range sorted(seen) {
		y := yearTerm{year, -1}
		if year != d.centre.Year {
			y.term = d.add(term{name: "year " + strconv.Itoa(year), cause: CauseAge, Term: prob.Term{SD: levelSD, Group: -1}})
		}
		d.years = append(d.years, y)
	}
	for i := 1; i < len(d.years); i++ {
		from, to := d.years[i-1], d.years[i]
		l := prob.Link{From: from.term, To: to.term, Gap: float64(to.year - from.year), Group: d.yearly}
		if l.To < 0 {
			l.From, l.To = l.To, l.From
		}
		d.links = append(d.links, l)
	}
}

// nearestYear returns the term of the year nearest to the given one, and how many years lie between.
func (d *design) nearestYear(year int) (at, off int) {
	off = -1
	for _, y := range d.years {
		if gap := max(y.year-year, year-y.year); off < 0 || gap < off {
			at, off = y.term, gap
		}
	}
	return at, off
}

// trimOf returns the name of a trim, within its model where the table has several.
func (d *design) trimOf(t Traits) string {
	if d.models.terms == nil {
		return t.Trim
	}
	return t.within
}

// mostShift is the most by which a column of numbers can be believed to move a log price: 1600 for an engine of 1.6 litres
// is a slip of the pen.
const mostShift = 2

func (d *design) addColumn(c *column, m Market) {
	if !c.words {
		if e, ok := m.Effects[c.name]; ok {
			c.scale, c.reach = 1, mostShift/math.Max(e.SD, math.Abs(e.Mean))
			c.term = d.addEffect(c.name, c.cause(), e)
			return
		}
		c.reach = mostShift / m.Spreads[spreadNumber].SD
		g := d.addGroup(c.name, m.Spreads[spreadNumber])
		c.term = d.add(term{name: c.name, cause: c.cause(), Term: prob.Term{Group: g}})
		return
	}
	spread, ok := m.Spreads[spreadLevel+" "+c.name]
	if !ok {
		spread = m.Spreads[spreadLevel]
	}
	c.group = d.addGroup(c.name, spread)
	for _, name := range sorted(c.levels) {
		mean := m.Effects[c.name+"="+name].Mean
		c.levels[name] = d.add(term{name: c.name + " " + name, cause: c.cause(), Term: prob.Term{Mean: mean, Group: c.group}})
	}
}

func sorted[K cmp.Ordered, V any](m map[K]V) []K {
	names := make([]K, 0, len(m))
	for name := range m {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
