package ways

import "walkline/valuation/scenario"

// Way is a way out: its mean figures, and its hours and days as drawn.
type Way struct {
	Name        string
	Money       float64   // mean, net of selling
	Hours, Days []float64 // as drawn
	Rate        float64   // of an own hour
	MeanHours   float64
	MeanDays    float64
}

// Mean returns what the way brings on average, its hours of work and its days paid.
func (w Way) Mean(holding float64) float64 { return w.Money - w.MeanHours*w.Rate - w.MeanDays*holding }

// Best returns the position of the way that brings most on average, the first of those alike; -1 for none.
func Best(all []Way, holding float64) int {
	best := -1
	for i, w := range all {
		if best < 0 || w.Mean(holding) > all[best].Mean(holding) {
			best = i
		}
	}
	return best
}

// Sale is the sale of the finished vehicle.
type Sale struct {
	Price         float64 // mean, as of today
	Percent, Flat float64
	Multiple      func(days float64) float64 // the mean price so many days after the purchase, as a multiple of today's
}

// net returns what the sale is expected to leave after so many days.
func (s Sale) net(days float64) float64 { return s.Price*s.Multiple(days)*(1-s.Percent) - s.Flat }

// Lot is what the choice is made for.
type Lot struct {
	Stripped scenario.Stripped
	Holding  float64 // a day
	Strip    Way     // the strip-down: hours and days, no money
	Way      Way     // the best way out
	Sale     Sale
}

// Choice says which scenarios stop.
type Choice struct {
	Stops  []uint8 // 1: stopped
	Chance float64 // share of the scenarios that stop
	Line   float64 // money still to spend at which stopping is as good, on the mean day of sale
}

// left returns what is still to spend from the strip-down on where scenario i goes on, holding counted in.
func (l Lot) left(i int) float64 {
	days := max(0, l.Stripped.Days[i]-l.Strip.MeanDays)
	return l.Stripped.Money[i] - l.Strip.MeanHours*l.Strip.Rate + l.Holding*days
}

// Choose returns where the buyer stops.
func (l Lot) Choose() Choice {
	n := len(l.Stripped.Money)
	c := Choice{Stops: make([]uint8, n)}
	out, days := l.Way.Mean(l.Holding), 0.0
	for i := range c.Stops {
		days += l.Stripped.Days[i] / float64(n)
		if l.Sale.net(l.Stripped.Days[i])-l.left(i) < out {
			c.Stops[i] = 1
			c.Chance += 1 / float64(n)
		}
	}
	c.Line = l.Sale.net(days) - out
	return c
}

// Columns are what the scenarios come to. Shape: one value a scenario.
type Columns struct{ Cost, Days, Cash, Hours, Labour []float64 }

// Whole returns the columns of scenarios that are all finished.
func Whole(o scenario.Outcome) Columns { return Columns{o.Cost, o.Days, o.Cash, o.Hours, o.Labour} }

// Stop returns the columns with the stops of a choice: where it stops, nothing of repair or hidden damage is spent beyond the strip-down.
func (l Lot) Stop(o scenario.Outcome, c Choice) Columns {
	out := room(len(o.Cost))
	whole := Whole(o)
	for i, stops := range c.Stops {
		if stops == 0 {
			out.copy(i, whole)
			continue
		}
		l.Strip.leave(&out, o, i, l.Holding, l.Way)
	}
	return out
}

// Alone returns the columns of a way that is taken from the start: no strip-down, no repair.
func (w Way) Alone(o scenario.Outcome, holding float64) Columns {
	out := room(len(o.Cost))
	for i := range out.Cost {
		Way{}.leave(&out, o, i, holding, w)
	}
	return out
}

// leave books a scenario that ends by a way out after the strip-down w.
func (w Way) leave(out *Columns, o scenario.Outcome, i int, holding float64, by Way) {
	out.Hours[i] = at(w.Hours, i) + at(by.Hours, i)
	out.Labour[i] = at(w.Hours, i)*w.Rate + at(by.Hours, i)*by.Rate
	out.Days[i] = at(w.Days, i) + at(by.Days, i)
	out.Cash[i] = o.Freight[i] + o.Storage[i] + out.Days[i]*holding
	out.Cost[i] = out.Cash[i] + out.Labour[i]
}

func (c *Columns) copy(i int, from Columns) {
	c.Cost[i], c.Days[i], c.Cash[i], c.Hours[i], c.Labour[i] = from.Cost[i], from.Days[i], from.Cash[i], from.Hours[i], from.Labour[i]
}

func room(n int) Columns {
	all := make([]float64, 5*n)
	col := func(k int) []float64 { return all[k*n : (k+1)*n : (k+1)*n] }
	return Columns{col(0), col(1), col(2), col(3), col(4)}
}

// at returns a column's value, nothing where there is no column.
func at(xs []float64, i int) float64 {
	if xs == nil {
		return 0
	}
	return xs[i]
}
