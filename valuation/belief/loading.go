package belief

import "math"

// The loading's belief before any buy: 0.9 times a beta whose mean is the starter loading. Starter value, from memory.
const (
	MostLoading   = 0.9 // no loading is greater
	loadingCounts = 9
	loadingSteps  = 180
)

// Lean is what ties one quantity to the common factor: the sum of its items' standard deviations, and of their variances.
type Lean struct{ Sum, Squares float64 }

// At returns the correlation of the quantity with the common factor at a loading.
func (l Lean) At(loading float64) float64 {
	shared := loading * l.Sum
	return shared / math.Sqrt((1-loading*loading)*l.Squares+shared*shared)
}

// Scores are standard normal values that lean on one common factor, each in its own way.
type Scores struct {
	Weight float64 // 0..1
	Z      []float64
	Lean   []Lean
}

// Loading is the belief about the loading on even steps from 0 to [MostLoading].
type Loading struct{ at, share []float64 }

// NewLoading returns the belief about the loading after the scores, from the likelihood of a one-factor model: given
// the loading, scores are standard normal and two of them correlate as the product of their leanings.
func NewLoading(starter float64, all []Scores) Loading {
	mean := math.Min(math.Max(starter/MostLoading, 0.02), 0.98)
	a, b := loadingCounts*mean, loadingCounts*(1-mean)
	out := Loading{make([]float64, loadingSteps), make([]float64, loadingSteps)}
	most := math.Inf(-1)
	for i := range out.at {
		x := (float64(i) + 0.5) / loadingSteps
		out.at[i] = MostLoading * x
		out.share[i] = (a-1)*math.Log(x) + (b-1)*math.Log(1-x)
		for _, s := range all {
			out.share[i] += s.Weight * s.likelihood(out.at[i])
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
func (s Scores) likelihood(loading float64) float64 {
	var log, fit, cross, lever float64
	for i, z := range s.Z {
		l := s.Lean[i].At(loading)
		d := math.Max(1-l*l, 1e-9)
		log += math.Log(d)
		fit += z * z / d
		cross += l * z / d
		lever += l * l / d
	}
	return -(log + math.Log1p(lever) + fit - cross*cross/(1+lever)) / 2
}

// Mean returns the expected loading.
func (b Loading) Mean() float64 { return Dot(b.at, b.share) }

// SD returns the standard deviation of the loading.
func (b Loading) SD() float64 {
	m, v := b.Mean(), 0.0
	for i, x := range b.at {
		v += b.share[i] * (x - m) * (x - m)
	}
	return math.Sqrt(v)
}

// Quantile returns the loading below which the truth lies with chance u.
func (b Loading) Quantile(u float64) float64 {
	sum := 0.0
	for i, s := range b.share {
		if sum+s >= u {
			return b.at[i] + MostLoading/loadingSteps*((u-sum)/s-0.5)
		}
		sum += s
	}
	return MostLoading
}

// Sharpness is how much of the starter's variance of the loading the builds have taken away, 0..1.
func (b Loading) Sharpness(starter Loading) float64 {
	return math.Max(0, 1-b.SD()*b.SD()/(starter.SD()*starter.SD()))
}
