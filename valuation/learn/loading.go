package learn

import (
	"maps"
	"math"
	"slices"
)

// The loading's belief before any buy: 0.9 times a beta whose mean is the starter loading. Starter value, from memory.
const (
	mostLoading   = 0.9
	loadingCounts = 9
	loadingSteps  = 180
)

// scored is one build's standardised ratios with what ties each to the lot's common factor.
type scored struct {
	weight float64
	z      []float64
	lean   []lean
}

// lean is what ties one ratio to the common factor: sum of its items' log standard deviations, and of their variances.
type lean struct{ sum, squares float64 }

// at returns the correlation of the ratio with the common factor at a loading.
func (l lean) at(loading float64) float64 {
	shared := loading * l.sum
	return shared / math.Sqrt((1-loading*loading)*l.squares+shared*shared)
}

// scores standardises a fitted family's ratios, build by build.
func (f *fitted) scores() map[int64]scored {
	out := map[int64]scored{}
	sigma := math.Sqrt(f.post.sigma2())
	for _, a := range f.facts {
		s := scored{weight: a.weight}
		for _, o := range a.ratios {
			if o.key == "" {
				continue
			}
			s.z = append(s.z, (o.log-dot(f.row(o.key), f.post.mean))/sigma)
			more := math.Sqrt(math.Max(0, sigma*sigma-o.own))
			s.lean = append(s.lean, lean{o.pull + more, o.squares + more*more})
		}
		out[a.build.ID] = s
	}
	return out
}

// together joins the scores of several families build by build, and leaves out builds with fewer than two.
func together(families ...map[int64]scored) []scored {
	joined := map[int64]scored{}
	for _, f := range families {
		for id, s := range f {
			j := joined[id]
			joined[id] = scored{s.weight, append(j.z, s.z...), append(j.lean, s.lean...)}
		}
	}
	var out []scored
	for _, id := range slices.Sorted(maps.Keys(joined)) {
		if len(joined[id].z) > 1 {
			out = append(out, joined[id])
		}
	}
	return out
}

// loadingBelief is the belief about the loading on even steps from 0 to [mostLoading].
type loadingBelief struct{ at, share []float64 }

// learnLoading returns the belief about the loading after the scores, from the likelihood of a one-factor model: given
// the loading, a build's scores are standard normal and two of them correlate as the product of their leanings.
func learnLoading(starter float64, all []scored) loadingBelief {
	mean := math.Min(math.Max(starter/mostLoading, 0.02), 0.98)
	a, b := loadingCounts*mean, loadingCounts*(1-mean)
	out := loadingBelief{make([]float64, loadingSteps), make([]float64, loadingSteps)}
	most := math.Inf(-1)
	for i := range out.at {
		x := (float64(i) + 0.5) / loadingSteps
		out.at[i] = mostLoading * x
		out.share[i] = (a-1)*math.Log(x) + (b-1)*math.Log(1-x)
		for _, s := range all {
			out.share[i] += s.weight * s.likelihood(out.at[i])
		}
		most = math.Max(most, out.share[i])
	}
	total := 0.0
	for i := range out.share {
		out.share[i] = math.Exp(out.share[i] - most)
		total += out.share[i]
	}
	for i := range out.share {
		out.share[i] /= total
	}
	return out
}

// likelihood returns the log density of the scores at a loading, up to a constant. The covariance is D + l l' with
// D = 1 - l^2; its determinant and inverse are those of Sherman and Morrison.
func (s scored) likelihood(loading float64) float64 {
	var log, fit, cross, lever float64
	for i, z := range s.z {
		l := s.lean[i].at(loading)
		d := math.Max(1-l*l, 1e-9)
		log += math.Log(d)
		fit += z * z / d
		cross += l * z / d
		lever += l * l / d
	}
	return -(log + math.Log1p(lever) + fit - cross*cross/(1+lever)) / 2
}

// mean returns the expected loading.
func (b loadingBelief) mean() float64 { return dot(b.at, b.share) }

// sd returns the standard deviation of the loading.
func (b loadingBelief) sd() float64 {
	m, v := b.mean(), 0.0
	for i, x := range b.at {
		v += b.share[i] * (x - m) * (x - m)
	}
	return math.Sqrt(v)
}

// quantile returns the loading below which the truth lies with chance u.
func (b loadingBelief) quantile(u float64) float64 {
	sum := 0.0
	for i, s := range b.share {
		if sum+s >= u {
			return b.at[i] + mostLoading/loadingSteps*((u-sum)/s-0.5)
		}
		sum += s
	}
	return mostLoading
}

func (b loadingBelief) value() Value {
	return Value{At: b.mean(), Low: b.quantile(0.1), High: b.quantile(0.9)}
}

// loadingCorrelation returns the correlation of two ratios of one build that pooling counts with: that of two quantities
// of several items each. Starter value, from memory: three items a quantity.
func loadingCorrelation(loading float64) float64 {
	const items = 3
	square := loading * loading
	return square * items / (1 + square*(items-1))
}

// sharpness is how much of the starter's variance of the loading the builds have taken away, 0..1.
func (b loadingBelief) sharpness(starter loadingBelief) float64 {
	return math.Max(0, 1-b.sd()*b.sd()/(starter.sd()*starter.sd()))
}
