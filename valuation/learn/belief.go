package learn

import (
	"math"

	"walkline/valuation/prob"
)

// belief is a normal-inverse-gamma belief about the coefficients of a linear model: given sigma squared the coefficients
// are normal with the given mean and precision / sigma squared; sigma squared is inverse gamma (a, b).
// Source: O'Hagan and Forster, Bayesian Inference, ch. 11 (from memory).
type belief struct {
	mean      []float64
	precision []float64 // row by row
	a, b      float64
}

// independent returns the belief whose coefficients are independent, with mean zero and the given standard deviations in
// units of sigma, and sigma squared of mean sigma^2 with 2 a degrees of freedom. Limits: a > 1.
func independent(sd []float64, sigma, a float64) belief {
	d := len(sd)
	p := belief{mean: make([]float64, d), precision: make([]float64, d*d), a: a, b: sigma * sigma * (a - 1)}
	for i, s := range sd {
		p.precision[i*d+i] = 1 / (s * s)
	}
	return p
}

// sample is the observations of one build: rows of the design, values, and how much they count. Two values of one build
// have the correlation rho given the coefficients, for a lot that is worse than it looks is so all over.
type sample struct {
	x      [][]float64
	y      []float64
	weight float64   // 0..1, faded with age
	scale  []float64 // standard deviation of each value in units of sigma; nil: 1
	rho    float64
}

// update returns the belief after the samples. A sample's likelihood counts to the power of its weight.
func (p belief) update(samples []sample) belief {
	d := len(p.mean)
	precision := append([]float64(nil), p.precision...)
	right := product(p.precision, p.mean)
	squares := dot(p.mean, right)
	count := 0.0
	for _, s := range samples {
		m := len(s.y)
		rows, y := s.whitened()
		for k := range m {
			for i := range d {
				right[i] += s.weight * rows[k][i] * y[k]
				for j := range d {
					precision[i*d+j] += s.weight * rows[k][i] * rows[k][j]
				}
			}
			squares += s.weight * y[k] * y[k]
		}
		count += s.weight * float64(m)
	}
	mean, _ := solve(precision, right)
	left := squares - dot(mean, product(precision, mean))
	return belief{mean: mean, precision: precision, a: p.a + count/2, b: p.b + math.Max(0, left)/2}
}

// whitened returns the rows and values of independent observations of variance sigma^2 that say the same: scaled, then
// freed of their common correlation by R^(-1/2) = (I - (1-k) J/m) / sqrt(1-rho), k = sqrt((1-rho)/(1-rho+m rho)).
func (s sample) whitened() (rows [][]float64, y []float64) {
	m := len(s.y)
	rows, y = make([][]float64, m), make([]float64, m)
	for k := range m {
		unit := 1.0
		if s.scale != nil {
			unit = s.scale[k]
		}
		y[k] = s.y[k] / unit
		rows[k] = make([]float64, len(s.x[k]))
		for i, x := range s.x[k] {
			rows[k][i] = x / unit
		}
	}
	if s.rho == 0 || m < 2 {
		return rows, y
	}
	keep := math.Sqrt((1 - s.rho) / (1 - s.rho + float64(m)*s.rho))
	root := math.Sqrt(1 - s.rho)
	centre := func(at func(k int) *float64) {
		mean := 0.0
		for k := range m {
			mean += *at(k) / float64(m)
		}
		for k := range m {
			*at(k) = (*at(k) - (1-keep)*mean) / root
		}
	}
	centre(func(k int) *float64 { return &y[k] })
	for i := range s.x[0] {
		centre(func(k int) *float64 { return &rows[k][i] })
	}
	return rows, y
}

// at is what a belief says of one combination x of its coefficients: a Student-t.
type at struct {
	mean     float64
	sd       float64 // scale of the t about the mean, in the unit of y
	relative float64 // variance of the combination in units of sigma^2
	df       float64
}

// of returns what the belief says of the combination x.
func (p belief) of(x []float64) at {
	v, _ := solve(append([]float64(nil), p.precision...), append([]float64(nil), x...))
	relative := dot(x, v)
	return at{dot(x, p.mean), math.Sqrt(p.b / p.a * relative), relative, 2 * p.a}
}

// next returns the Student-t of the next value at x, of the given standard deviation in units of sigma.
func (p belief) next(x []float64, scale float64) at {
	c := p.of(x)
	c.relative += scale * scale
	c.sd = math.Sqrt(p.b / p.a * c.relative)
	return c
}

// sigma2 returns the mean of sigma squared. Limits: a > 1.
func (p belief) sigma2() float64 { return p.b / (p.a - 1) }

// variance returns the variance of the Student-t. Limits: more than two degrees of freedom.
func (a at) variance() float64 { return a.sd * a.sd * a.df / (a.df - 2) }

// quantile returns the value below which the Student-t lies with chance u.
func (a at) quantile(u float64) float64 { return a.mean + a.sd*prob.TQuantile(u, a.df) }

// solve returns the solution of the symmetric system m x = b; m is left alone. A singular m is a bug: precisions are
// sums of squares and a positive diagonal.
func solve(m, b []float64) (x, inverse []float64) {
	s := prob.NewSymmetric(len(b))
	copy(s.Raw(), m)
	x, inverse, err := s.Solve(append([]float64(nil), b...))
	if err != nil {
		panic("learn: " + err.Error())
	}
	return x, inverse
}

func product(m, v []float64) []float64 {
	d := len(v)
	out := make([]float64, d)
	for i := range d {
		out[i] = dot(m[i*d:(i+1)*d], v)
	}
	return out
}

func dot(a, b []float64) float64 {
	s := 0.0
	for i, x := range a {
		s += x * b[i]
	}
	return s
}
