package prob

import "gonum.org/v1/gonum/stat/distuv"

// TLogPDF returns the natural logarithm of the density of Student's t with df degrees of freedom at x.
func TLogPDF(x, df float64) float64 { return student(df).LogProb(x) }

// TCDF returns P(T <= x) for Student's t with df degrees of freedom.
func TCDF(x, df float64) float64 { return student(df).CDF(x) }

// TQuantile returns the value that Student's t with df degrees of freedom stays below with chance u. Limits: 0 < u < 1.
func TQuantile(u, df float64) float64 { return student(df).Quantile(u) }

func student(df float64) distuv.StudentsT { return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: df} }
