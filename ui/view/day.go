package view

import (
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// Day writes a day for people, as [desk.DayShown] does.
func Day(d lot.Date) string { return desk.DayShown(d) }
