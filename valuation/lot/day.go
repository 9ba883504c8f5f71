package lot

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"time"
)

// DayOrder is how a day in figures is read and shown where its own form does not say: 3/4 is March 4 or the 3rd of April.
type DayOrder bool

// The orders.
const (
	DayFirst   DayOrder = false
	MonthFirst DayOrder = true
)

// String names the order in words.
func (o DayOrder) String() string {
	if o == MonthFirst {
		return "month first"
	}
	return "day first"
}

// Show writes a day as the order has it, with the month in letters so that it can't be misread: Nov 27, 2026 or 27 Nov 2026. A date
// that names no day is returned as it stands.
func (o DayOrder) Show(d Date) string {
	t, err := time.Parse(time.DateOnly, string(d))
	switch {
	case err != nil:
		return string(d)
	case o == MonthFirst:
		return t.Format("Jan 2, 2006")
	}
	return t.Format("2 Jan 2006")
}

// The parts of a day as people write it: letters, and figures.
var (
	letters = regexp.MustCompile(`[a-z]+`)
	figures = regexp.MustCompile(`[0-9]+`)
)

// dayWords are days named from today.
var dayWords = map[string]int{"yesterday": -1, "today": 0, "tomorrow": 1}

// ReadDay returns the day that people mean by s: 2026-11-27, 11/27, 27.11.2026, Nov 27, 27 November 2026, today, tomorrow. Figures with
// dots between them begin with the day, four figures in front are the year; where both orders are left the given one is taken and
// guessed is true. Without a year the one is taken that brings the day nearest to today. Two figures are a year of this century. An empty s
// is the unknown day. Errors: s names no day, or one that the calendar doesn't have.
func (o DayOrder) ReadDay(s string, today Date) (d Date, guessed bool, err error) {
	s = strings.ToLower(strings.TrimSpace(s))
	now, err := time.Parse(time.DateOnly, string(today))
	if s == "" || err != nil {
		return "", false, err
	}
	if off, ok := dayWords[s]; ok {
		return Date(now.AddDate(0, 0, off).Format(time.DateOnly)), false, nil
	}
	fault := fmt.Errorf("%q is no day: write 11/27, Nov 27 or 2026-11-27", s)
	words, numbers := letters.FindAllString(s, -1), figures.FindAllString(s, -1)
	year, month, day := "", 0, ""
	switch {
	case len(words) == 1 && (len(numbers) == 1 || len(numbers) == 2):
		month, day = monthOf(words[0]), numbers[0]
		if len(numbers) == 2 {
			year = numbers[1]
		}
	case len(words) > 0 || len(numbers) < 2 || len(numbers) > 3:
		return "", false, fault
	case len(numbers) == 3 && len(numbers[0]) == 4:
		year, day = numbers[0], numbers[2]
		month, _ = strconv.Atoi(numbers[1])
	default:
		month, day, guessed = o.ordered(numbers, strings.Contains(s, "."))
		if len(numbers) == 3 {
			year = numbers[2]
		}
	}
	d, ok := dated(year, month, day, now)
	if !ok {
		return "", false, fault
	}
	return d, guessed, nil
}

// ReadPast is ReadDay for a day that has been: without a year, the latest such day that is not after today. Errors: as ReadDay.
func (o DayOrder) ReadPast(s string, today Date) (d Date, guessed bool, err error) {
	d, guessed, err = o.ReadDay(s, today)
	if _, named := dayWords[strings.ToLower(strings.TrimSpace(s))]; err != nil || named || d <= today {
		return d, guessed, err
	}
	now, err := time.Parse(time.DateOnly, string(today))
	if err != nil {
		return d, guessed, err
	}
	const halfAYear = 182 // a day that is nearest to half a year ago is one of the last year
	return o.ReadDay(s, Date(now.AddDate(0, 0, -halfAYear).Format(time.DateOnly)))
}

// ordered tells month and day of two numbers apart, and whether the order had to be guessed.
func (o DayOrder) ordered(numbers []string, dots bool) (month int, day string, guessed bool) {
	const most = 12
	a, _ := strconv.Atoi(numbers[0])
	b, _ := strconv.Atoi(numbers[1])
	dayFirst := dots || a > most || o == DayFirst && b <= most
	if dayFirst {
		return b, numbers[0], !dots && a <= most && a != b
	}
	return a, numbers[1], b <= most && a != b
}

// monthOf returns the month that some letters begin, 0 for none: three are enough.
func monthOf(word string) int {
	for m := time.January; m <= time.December; m++ {
		if len(word) >= len("jan") && strings.HasPrefix(strings.ToLower(m.String()), word) {
			return int(m)
		}
	}
	return 0
}

// dated puts a day together; no year: the one that brings it nearest to now.
func dated(year string, month int, day string, now time.Time) (Date, bool) {
	n, _ := strconv.Atoi(day)
	if year != "" {
		y, _ := strconv.Atoi(year)
		if len(year) == 2 {
			y += 2000
		}
		return calendar(y, month, n)
	}
	best, found := Date(""), false
	for y := now.Year() - 1; y <= now.Year()+1; y++ {
		if d, ok := calendar(y, month, n); ok && (!found || apart(d, now) < apart(best, now)) {
			best, found = d, true
		}
	}
	return best, found
}

func calendar(year, month, day int) (Date, bool) {
	d, err := ParseDate(fmt.Sprintf("%04d-%02d-%02d", year, month, day))
	return d, err == nil
}

func apart(d Date, now time.Time) int {
	days, _ := Date(now.Format(time.DateOnly)).Days(d)
	return max(days, -days)
}
