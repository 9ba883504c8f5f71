package desk

import (
	"fmt"

	"walkline/valuation/lot"
)

var showDay = func(d lot.Date) string { return string(d) }

// DayShown writes a day for people: as [ShowDays] was told, else as the day is kept, 2026-11-27.
func DayShown(d lot.Date) string { return showDay(d) }

// ShowDays has everything that is said written with days as show writes them. The window says so once, before it draws anything.
func ShowDays(show func(lot.Date) string) { showDay = show }

// words says what an import did.
func (c Counts) words() string {
	return fmt.Sprintf("%d rows read: %d new, %d the same, %d changed, %d refused.", c.Read, c.New, c.Same, c.Changed, c.Refused)
}
