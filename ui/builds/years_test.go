package builds

import (
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/money"
)

func TestTheYearsAddUpAndGoToTheAccountant(t *testing.T) {
	s := opened(t, "Progress")
	price := money.Amount(900000)
	s.edit("x", func(b *build.Build) { b.Outcome, b.Sale.Price, b.Dates.Sold = build.Sold, &price, "2026-12-20" })
	s.Do(desk.CloseBuild())
	tap(t, s.page.Object(), "Year totals")
	s.says(t, "2026", "all, USD", "not entered", "9,000", "Per my hour")
	tap(t, s.page.Object(), "Write all entries for the accountant…")
	if s.Wished[len(s.Wished)-1] != "entries for the accountant" {
		t.Errorf("%q", s.Wished)
	}
}
