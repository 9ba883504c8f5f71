package form

import (
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// Line lays out the fields of a repair line. Quoted gives the day that a price typed now is a quote of; nil: a price is no quote.
type Line struct{ Quoted func() string }

// narrow fits a three-point field into the side of a table.
func narrow(e *widgets.ThreeEntry) {
	e.SetFigures(5)
	e.SetRoom(0)
}

// hours is the kind of a field for hours.
var hours = widgets.Spec{Unit: "h", Least: widgets.Bound(0)}

// Words adds what the work is, where, and how likely it is needed.
func (Line) Words(f *Of[repair.Line]) {
	f.Text("Work", func(l *repair.Line) *string { return &l.Job })
	f.Choice("Area", lot.Areas, func(l *repair.Line) *string { return &l.Area })
	f.Number("Chance needed", Percents, func(l *repair.Line) any { return Certainly{&l.Chance} })
}

// Work adds hours by trade, materials and work bought in.
func (Line) Work(f *Of[repair.Line]) {
	Hours(f, func(l *repair.Line) *map[string]prob.Three { return &l.Hours })
	narrow(f.Three("Materials", Amounts, func(l *repair.Line) any { return &l.Materials }))
	narrow(f.Three("Sublet work", Amounts, func(l *repair.Line) any { return &l.Outside }))
}

// Hours adds a field for the hours of each trade.
func Hours[T any](f *Of[T], at func(*T) *map[string]prob.Three) {
	for _, trade := range lot.Trades {
		narrow(f.three(Sentence(trade), hours, func(c T) prob.Three { return (*at(&c))[trade] }, func(c *T, t prob.Three) {
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

// partOf returns a part of the line; a blank one where the line has it no more and its fields are still to be laid out anew.
func partOf(l *repair.Line, part int) *repair.Part {
	if parts := l.Parts; part < len(parts) {
		return &parts[part]
	}
	return &repair.Part{}
}

// optionOf returns a source of a part, blank as in partOf.
func optionOf(l *repair.Line, part, k int) *repair.Option {
	if options := partOf(l, part).Options; k < len(options) {
		return &options[k]
	}
	return &repair.Option{}
}

// Option adds the price of one source of a part, whether it can be had and when.
func (l Line) Option(f *Of[repair.Line], part, k int, source string) {
	at := func(l *repair.Line) *repair.Option { return optionOf(l, part, k) }
	narrow(f.three(Sentence(view.SourceWords(source)), Amounts, func(line repair.Line) prob.Three { return at(&line).Price },
		func(line *repair.Line, t prob.Three) {
			at(line).Price = t
			if l.Quoted != nil {
				at(line).Quoted = l.Quoted()
			}
		}))
	f.Number("Available", Percents, func(l *repair.Line) any { return Certainly{&at(l).Chance} }).SetRoom(0)
	narrow(f.Three("Lead days", Days, func(l *repair.Line) any { return &at(l).LeadDays }))
}

// OptionMore adds what else a source of a part takes: freight, extra hours, and the deposit that comes back.
func (Line) OptionMore(f *Of[repair.Line], part, k int) {
	at := func(l *repair.Line) *repair.Option { return optionOf(l, part, k) }
	narrow(f.Three("freight", Amounts, func(l *repair.Line) any { return &at(l).Freight }))
	narrow(f.Three("extra hours", hours, func(l *repair.Line) any { return &at(l).ExtraHours }))
	narrow(f.Three("core deposit back", Amounts, func(l *repair.Line) any { return &at(l).CoreBack }))
}

// Fallback adds what a part costs, and when it comes, where no source has it.
func (Line) Fallback(f *Of[repair.Line], part int) {
	at := func(l *repair.Line) *repair.Fallback {
		if p := partOf(l, part); p.Fallback != nil {
			return p.Fallback
		}
		return &repair.Fallback{}
	}
	narrow(f.Three("If no source has it", Amounts, func(l *repair.Line) any { return &at(l).Price }))
	narrow(f.Three("Lead days", Days, func(l *repair.Line) any { return &at(l).LeadDays }))
	narrow(f.Three("hours to make it", hours, func(l *repair.Line) any { return &at(l).Hours }))
}
