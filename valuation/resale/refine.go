package resale

import (
	"walkline/valuation/hedonic"
	"walkline/valuation/money"
)

// Sample is a table of one model's prices around one subject, from which a prior is refined.
type Sample struct {
	Rows    []Row
	Subject Subject
}

// Refine returns m after one step of empirical Bayes over samples, and the samples' summed leave-one-out log score under m:
// [hedonic.Refine] on rows as this package reads them.
func Refine(samples []Sample, m Market, cur money.Currency) (Market, float64) {
	read := make([]hedonic.Sample, len(samples))
	for i, s := range samples {
		cal := newCalendar(s.Rows, s.Subject, "")
		rows, used := usedFirst(screen(s.Rows, cal, cur))
		read[i] = hedonic.Sample{Sales: sales(rows[:used]), Subject: cal.subject(s.Subject)}
	}
	return hedonic.Refine(read, m)
}

// Slopes returns the plain least-squares slopes of the log price over age (per year) and mileage (per 10,000 miles) of
// rows, as a check on the fitted prior. Errors: too few rows, or rows that don't vary.
func Slopes(rows []Row, cur money.Currency) (age, mileage float64, err error) {
	read, used := usedFirst(screen(rows, newCalendar(rows, Subject{}, ""), cur))
	return hedonic.Slopes(sales(read[:used]))
}
