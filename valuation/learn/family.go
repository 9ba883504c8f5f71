package learn

import (
	"fmt"
	"math"
	"slices"

	"walkline/valuation/belief"
	"walkline/valuation/lot"
)

// family is ratios that are pooled to one overall ratio: the trades' hours, the money by source and kind, or one ratio
// alone. Its model: log ratio = overall + group + error, see [belief.Linear].
type family struct {
	overall  float64 // standard deviation of the overall log ratio before any buy
	group    float64 // of a group about the overall; 0: no groups
	sigma    float64 // of one build about its group
	freedom  float64 // how many buys the starter value of sigma counts for
	together string  // what the groups are together, in words
}

// Starter values, from memory: replace them with yours. One build in three is taken to be off by more than two fifths about
// its shop's ratio, one shop in three by more than a seventh in its hours: so the starter value counts for about eight buys.
var (
	hoursFamily   = family{0.12, 0.08, 0.40, 8, "your other trades"}
	moneyFamily   = family{0.10, 0.08, 0.35, 8, "your other costs"}
	askedFamily   = family{0.02, 0, 0.05, 8, ""}
	sellingFamily = family{0.25, 0, 0.60, 8, ""}
)

// poolStarts is how many groups the starter spread between groups counts for. Starter value, from memory.
const poolStarts = 4

// fact is one build's ratios with its age.
type fact struct {
	build  Build
	weight float64
	ratios []observed
	left   []observed // too far from 1 to be believed
}

// facts returns the ratios of each build, faded to today.
func facts(builds []Build, today lot.Date, halfLife float64, of func(Build) []observed) []fact {
	var out []fact
	for _, b := range builds {
		if !b.ours() || b.Ending == Open {
			continue
		}
		f := fact{build: b, weight: b.strength() * faded(b.day(), today, halfLife)}
		for _, o := range of(b) {
			if math.Abs(o.log) > math.Log(widest) {
				f.left = append(f.left, o)
			} else {
				f.ratios = append(f.ratios, o)
			}
		}
		if f.weight > 0 && len(f.ratios)+len(f.left) > 0 {
			out = append(out, f)
		}
	}
	return out
}

// fitted is a family with what the builds say of it.
type fitted struct {
	family
	keys  []string
	prior belief.Linear
	post  belief.Linear
	facts []fact
}

// fit pools the facts over the keys. Rho is the correlation of two ratios of one build.
func (f family) fit(keys []string, all []fact, rho float64) fitted {
	out := fitted{family: f, keys: keys, facts: all}
	out.pool(rho)
	out.steady(rho)
	if f.group == 0 || len(keys) < 4 {
		return out
	}
	y, v := out.alone()
	out.group = belief.Between(y, v, f.group, poolStarts)
	out.pool(rho)
	return out
}

func (f *fitted) pool(rho float64) {
	sd := []float64{f.overall / f.sigma}
	for range f.keys {
		if f.group > 0 {
			sd = append(sd, f.group/f.sigma)
		}
	}
	f.prior = belief.Independent(sd, f.sigma, f.freedom/2+1)
	samples := make([]belief.Sample, len(f.facts))
	for i, a := range f.facts {
		s := belief.Sample{Weight: a.weight, Rho: rho}
		for _, o := range a.ratios {
			s.X, s.Y, s.Scale = append(s.X, f.row(o.key)), append(s.Y, o.log), append(s.Scale, o.scale(f.sigma))
		}
		samples[i] = s
	}
	f.post = f.prior.Update(samples)
}

// row returns the design of one key: the overall ratio and its own group; of no key, the overall ratio alone.
func (f *fitted) row(key string) []float64 {
	x := make([]float64, len(f.prior.Mean))
	x[0] = 1
	if k := slices.Index(f.keys, key); k >= 0 && f.group > 0 {
		x[1+k] = 1
	}
	return x
}

// alone returns the mean log ratio of each key that has evidence, and its variance.
func (f *fitted) alone() (y, v []float64) {
	for _, k := range f.keys {
		if m, n := f.own(k); n > 0 {
			y, v = append(y, m), append(v, f.post.Sigma2()/n)
		}
	}
	return y, v
}

// own returns the mean log ratio of a key's own evidence and the buys that it counts.
func (f *fitted) own(key string) (mean, count float64) {
	for _, a := range f.facts {
		for _, o := range a.ratios {
			if o.key == key {
				mean += a.weight * o.log
				count += a.weight
			}
		}
	}
	return mean / math.Max(count, 1e-12), count
}

// evidence lists the buys that speak for a key.
func (f *fitted) evidence(key string) (list []Evidence, left []string) {
	for _, a := range f.facts {
		for _, o := range a.ratios {
			if o.key == key {
				list = append(list, Evidence{a.build.ID, a.build.Name, a.build.day(), math.Exp(o.log), a.weight})
			}
		}
		for _, o := range a.left {
			if o.key == key {
				left = append(left, fmt.Sprintf("%s is left out: %.3g times the forecast looks like a slip of the pen.", named(a.build),
					math.Exp(o.log)))
			}
		}
	}
	slices.SortStableFunc(list, func(x, y Evidence) int { return compareDates(x.On, y.On) })
	return list, left
}

func compareDates(a, b lot.Date) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// named returns a build's name, or its number where it has none.
func named(b Build) string {
	if b.Name != "" {
		return b.Name
	}
	return fmt.Sprintf("Buy %d", b.ID)
}

// spreadCounts is how many buys must count before half of the scatter beyond the forecasts' own range is taken over.
// Starter value, from memory.
const spreadCounts = 10

// beyond returns the log sd of the next build's ratio beyond what its forecast's own range says, believed more as more
// buys count.
func (f *fitted) beyond(key string) float64 {
	var own, count float64
	for _, a := range f.facts {
		for _, o := range a.ratios {
			if o.key == key || key != "" && o.key == "" {
				own += a.weight * o.own
				count += a.weight
			}
		}
	}
	if count == 0 {
		return 0
	}
	more := f.post.Next(f.row(key), 1).Variance() - own/count
	return math.Sqrt(math.Max(0, more) * count / (count + spreadCounts))
}

// pull returns how far the buys carry the ratio of a key from its starter value to what they say, 0..1.
func (f *fitted) pull(key string) float64 {
	x := f.row(key)
	return 1 - f.post.Of(x).Relative/f.prior.Of(x).Relative
}
