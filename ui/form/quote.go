package form

import (
	"strings"

	"fyne.io/fyne/v2/widget"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// quote is what a yard said of one source of a part, as it is typed: it counts from the moment that a price, a day and who said it are
// there, in the place of the judgement beside it.
type quote struct {
	form       *Of[repair.Line]
	at         func(*repair.Line) *repair.Option
	today      func() string
	yard       *widgets.TextEntry
	phone, day *widgets.TextEntry
	price      *widgets.NumberEntry
	says       *widget.RichText
	kept       *repair.Quote // that the fields were written from
	fresh      bool          // they have been written
	line       repair.Line
}

// Quote adds who said what of a source, and when.
func (l Line) Quote(f *Of[repair.Line], part, k int) {
	q := &quote{form: f, at: func(x *repair.Line) *repair.Option { return optionOf(x, part, k) }, today: l.Quoted,
		says: Small("")}
	entry := func(label, hint string) *widgets.TextEntry {
		e := widgets.NewTextEntry()
		e.SetPlaceHolder(hint)
		e.SetMeaning(view.Help(label))
		e.Complete(label)
		e.OnChanged = func(string) { q.put() }
		f.Row(label, bounded(e), func(repair.Line) {})
		return e
	}
	q.yard, q.phone = entry("Yard", "who was asked"), entry("Phone", "its number")
	q.day = entry("Said on", "Nov 27; empty is today")
	spec := Amounts
	spec.Optional = true
	q.price = widgets.NewNumberEntry(spec, func(widgets.Number) { q.put() })
	q.price.SetMeaning(view.Help("Said price"))
	q.price.SetRoom(0)
	f.Row("Said price", q.price, func(line repair.Line) {
		q.price.SetSpec(inCurrency(spec, f.currency(line)))
		q.show(line)
	})
	f.Row("", q.says, func(repair.Line) {})
}

// show writes the quote that is kept into the fields, unless it is what they say already.
func (q *quote) show(line repair.Line) {
	q.line = line
	now := q.at(&line).Quote
	if draft, whole := q.draft(); q.fresh && (whole && now != nil && *now == draft || now == nil && q.kept == nil) {
		q.kept = now
		q.say()
		return
	}
	q.kept, q.fresh = now, true
	x := part(now)
	q.yard.SetText(x.Yard)
	q.phone.SetText(x.Phone)
	q.day.SetText(DayShown(x.Day))
	price := widgets.Number{}
	if now != nil {
		price = widgets.Known(x.Price)
	}
	q.price.SetValue(price)
	q.say()
}

// draft returns what the fields say, and whether that is a whole quote.
func (q *quote) draft() (repair.Quote, bool) {
	day, _, err := ReadDay(q.day.Text)
	d := repair.Quote{Yard: strings.TrimSpace(q.yard.Text), Phone: strings.TrimSpace(q.phone.Text), Day: day, Price: q.price.Value().Float()}
	if err != nil {
		return d, false
	}
	if d.Day == "" {
		d.Day = lot.Date(q.today())
	}
	return d, q.missing(d) == ""
}

// missing says what a quote lacks; empty: nothing.
func (q *quote) missing(d repair.Quote) string {
	switch {
	case !q.price.Value().Known:
		return "no price"
	case !d.Day.Known():
		return "that is no day: write it as " + DayShown(lot.Date(q.today()))
	case d.Yard == "" && d.Phone == "":
		return "enter who said it, a yard or a phone number"
	}
	return ""
}

// put keeps what was typed once it is whole, and drops the quote when its price is taken away.
func (q *quote) put() {
	if q.form.muted {
		return
	}
	d, whole := q.draft()
	switch {
	case whole:
		q.kept = &d
		q.form.Change("quote", func(l *repair.Line) { q.at(l).Quote = &d })
	case !q.price.Value().Known && q.kept != nil:
		q.kept = nil
		q.form.Change("no quote", func(l *repair.Line) { q.at(l).Quote = nil })
	}
	q.say()
}

// say says what was said, or why it does not count yet.
func (q *quote) say() {
	d, whole := q.draft()
	words := ""
	switch {
	case whole:
		words = view.QuoteWords(d, q.today(), view.Purse{Currency: q.form.currency(q.line)}) + ": counted in the place of the estimate above."
	case d.Yard+d.Phone != "" || q.price.Value().Known:
		words = "! not counted yet: " + q.missing(d)
	}
	q.says.Segments[0].(*widget.TextSegment).Text = words
	q.says.Refresh()
}
