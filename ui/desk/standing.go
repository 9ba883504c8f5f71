package desk

import (
	"context"

	"walkline/valuation/lot"
)

// Standing is what is known of the user as a seller.
type Standing struct {
	Stated *int // vehicles sold in the last twelve months, as the user says; nil: not said
	Known  int  // of the builds kept here, those sold in the last twelve months
}

// soldSetting is the setting that keeps how many vehicles the user says to have sold.
const soldSetting = "sold in the last twelve months"

// year is the days of twelve months.
const year = 365

// standing reads what is known of the user as a seller into the open lot.
func (d *Desk) standing(ctx context.Context, s State) State {
	if s.Open == nil {
		return s
	}
	var st Standing
	if _, err := d.Book.Setting(ctx, soldSetting, &st.Stated); err != nil {
		return s.troubled("read how many vehicles were sold", err)
	}
	builds, err := d.Book.Builds(ctx)
	if err != nil {
		return s.troubled("read the builds", err)
	}
	d.learnsHammer(builds)
	if s.Open.Case.Unlooked() {
		if err := d.learnsPatterns(ctx); err != nil {
			return s.troubled("read the surveys", err)
		}
	}
	for _, b := range builds {
		if soldWithin(b.Build.Dates.Sold, d.Today()) {
			st.Known++
		}
	}
	o := *s.Open
	o.Standing = st
	return s.with(o)
}

func soldWithin(sold, today lot.Date) bool {
	days, known := sold.Days(today)
	return known && days >= 0 && days < year
}

// SetSold keeps how many vehicles the user says to have sold in the last twelve months; nil takes it back.
func SetSold(n *int) Action {
	return keeps("vehicles sold in twelve months", func(ctx context.Context, d *Desk, s State, a Action) State {
		if s.Open == nil {
			return s
		}
		return d.keepSetting(ctx, s, a, soldSetting, s.Open.Standing.Stated, n)
	})
}
