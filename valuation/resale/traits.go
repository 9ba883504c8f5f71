package resale

import (
	"math"
	"strconv"
	"strings"
	"time"

	"walkline/valuation/lot"
)

// traits is what a row and a subject have in common, in the units of the fit.
type traits struct {
	year       int     // model year
	age        float64 // years from the start of the model year to the day of the sale
	miles      float64
	milesKnown bool
	trim       string
	model      string // make and model
	brand      string // empty: clear
	asked      bool
	back       float64 // years from the row's day to the subject's sale, at least 0
	condition  float64
	condKnown  bool
	distance   float64
	more       map[string]string
}

// calendar places the days of a table.
type calendar struct {
	today float64 // decimal year of the valuation; when no day is known, the newest model year and a half
	sale  float64 // decimal year of the subject's sale
	month bool    // ages are stated to the month
}

func newCalendar(rows []Row, s Subject, today lot.Date) calendar {
	var c calendar
	if y, ok := decimalYear(today); ok {
		c.today = y
	} else {
		for _, r := range rows {
			if y, ok := decimalYear(r.Date); ok {
				c.today = max(c.today, y)
			}
			c.today = max(c.today, float64(r.ModelYear)+0.5)
		}
		c.today = max(c.today, float64(s.ModelYear)+0.5)
	}
	c.sale = c.today
	if y, ok := decimalYear(s.SaleMonth); ok && y > c.today {
		c.sale = y
	}
	c.month = statesMonths(rows, s)
	return c
}

// statesMonths reports whether the subject and nearly all rows state their age to the month: mixing both ways of counting
// would shift the rows by half a year against one another.
func statesMonths(rows []Row, s Subject) bool {
	if _, ok := number(s.More[monthsColumn]); !ok {
		return false
	}
	known := 0
	for _, r := range rows {
		if _, ok := number(r.More[monthsColumn]); ok {
			known++
		}
	}
	return float64(known) >= nearlyAll*float64(len(rows))
}

// nearlyAll is the share of rows that must state their months.
const nearlyAll = 0.9

func decimalYear(d lot.Date) (float64, bool) {
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return 0, false
	}
	return float64(t.Year()) + (float64(t.YearDay())-1)/365.25, true
}

func (c calendar) row(r Row) traits {
	day, ok := decimalYear(r.Date)
	if !ok {
		day = c.today
	}
	t := traits{
		year: r.ModelYear, age: c.age(day, r.ModelYear, r.More), trim: key(r.Trim), model: key(r.Make + " " + r.Model), brand: brandOf(r.Title),
		asked: !strings.EqualFold(strings.TrimSpace(r.Kind), "sold"), back: max(0, c.sale-day), more: r.More,
	}
	t.setMiles(r.Mileage, r.Unit)
	if r.Condition != nil {
		t.condition, t.condKnown = *r.Condition, true
	}
	if r.DistanceMi != nil && finite(*r.DistanceMi) {
		t.distance = *r.DistanceMi
	}
	return t
}

func (c calendar) subject(s Subject) traits {
	brand := s.Brand
	if key(brand) == "" {
		brand = "rebuilt"
	}
	t := traits{
		year: s.ModelYear, age: c.age(c.sale, s.ModelYear, s.More), trim: key(s.Trim), model: key(s.Make + " " + s.Model), brand: brandOf(brand),
		condition: usualCondition, condKnown: true, more: s.More,
	}
	t.setMiles(s.Mileage, s.Unit)
	if s.Condition != nil {
		t.condition = *s.Condition
	}
	return t
}

// usualCondition is the middle of the scale from 1, poor, to 5, as new.
const usualCondition = 3

// What no vehicle exceeds: beyond lie slips of the pen.
const (
	mostMiles = 3_000_000
	mostAge   = 150
	firstYear = 1880
	lastYear  = 2200
)

func (t *traits) setMiles(m *float64, unit string) {
	if m == nil || !(*m >= 0 && *m <= mostMiles) {
		return
	}
	t.miles, t.milesKnown = *m, true
	if key(unit) == "km" {
		t.miles /= lot.KilometresPerMile
	}
}

// monthsColumn is the column that states the age to the month.
const monthsColumn = "age_months"

func (c calendar) age(day float64, modelYear int, more map[string]string) float64 {
	if m, ok := number(more[monthsColumn]); c.month && ok && m >= 0 && m <= 12*mostAge {
		return m / 12
	}
	return math.Min(mostAge, math.Max(-mostAge, day-float64(modelYear)))
}

// brandOf returns the title brand in small letters, empty for a clear title and for one that isn't stated.
func brandOf(title string) string {
	switch k := key(title); k {
	case "clear", "clean", "none":
		return ""
	default:
		return k
	}
}

// key returns s in small letters with single spaces.
func key(s string) string {
	if isKey(s) {
		return s
	}
	return strings.Join(strings.Fields(strings.ToLower(s)), " ")
}

// isKey reports whether s is a key already, as most cells are: plain letters, no space at an end or doubled.
func isKey(s string) bool {
	space := true
	for i := range len(s) {
		c := s[i]
		if c == ' ' && space || c < ' ' || c >= 0x7f || 'A' <= c && c <= 'Z' {
			return false
		}
		space = c == ' '
	}
	return s == "" || !space
}

func number(s string) (float64, bool) {
	x, err := strconv.ParseFloat(strings.TrimSpace(s), 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, false
	}
	return x, true
}

// mileageForm is a curve of the price over the mileage; each is scaled so that its slope at 50,000 miles is 1 per
// 10,000 miles.
type mileageForm string

var mileageForms = []mileageForm{"linear", "root", "log"}

func (f mileageForm) effect() string { return "mileage/" + string(f) }

// The mileages in miles that set the forms' scale: slopes are quoted at the pivot; the logarithm starts bending at its offset.
const (
	pivot     = 50_000
	perUnit   = 10_000
	logOffset = 15_000
)

func (f mileageForm) at(miles float64) float64 {
	switch f {
	case "root":
		return 2 * math.Sqrt(pivot*miles) / perUnit
	case "log":
		return math.Log((miles+logOffset)/logOffset) * (pivot + logOffset) / perUnit
	}
	return miles / perUnit
}
