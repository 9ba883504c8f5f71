package resale

import (
	"math"
	"slices"
	"strings"
	"time"

	"walkline/valuation/hedonic"
	"walkline/valuation/lot"
)

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
	if _, ok := hedonic.Number(s.More[hedonic.MonthsColumn]); !ok {
		return false
	}
	known := 0
	for _, r := range rows {
		if _, ok := hedonic.Number(r.More[hedonic.MonthsColumn]); ok {
			known++
		}
	}
	return float64(known) >= nearlyAll*float64(len(rows))
}

// nearlyAll is the share of rows that must state their months.
const nearlyAll = 0.9

func decimalYear(d lot.Date) (float64, bool) {
	if d == "" {
		return 0, false
	}
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return 0, false
	}
	return float64(t.Year()) + (float64(t.YearDay())-1)/365.25, true
}

func (c calendar) row(r Row) hedonic.Traits {
	day, ok := decimalYear(r.Date)
	if !ok {
		day = c.today
	}
	t := hedonic.Traits{
		Year: r.ModelYear, Age: c.age(day, r.ModelYear, r.More), Trim: hedonic.Key(r.Trim), Model: hedonic.Key(r.Make + " " + r.Model),
		Brand: brandOf(r.Title),
		Asked: !strings.EqualFold(strings.TrimSpace(r.Kind), "sold"), Back: max(0, c.sale-day), More: r.More,
	}
	setMiles(&t, r.Mileage, r.Unit)
	if r.Condition != nil {
		t.Condition, t.CondKnown = *r.Condition, true
	}
	if r.DistanceMi != nil && !math.IsNaN(*r.DistanceMi) && !math.IsInf(*r.DistanceMi, 0) {
		t.Distance = *r.DistanceMi
	}
	return t
}

func (c calendar) subject(s Subject) hedonic.Traits {
	brand := s.Brand
	if hedonic.Key(brand) == "" {
		brand = "rebuilt"
	}
	t := hedonic.Traits{
		Year: s.ModelYear, Age: c.age(c.sale, s.ModelYear, s.More), Trim: hedonic.Key(s.Trim), Model: hedonic.Key(s.Make + " " + s.Model),
		Brand:     brandOf(brand),
		Condition: usualCondition, CondKnown: true, More: s.More,
	}
	setMiles(&t, s.Mileage, s.Unit)
	if i := slices.Index(Upkeeps, s.Upkeep); i >= 0 {
		t.Condition = float64(i + 1)
	} else if s.Condition != nil {
		t.Condition = *s.Condition
	}
	return t
}

// Upkeeps are the words for how a vehicle was kept, from 1, rough, to 5, as new. Common practice, no source.
var Upkeeps = []string{"rough", "worn", "usual", "good", "as_new"}

// UpkeepOf returns the word nearest to a place on that scale.
func UpkeepOf(x float64) string { return Upkeeps[int(min(max(math.Round(x), 1), 5))-1] }

// usualCondition is the middle of that scale.
const usualCondition = 3

// What no vehicle exceeds: beyond lie slips of the pen.
const (
	mostMiles = 3_000_000
	mostAge   = 150
	firstYear = 1880
	lastYear  = 2200
)

func setMiles(t *hedonic.Traits, m *float64, unit string) {
	if m == nil || !(*m >= 0 && *m <= mostMiles) {
		return
	}
	t.Miles, t.MilesKnown = *m, true
	if hedonic.Key(unit) == "km" {
		t.Miles /= lot.KilometresPerMile
	}
}

func (c calendar) age(day float64, modelYear int, more map[string]string) float64 {
	if m, ok := hedonic.Number(more[hedonic.MonthsColumn]); c.month && ok && m >= 0 && m <= 12*mostAge {
		return m / 12
	}
	return math.Min(mostAge, math.Max(-mostAge, day-float64(modelYear)))
}

// brandOf returns the title brand in small letters, empty for a clear title and for one that isn't stated.
func brandOf(title string) string {
	switch k := hedonic.Key(title); k {
	case "clear", "clean", "none":
		return ""
	default:
		return k
	}
}
