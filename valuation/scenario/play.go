package scenario

import (
	"walkline/valuation/hidden"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Lot is what is played out.
type Lot struct {
	Lines   []repair.Line
	Risks   []hidden.Risk
	Chances []float64         // of the risks
	Belief  *hidden.Posterior // of the factor and the risks after the findings, whose chances stand before Chances; nil: no findings
	Loading float64           // on the common factor, of lines and risks that name none
	Rates   map[string]float64
	Freight prob.Three
	Storage Storage
	Time    Time
	Spreads Spreads
	N       int
	Seed    int64
}

// Spreads are the log standard deviations of what a whole lot's figures come to against their judgements, beyond what the
// judgements say themselves: of the hours of a trade ("hours/body"), the parts of a source ("parts/used"), "materials",
// "outside" work, money for "hidden" damage and the "days_to_sell". Each is a lognormal factor of median 1 on all that is
// of its kind. The factors lean on each other by the loading (days to sell do not), and not on the lot's common factor: it is
// the shop that scatters here, not the lot that looks better than it is, so no other bidder shares it.
type Spreads map[string]float64

// Storage is the yard's charge: money a day beyond the free days, over the days until the lot is fetched.
type Storage struct {
	PerDay, FreeDays float64
	Days             prob.Three
}

// Time is how the weeks go.
type Time struct {
	HoursPerWeek, HoldingPerDay float64
	InspectionQueue, DaysToSell prob.Three
}

// Part is one line or risk of the outcome: its mean cost (own labour included), the labour of it, and own hours over all scenarios, and
// the share of the scenarios in which it is there.
type Part struct {
	Name                string
	Cost, Labour, Hours float64
	Present             float64
	drawn               *strand
	again               func() *strand // draws the columns anew; nil: they are held
}

// strand returns the part's columns.
func (p Part) strand() *strand {
	if p.again != nil {
		return p.again()
	}
	return p.drawn
}

// Costs returns the part's cost in each of n scenarios, n being the size of the outcome.
func (p Part) Costs(n int) []float64 {
	c := make([]float64, n)
	s := p.strand()
	s.addTo(c, s.cost)
	return c
}

// Outcome is every scenario. Shape: each column has one value a scenario. Nobody changes a column afterwards.
type Outcome struct {
	Factor           []float64
	Lines, Risks     []Part
	Repair, Hidden   []float64 // own labour included
	Labour, Hours    []float64
	HiddenLabour     []float64 // of Labour, that for hidden damage
	Freight, Storage []float64
	Days, Holding    []float64
	InBay            []float64 // of Days, those until the work ends
	Cash             []float64 // money out before the sale beside the invoice: no own labour, no capital cost
	Cost             []float64 // Repair + Hidden + Freight + Storage + Holding
	strata           strata
}

// Play draws the scenarios, taking from the memory what has been drawn before. Random: see the package comment. Limits: l has passed
// the case's checks.
func (m *Memory) Play(l Lot) Outcome {
	m.frames.Turn()
	m.strands.Turn()
	m.knowns.Turn()
	f := m.frame(&l)
	ratios := m.ratios(&l, f)
	repaired, hurt := newSum(l.N), newSum(l.N)
	o := Outcome{Factor: f.factor, strata: f.strata}
	player := repair.NewPlayer(repair.Setting{Draws: f.draws, Factor: f.factor, Loading: l.Loading, Rates: l.Rates,
		HoldingPerDay: l.Time.HoldingPerDay,
		Ratios:        ratios})
	h := held{room: m.room}
	for k, r := range l.Risks {
		draw := func() *strand { return m.risk(r, l.there(k), &l, f, ratios) }
		s := draw()
		hurt.add(s)
		s.addTo(hurt.days, s.days)
		player.There[r.ID] = s.at
		o.Risks = append(o.Risks, h.part(r.Name, s, draw))
	}
	for _, line := range l.Lines { // after the risks: some bring work along
		draw := func() *strand { return m.line(line, &l, f, player) }
		s := draw()
		repaired.add(s)
		s.raise(repaired.days)
		o.Lines = append(o.Lines, h.part(line.Job, s, draw))
	}
	o.Freight = m.column("lot/freight", l.Freight, &l, f)
	yard := m.column("lot/storage", l.Storage.Days, &l, f)
	queue, selling := m.column("lot/inspection", l.Time.InspectionQueue, &l, f), m.column("lot/selling", l.Time.DaysToSell, &l, f)
	if slow := ratios["days_to_sell"]; slow != nil {
		selling = times(selling, slow)
	}
	o.gather(&l, repaired, hurt, yard, queue, selling)
	return o
}

// mostHeld is how many bytes of columns an outcome holds on to; those of the lines beyond it are drawn anew where they are asked for.
const mostHeld = 192 << 20

// held counts what an outcome holds.
type held struct{ room int }

// part returns a strand as a part; one that there is no room for keeps what was read off it alone.
func (h *held) part(name string, s *strand, draw func() *strand) Part {
	p := Part{Name: name, Cost: s.mean, Labour: s.pay, Hours: s.work, Present: s.present, drawn: s}
	if h.room -= s.size(); h.room < 0 {
		p.drawn, p.again = &strand{slices: s.slices}, draw
		if s.at != nil {
			p.drawn.at = []int32{} // not in all of them
		}
	}
	return p
}

// at returns the scenarios in which the part is there; nil: all of them.
func (p Part) at() []int32 {
	if p.drawn.at == nil {
		return nil
	}
	return p.strand().at
}

// sum is what all lines, or all risks, come to in each scenario. The days of lines are those of the last critical part,
// the days of risks add up.
type sum struct{ cost, labour, hours, days []float64 }

func newSum(n int) sum {
	all := make([]float64, 4*n)
	return sum{all[:n:n], all[n : 2*n : 2*n], all[2*n : 3*n : 3*n], all[3*n:]}
}

// add books one strand's money and hours.
func (t sum) add(s *strand) {
	s.addTo(t.cost, s.cost)
	s.addTo(t.labour, s.labour)
	s.addTo(t.hours, s.hours)
}

// gather makes the lot's columns of the sums: of known work, of hidden damage, and of the days in the yard, in the queue
// and until it is sold.
func (o *Outcome) gather(l *Lot, known, hurt sum, yard, queue, selling []float64) {
	col := func() []float64 { return make([]float64, l.N) }
	o.Repair, o.Hidden, o.HiddenLabour = known.cost, hurt.cost, hurt.labour
	o.Labour, o.Hours, o.Storage = known.labour, known.hours, col() // added up below
	o.Days, o.InBay, o.Holding, o.Cash, o.Cost = col(), col(), col(), col(), col()
	daysAnHour := 7 / l.Time.HoursPerWeek
	for i := range o.Days {
		work := (known.hours[i] + hurt.hours[i]) * daysAnHour
		o.Labour[i] += hurt.labour[i]
		o.Hours[i] += hurt.hours[i]
		o.Storage[i] = max(0, yard[i]-l.Storage.FreeDays) * l.Storage.PerDay
		o.InBay[i] = max(known.days[i], work) + hurt.days[i]
		o.Days[i] = o.InBay[i] + queue[i] + selling[i]
		o.Holding[i] = o.Days[i] * l.Time.HoldingPerDay
		o.Cost[i] = o.Repair[i] + o.Hidden[i] + o.Freight[i] + o.Storage[i] + o.Holding[i]
		o.Cash[i] = o.Cost[i] - o.Labour[i]
	}
}
