package form

import (
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// LineOf is how a form of a T reaches the repair line in it.
type LineOf[T any] struct {
	Now    func(T) repair.Line
	At     func(*T) *repair.Line // where an edit finds it
	Quoted func(T) string        // the day that a price typed now is a quote of; nil: a price is no quote
}

// narrow fits a three-point field into the side of a table.
func narrow(e *widgets.ThreeEntry) {
	e.SetFigures(5)
	e.SetRoom(0)
}

// hours is the kind of a field for hours.
var hours = widgets.Spec{Unit: "h", Least: widgets.Bound(0)}

// Words adds what the work is, where, and how likely it is needed.
func (l LineOf[T]) Words(f *Of[T]) {
	f.Text("Work", func(c T) string { return l.Now(c).Job }, func(c *T, s string) { l.At(c).Job = s })
	f.Choice("Area", lot.Areas, func(c T) string { return l.Now(c).Area }, func(c *T, s string) { l.At(c).Area = s })
	f.Number("Chance needed", Percents, func(c T) widgets.Number { return widgets.Known(repair.Or(l.Now(c).Chance, 1)) },
		func(c *T, n widgets.Number) { x := n.Float(); l.At(c).Chance = &x })
}

// Work adds hours by trade, materials and work bought in.
func (l LineOf[T]) Work(f *Of[T]) {
	Hours(f, func(c T) map[string]prob.Three { return l.Now(c).Hours }, func(c *T) *map[string]prob.Three { return &l.At(c).Hours })
	narrow(f.Three("Materials", Amounts, func(c T) prob.Three { return l.Now(c).Materials }, func(c *T, t prob.Three) { l.At(c).Materials = t }))
	narrow(f.Three("Bought-in work", Amounts, func(c T) prob.Three { return l.Now(c).Outside }, func(c *T, t prob.Three) { l.At(c).Outside = t }))
}

// Hours adds a field for the hours of each trade.
func Hours[T any](f *Of[T], now func(T) map[string]prob.Three, at func(*T) *map[string]prob.Three) {
	for _, trade := range lot.Trades {
		narrow(f.Three(Sentence(trade), hours, func(c T) prob.Three { return now(c)[trade] }, func(c *T, t prob.Three) {
			m := at(c)
			if *m == nil {
				*m = map[string]prob.Three{}
			}
			(*m)[trade] = t
			if t.Zero() {
				delete(*m, trade)
			}
		}))
	}
}

// option returns an option of a part of the line as it is shown.
func (l LineOf[T]) option(c T, part, k int) repair.Option {
	if parts := l.Now(c).Parts; part < len(parts) && k < len(parts[part].Options) {
		return parts[part].Options[k]
	}
	return repair.Option{}
}

// Option adds the price of one source of a part, whether it can be had and when.
func (l LineOf[T]) Option(f *Of[T], part, k int, source string) {
	at := func(c *T) *repair.Option { return &l.At(c).Parts[part].Options[k] }
	narrow(f.Three(Sentence(view.SourceWords(source)), Amounts, func(c T) prob.Three { return l.option(c, part, k).Price }, func(c *T, t prob.Three) {
		at(c).Price = t
		if l.Quoted != nil {
			at(c).Quoted = l.Quoted(*c)
		}
	}))
	e := f.Number("can be had", Percents, func(c T) widgets.Number { return widgets.Known(repair.Or(l.option(c, part, k).Chance, 1)) },
		func(c *T, n widgets.Number) { x := n.Float(); at(c).Chance = &x })
	e.SetRoom(0)
	narrow(f.Three("days to come", Days, func(c T) prob.Three { return l.option(c, part, k).LeadDays }, func(c *T, t prob.Three) { at(c).LeadDays = t }))
}

// OptionMore adds what else a source of a part takes: freight, extra hours, and the deposit that comes back.
func (l LineOf[T]) OptionMore(f *Of[T], part, k int) {
	at := func(c *T) *repair.Option { return &l.At(c).Parts[part].Options[k] }
	narrow(f.Three("freight", Amounts, func(c T) prob.Three { return l.option(c, part, k).Freight }, func(c *T, t prob.Three) { at(c).Freight = t }))
	narrow(f.Three("extra hours", hours, func(c T) prob.Three { return l.option(c, part, k).ExtraHours }, func(c *T, t prob.Three) { at(c).ExtraHours = t }))
	narrow(f.Three("core deposit back", Amounts, func(c T) prob.Three { return l.option(c, part, k).CoreBack }, func(c *T, t prob.Three) { at(c).CoreBack = t }))
}

// Fallback adds what a part costs, and when it comes, where no source has it.
func (l LineOf[T]) Fallback(f *Of[T], part int) {
	now := func(c T) repair.Fallback {
		if parts := l.Now(c).Parts; part < len(parts) && parts[part].Fallback != nil {
			return *parts[part].Fallback
		}
		return repair.Fallback{}
	}
	at := func(c *T) *repair.Fallback {
		p := &l.At(c).Parts[part]
		if p.Fallback == nil {
			p.Fallback = &repair.Fallback{}
		}
		return p.Fallback
	}
	narrow(f.Three("If none can be had", Amounts, func(c T) prob.Three { return now(c).Price }, func(c *T, t prob.Three) { at(c).Price = t }))
	narrow(f.Three("days to come", Days, func(c T) prob.Three { return now(c).LeadDays }, func(c *T, t prob.Three) { at(c).LeadDays = t }))
	narrow(f.Three("hours to make it", hours, func(c T) prob.Three { return now(c).Hours }, func(c *T, t prob.Three) { at(c).Hours = t }))
}
