package view

import "walkline/valuation/lot"

var showDay = func(d lot.Date) string { return string(d) }

// Day writes a day for people: as [ShowDays] was told, else as the day is kept, 2026-11-27.
func Day(d lot.Date) string { return showDay(d) }

// ShowDays has every table and line written with days as show writes them. The window says so once, before it draws anything.
func ShowDays(show func(lot.Date) string) { showDay = show }
