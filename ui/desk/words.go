package desk

import (
	"fmt"
	"strconv"
	"strings"

	"walkline/store/book"
	"walkline/valuation/lot"
)

var showDay = func(d lot.Date) string { return string(d) }

// DayShown writes a day for people: as [ShowDays] was told, else as the day is kept, 2026-11-27.
func DayShown(d lot.Date) string { return showDay(d) }

// ShowDays has everything that is said written with days as show writes them. The window says so once, before it draws anything.
func ShowDays(show func(lot.Date) string) { showDay = show }

// words says what an import did.
func (c Counts) words() string {
	return fmt.Sprintf("%s rows read: %s new, %s the same, %s changed, %s refused.", Grouped(c.Read), Grouped(c.New), Grouped(c.Same),
		Grouped(c.Changed), Grouped(c.Refused))
}

// Grouped writes a count with a comma between thousands.
func Grouped(n int) string {
	digits := strconv.Itoa(n)
	for at := len(digits) - 3; at > 0; at -= 3 {
		digits = digits[:at] + "," + digits[at:]
	}
	return digits
}

// mostListed is how many lots of one day are named before the rest is counted; days beyond mostDays are counted as one.
const mostListed, mostDays = 8, 3

// ByDay names lots by their sale day and number, those of one day beside each other: "Dec 2: 107, 108, and 3 more". Empty for none.
func ByDay(lots []book.Entry) string {
	var days []string
	for n := 0; len(lots) > 0; lots = lots[n:] {
		if len(days) == mostDays {
			days = append(days, fmt.Sprintf("%d of days after", len(lots)))
			break
		}
		n = 1
		for n < len(lots) && lots[n].SaleDate == lots[0].SaleDate {
			n++
		}
		var numbers []string
		for _, e := range lots[:min(n, mostListed)] {
			numbers = append(numbers, e.Number)
		}
		if n > mostListed {
			numbers = append(numbers, fmt.Sprintf("and %d more", n-mostListed))
		}
		days = append(days, DayShown(lots[0].SaleDate)+": "+strings.Join(numbers, ", "))
	}
	return strings.Join(days, "; ")
}
