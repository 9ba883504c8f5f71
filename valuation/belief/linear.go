package belief

import (
	"math"

	"walkline/valuation/prob"
)

// Linear is a normal-inverse-gamma belief about the coefficients of a linear model: given sigma squared the coefficients
// are normal with the given mean and precision / sigma squared; sigma squared is inverse gamma (A, B). Source: [1].
type Linear struct {
	Mean      []float64
	Precision []float64 // row by row
	A, B      float64
}

// Independent returns the belief whose coefficients are independent, with mean zero and the given standard deviations in
// units of sigma, and sigma squared of mean sigma^2 with 2 a degrees of freedom. Limits: a > 1.
func Independent(sd []float64, sigma, a float64) Linear {
	d := len(sd)
	p := Linear{Mean: make([]float64, d), Precision: make([]float64, d*d), A: a, B: sigma * sigma * (a - 1)}
	for i, s := range sd {
		p.Precision[i*d+i] = 1 / (s * s)
	}
	return p
}

// Sample is observations that belong together: rows of the design, values, and how much they count. Two values of one
// sample have the correlation Rho given the coefficients.
type Sample struct {
	X      [][]float64
	Y      []float64
	Weight float64   // 0..1
	Scale  []float64 // standard deviation of each value in units of sigma; nil: 1
	Rho    float64   // 0 to below 1
}

// Update returns the belief after the samples.
func (p Linear) Update(samples []Sample) Linear {
	d := len(p.Mean)
	precision := append([]float64(nil), p.Precision...)
	right := product(p.Precision, p.Mean)
	squares := Dot(p.Mean, right)
	count := 0.0
	for _, s := range samples {
		rows, y := s.whitened()
		for k, row := range rows {
			for i := range d {
				right[i] += s.Weight * row[i] * y[k]
				for j := range d {
					precision[i*d+j] += s.Weight * row[i] * row[j]
				}
			}
			squares += s.Weight * y[k] * y[k]
		}
		count += s.Weight * float64(len(y))
	}
	mean, _ := solve(precision, right)
	left := squares - Dot(mean, product(precision, mean))
	return Linear{Mean: mean, Precision: precision, A: p.A + count/2, B: p.B + math.Max(0, left)/2}
}

// whitened returns the rows and values of independent observations of variance sigma^2 that say the same: scaled, then
// freed of their common correlation by R^(-1/2) = (I - (1-k) J/m) / sqrt(1-rho), k = sqrt((1-rho)/(1-rho+m rho)).
func (s Sample) whitened() (rows [][]float64, y []float64) {
	m := len(s.Y)
	rows, y = make([][]float64, m), make([]float64, m)
	for k := range m {
		unit := 1.0
		if s.Scale != nil {
			unit = s.Scale[k]
		}
		y[k] = s.Y[k] / unit
		rows[k] = make([]float64, len(s.X[k]))
		for i, x := range s.X[k] {
			rows[k][i] = x / unit
		}
	}
	if s.Rho == 0 || m < 2 {
		return rows, y
	}
	keep := math.Sqrt((1 - s.Rho) / (1 - s.Rho + float64(m)*s.Rho))
	root := math.Sqrt(1 - s.Rho)
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
	for i := range s.X[0] {
		centre(func(k int) *float64 { return &rows[k][i] })
	}
	return rows, y
}

// T is what a belief says of one combination of its coefficients, or of a value to come: a Student-t.
type T struct {
	Mean     float64
	Scale    float64 // about the mean, in the unit of the values
	Relative float64 // variance in units of sigma^2
	DF       float64
}

// Of returns what the belief says of the combination x.
func (p Linear) Of(x []float64) T {
	v, _ := solve(p.Precision, x)
	relative := Dot(x, v)
	return T{Dot(x, p.Mean), math.Sqrt(p.B / p.A * relative), relative, 2 * p.A}
}

// Next returns what the belief says of the next value at x, of the given standard deviation in units of sigma.
func (p Linear) Next(x []float64, scale float64) T {
	t := p.Of(x)
	t.Relative += scale * scale
	t.Scale = math.Sqrt(p.B / p.A * t.Relative)
	return t
}

// Sigma2 returns the mean of sigma squared. Limits: A > 1.
func (p Linear) Sigma2() float64 { return p.B / (p.A - 1) }

// Variance returns the variance. Limits: more than two degrees of freedom.
func (t T) Variance() float64 { return t.Scale * t.Scale * t.DF / (t.DF - 2) }

// Quantile returns the value below which it lies with chance u.
func (t T) Quantile(u float64) float64 { return t.Mean + t.Scale*prob.TQuantile(u, t.DF) }

// solve returns the solution of the symmetric system m x = b; m is left alone. A singular m is a bug: precisions are
// sums of squares and a positive diagonal.
func solve(m, b []float64) (x, inverse []float64) {
	s := prob.NewSymmetric(len(b))
	copy(s.Raw(), m)
	x, inverse, err := s.Solve(append([]float64(nil), b...))
	if err != nil {
		panic("belief: " + err.Error())
	}
	return x, inverse
}

func product(m, v []float64) []float64 {
	d := len(v)
	out := make([]float64, d)
	for i := range d {
		out[i] = Dot(m[i*d:(i+1)*d], v)
	}
	return out
}

// Dot returns the sum of the products. Shape: one length.
func Dot(a, b []float64) float64 {
	s := 0.0
	for i, x := range a {
		s += x * b[i]
	}
	return s
}
