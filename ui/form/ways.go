package form

import (
	"slices"

	"fyne.io/fyne/v2/container"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Stopping adds the fields of the option to stop and of the plans that are priced.
func Stopping(f *Form) {
	f.Tick("Stop after the strip-down", "allowed", func(c *valuation.Case) *bool { return &c.WaysOut.Stop })
	f.Three("Hours to strip it down", hours, func(c *valuation.Case) any { return &c.WaysOut.Strip.Hours })
	f.Choice("Strip-down is paid as", lot.Trades, func(c *valuation.Case) *string { return trade(&c.WaysOut.Strip.Trade) })
	f.Three("Days to strip it down", Days, func(c *valuation.Case) any { return &c.WaysOut.Strip.Days })
	plans(f)
}

// Standing adds the fields of what the lot brings as it stands.
func Standing(f *Form) {
	f.Three("As it stands it brings", Amounts, func(c *valuation.Case) any { return &c.WaysOut.AsItStands.Money })
	f.Three("Days to sell it as it stands", Days, func(c *valuation.Case) any { return &c.WaysOut.AsItStands.Days })
}

// Parting adds the fields of what the lot brings in parts.
func Parting(f *Form) {
	f.Three("Its parts bring", Amounts, func(c *valuation.Case) any { return &c.WaysOut.ForParts.Money })
	f.Three("Hours to part it out", hours, func(c *valuation.Case) any { return &c.WaysOut.ForParts.Hours })
	f.Choice("Parting out is paid as", lot.Trades, func(c *valuation.Case) *string { return trade(&c.WaysOut.ForParts.Trade) })
	f.Three("Days to sell the parts", Days, func(c *valuation.Case) any { return &c.WaysOut.ForParts.Days })
}

// trade returns where the trade of some hours lies, body where none is named.
func trade(at *string) *string {
	if *at == "" {
		*at = lot.Trades[0]
	}
	return at
}

// plans adds a tick for each plan: those that are priced. Ticks that say what would be priced anyway are not kept.
func plans(f *Form) {
	row := container.NewGridWithColumns(len(valuation.Plans))
	ticks := make([]*widgets.Check, len(valuation.Plans))
	for i, plan := range valuation.Plans {
		ticks[i] = widgets.NewCheck(Sentence(view.Words(plan)), func(bool) {
			f.Change("Plans allowed", func(c *valuation.Case) {
				c.WaysOut.Plans = nil
				if now := chosen(valuation.Plans, ticks); !slices.Equal(now, c.Priced()) {
					c.WaysOut.Plans = now
				}
			})
		})
		row.Add(ticks[i])
	}
	f.Row("Plans allowed", row, func(c valuation.Case) {
		for i, t := range ticks {
			t.SetChecked(slices.Contains(c.Priced(), valuation.Plans[i]))
		}
	})
}
