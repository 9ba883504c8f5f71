package lot

import (
	"fmt"
	"time"
)

// Date is a calendar day written YYYY-MM-DD; the empty string means not known. It carries no time of day and no zone.
type Date string

// ParseDate returns the day that s names. Errors: s is not YYYY-MM-DD or no such day exists.
func ParseDate(s string) (Date, error) {
	if _, err := time.Parse(time.DateOnly, s); err != nil {
		return "", fmt.Errorf("%q is no day of the calendar (write YYYY-MM-DD)", s)
	}
	return Date(s), nil
}

// Known reports whether d names a day.
func (d Date) Known() bool {
	if d == "" {
		return false
	}
	_, err := ParseDate(string(d))
	return err == nil
}

// Days returns the days from d to e, negative when e is earlier, and whether both are known.
func (d Date) Days(e Date) (int, bool) {
	a, errA := time.Parse(time.DateOnly, string(d))
	b, errB := time.Parse(time.DateOnly, string(e))
	if errA != nil || errB != nil {
		return 0, false
	}
	return int(b.Sub(a).Hours() / 24), true
}

// Plus returns the day so many days after d, "" when d is not known.
func (d Date) Plus(days int) Date {
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return ""
	}
	return Date(t.AddDate(0, 0, days).Format(time.DateOnly))
}

// Year returns the year of d, 0 when d is not known.
func (d Date) Year() int {
	t, err := time.Parse(time.DateOnly, string(d))
	if err != nil {
		return 0
	}
	return t.Year()
}
