package learn

import (
	"math"

	"walkline/valuation/belief"
	"walkline/valuation/prob"
)

// The resale family: the bias of the forecast, and apart from it what a branded title takes off beyond the belief. The
// forecast's own spread is taken for the spread of the error, times a factor that is learned. Starter values, from memory.
const (
	biasSD      = 0.04 // of the bias of the log price
	brandSD     = 0.04 // of a branded title's log effect about the belief
	spreadBuys  = 10   // how many buys the forecast's own spread counts for
	leastSpread = 0.03 // least log sd that a forecast of a price is taken to have
)

// saleFact is one sale against its forecast.
type saleFact struct {
	build  Build
	weight float64
	log    float64 // of price / foretold median, taken back to the starter values
	sd     float64 // of the forecast's log price
	brand  float64 // how far the forecast hangs on the belief about the brand
}

// sale returns what the build's sale says of the resale forecast: only a finished vehicle, sold under the title that was
// foretold, does. Today's asked-to-sold factor counts as in force then, so that it is not learned twice.
func (b Build) sale(now Factors) (saleFact, bool) {
	p, s := b.Foretold, b.Came.Sale
	if b.Ending != Sold || p == nil || s == nil || s.Price <= 0 || !p.Resale.Known() || s.Brand != "" && s.Brand != p.Terms.Brand {
		return saleFact{}, false
	}
	low, mid, high := p.Resale.quantile(0.1), p.Resale.quantile(0.5), p.Resale.quantile(0.9)
	allowed := p.Terms.ResaleAllow / (1 - p.Terms.SellPercent)
	if low <= 0 || mid <= allowed {
		return saleFact{}, false
	}
	f := saleFact{build: b, brand: p.Terms.BrandShare}
	f.sd = math.Log(high/low) / (2 * prob.NormQuantile(0.9))
	f.log = math.Log(b.Major(s.Price) / (mid - allowed))
	if r := p.Factors.Resale; r != nil {
		f.log += math.Log(r.Factor)
		f.sd /= r.Spread
	}
	f.sd = math.Max(f.sd, leastSpread)
	f.log += f.brand * math.Log(p.Factors.BrandDiscount.factor())
	f.log += p.Terms.AskedShare * math.Log(p.Factors.AskedToSold.factor()/now.AskedToSold.factor())
	return f, true
}

// sales is the resale forecast with what the sales say of it: coefficients bias and brand; sigma is the factor on the
// forecast's own log sd.
type sales struct {
	facts       []saleFact
	left        []saleFact
	prior, post belief.Linear
	scale       float64 // mean log sd of the forecasts
}

func fitSales(facts []saleFact) sales {
	s := sales{scale: 0.12} // the log sd that the prior is stated for. Starter value, from memory.
	var samples []belief.Sample
	var sum, count float64
	for _, f := range facts {
		if math.Abs(f.log) > math.Log(widest) {
			s.left = append(s.left, f)
			continue
		}
		s.facts = append(s.facts, f)
		samples = append(samples, belief.Sample{X: [][]float64{{1, f.brand}}, Y: []float64{f.log}, Scale: []float64{f.sd}, Weight: f.weight})
		sum += f.weight * f.sd
		count += f.weight
	}
	s.prior = belief.Independent([]float64{biasSD, brandSD}, 1, spreadBuys/2+1)
	if count > 0 {
		s.scale = sum / count
	}
	s.post = s.prior.Update(samples)
	return s
}

// spread returns the factor on the forecast's own log sd that makes the next price's range hold, believed more as more
// sales count.
func (s sales) spread() float64 {
	x := []float64{1, 0}
	count := 0.0
	for _, f := range s.facts {
		count += f.weight
		x[1] += f.weight * f.brand
	}
	if count == 0 {
		return 1
	}
	x[1] /= count
	v := s.post.Sigma2() + s.post.Of(x).Variance()/(s.scale*s.scale)
	return math.Sqrt(1 + (v-1)*count/(count+spreadCounts))
}

// asked returns what the first asking price says of the step from asking to selling.
func (b Build) asked(start Starter) []observed {
	s := b.Came.Sale
	if b.Ending != Sold || s == nil || s.Asked == nil || *s.Asked <= 0 || s.Price <= 0 {
		return nil
	}
	believed := start.AskedToSold.Mean()
	if p := b.Foretold; p != nil && p.Terms.AskedToSold > 0 {
		believed = p.Terms.AskedToSold / p.Factors.AskedToSold.factor()
	}
	if believed <= 0 {
		return nil
	}
	return []observed{{log: math.Log(float64(s.Price) / float64(*s.Asked) / believed)}}
}

// selling returns what the days to sell say of their forecast. A sale on the day of the offer counts as one day.
func (b Build) selling() []observed {
	p := b.Foretold
	if b.Ending != Sold || p == nil || b.Came.Days.Sell == nil || p.Terms.DaysToSell <= 0 {
		return nil
	}
	f := p.Factors.DaysToSell.factor()
	t := tally{came: math.Max(1, *b.Came.Days.Sell), any: true}
	t.add(p.Terms.DaysToSell/f, p.Terms.DaysSD/f)
	o, ok := t.observed("", 0)
	if !ok {
		return nil
	}
	return []observed{o}
}
