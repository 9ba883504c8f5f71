package prob

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
	"gonum.org/v1/gonum/mat"
)

// Regression is a least-squares fit of y on the columns of x.
type Regression struct {
	Coef       []float64 // one per column of x
	SE         []float64 // standard error of each coefficient; NaN when there are as many columns as rows
	ResidualSD float64   // sqrt(residual sum of squares / (rows - columns)); NaN likewise
	R2         float64   // share of the variance about the mean that the fit explains
}

var (
	errShape    = errors.New("the rows of x and y don't match, or there are fewer rows than columns")
	errSingular = errors.New("the columns depend on one another: they can't be told apart")
)

// LeastSquares returns the coefficients that minimise the sum of squares of y - x b, found by Householder QR: normal
// equations would lose half of the digits.
//
// Shape: x is rows by columns, the column of ones included if wanted; y has one value per row.
// Errors: shapes that don't match, fewer rows than columns, columns that depend on one another.
func LeastSquares(x [][]float64, y []float64) (Regression, error) {
	n := len(x)
	if n == 0 || n != len(y) || len(x[0]) == 0 || n < len(x[0]) {
		return Regression{}, errShape
	}
	p := len(x[0])
	m := mat.NewDense(n, p, nil)
	for i, row := range x {
		if len(row) != p {
			return Regression{}, errShape
		}
		m.SetRow(i, row)
	}
	scale := scaleColumns(m)
	var qr mat.QR
	qr.Factorize(m)
	var r mat.Dense
	qr.RTo(&r)
	for j := range p {
		if math.Abs(r.At(j, j)) < dependent {
			return Regression{}, errSingular
		}
	}
	var b mat.VecDense
	if err := qr.SolveVecTo(&b, false, mat.NewVecDense(n, append([]float64(nil), y...))); err != nil {
		return Regression{}, errSingular
	}
	return describe(m, y, &b, &r, scale), nil
}

// dependent is the length of what remains of a column of length 1, once the columns before it are taken out, at which
// nothing but rounding is left.
const dependent = 1e-13

// scaleColumns divides each column by its length, so that the condition of the fit doesn't hang on units of measure.
func scaleColumns(m *mat.Dense) []float64 {
	_, p := m.Dims()
	scale := make([]float64, p)
	for j := range scale {
		col := m.ColView(j)
		if scale[j] = mat.Norm(col, 2); scale[j] == 0 {
			scale[j] = 1
		}
		col.(*mat.VecDense).ScaleVec(1/scale[j], col)
	}
	return scale
}

func describe(m *mat.Dense, y []float64, b *mat.VecDense, r *mat.Dense, scale []float64) Regression {
	n, p := m.Dims()
	fit := Regression{Coef: make([]float64, p), SE: make([]float64, p)}
	var fitted mat.VecDense
	fitted.MulVec(m, b)
	mean := 0.0
	for _, v := range y {
		mean += v / float64(n)
	}
	rss, tss := 0.0, 0.0
	for i, v := range y {
		rss += (v - fitted.AtVec(i)) * (v - fitted.AtVec(i))
		tss += (v - mean) * (v - mean)
	}
	fit.R2 = 1 - rss/tss
	fit.ResidualSD = math.Sqrt(rss / float64(n-p))
	if n == p {
		fit.ResidualSD = math.NaN()
	}
	for j := range p {
		fit.Coef[j] = b.AtVec(j) / scale[j]
		fit.SE[j] = fit.ResidualSD * rowLength(r, p, j) / scale[j]
	}
	return fit
}

// rowLength returns the length of row j of the inverse of the upper triangle of r: the square root of element (j, j) of
// the inverse of x'x.
func rowLength(r *mat.Dense, p, j int) float64 {
	e := make([]float64, p) // solves R' v = e_j by substitution: v is row j of the inverse
	sum := 0.0
	for k := j; k < p; k++ {
		v := 0.0
		if k == j {
			v = 1
		}
		for i := j; i < k; i++ {
			v -= r.At(i, k) * e[i]
		}
		e[k] = v / r.At(k, k)
		sum += e[k] * e[k]
	}
	return math.Sqrt(sum)
}

// Symmetric is a symmetric matrix under construction: only its upper triangle (i <= j) is read.
type Symmetric struct{ m blas64.Symmetric }

// NewSymmetric returns the n by n zero matrix.
func NewSymmetric(n int) Symmetric {
	return Symmetric{blas64.Symmetric{Uplo: blas.Upper, N: n, Stride: n, Data: make([]float64, n*n)}}
}

// Raw returns the elements row by row; a change to the upper triangle changes the matrix.
func (s Symmetric) Raw() []float64 { return s.m.Data }

// Solve returns the solution of s x = b and the inverse of s, row by row, by Cholesky's factors; both of s and b are used
// up. Errors: s is not positive definite.
func (s Symmetric) Solve(b []float64) (x, inverse []float64, err error) {
	n := s.m.N
	factor, ok := lapack64.Potrf(s.m)
	if !ok {
		return nil, nil, errSingular
	}
	v := blas64.Vector{N: n, Inc: 1, Data: b}
	blas64.Trsv(blas.Trans, factor, v)
	blas64.Trsv(blas.NoTrans, factor, v)
	if _, ok := lapack64.Potri(factor); !ok {
		return nil, nil, errSingular
	}
	for i := range n {
		for j := range i {
			s.m.Data[i*n+j] = s.m.Data[j*n+i]
		}
	}
	return b, s.m.Data, nil
}
