package form

import (
	"slices"

	"fyne.io/fyne/v2/container"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Stopping adds the fields of the option to stop and of the plans that are priced.
func Stopping(f *Form) {
	f.Tick("Stop after the strip-down", "allowed", func(c *valuation.Case) *bool { return &c.WaysOut.Stop })
	f.Three("Hours to strip it down", hours, func(c *valuation.Case) any { return &c.WaysOut.Strip.Hours })
	f.Choice("Strip-down is paid as", lot.Trades, func(c *valuation.Case) *string { return trade(&c.WaysOut.Strip.Trade) })
	f.Three("Days to strip it down", Days, func(c *valuation.Case) any { return &c.WaysOut.Strip.Days })
	plans(f)
}

// Standing adds the fields of what the lot brings as it stands. An edit makes a starter value the user's own.
func Standing(f *Form) {
	way := func(c *valuation.Case) *valuation.Standing { return &c.WaysOut.AsItStands }
	own := func(c *valuation.Case) { way(c).Starter = false }
	f.owned("As it stands it brings", Amounts, own, func(c *valuation.Case) any { return &way(c).Money }).SetBlank()
	f.owned("Days to sell it as it stands", Days, own, func(c *valuation.Case) any { return &way(c).Days })
}

// Parting adds the fields of what the lot brings in parts. An edit makes a starter value the user's own.
func Parting(f *Form) {
	way := func(c *valuation.Case) *valuation.Parting { return &c.WaysOut.ForParts }
	own := func(c *valuation.Case) { way(c).Starter = false }
	f.owned("Its parts bring", Amounts, own, func(c *valuation.Case) any { return &way(c).Money }).SetBlank()
	f.owned("Hours to part it out", hours, own, func(c *valuation.Case) any { return &way(c).Hours })
	f.Choice("Parting out is paid as", lot.Trades, func(c *valuation.Case) *string { return trade(&way(c).Trade) })
	f.owned("Days to sell the parts", Days, own, func(c *valuation.Case) any { return &way(c).Days })
}

// owned is [Of.Three] for a judgement of which it is kept whose it is.
func (f *Of[T]) owned(label string, spec widgets.Spec, own func(*T), at func(*T) any) *widgets.ThreeEntry {
	return f.three(label, spec, func(c T) prob.Three { return judged(at(&c)) }, func(c *T, t prob.Three) {
		judge(at(c), t)
		own(c)
	})
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
