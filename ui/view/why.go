package view

import (
	"cmp"
	"fmt"
	"slices"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/scenario"
)

// Why is how the resale price comes down to the bid.
type Why struct {
	Headline string // what the fall ends at
	Settled  bool   // false: the figures are of an older state of the case
	Reasons  []string
	Bars     []WhyBar
	Drivers  []Driver
	Next     []string // what is still to be entered before there is anything to show
}

// WhyBar is one step of the fall, with the lines that it is made of.
type WhyBar struct {
	Name    string
	Amount  float64
	Text    string // the amount as it is added
	Figure  string // the amount by itself: a cost, a price or a profit
	Meaning string
	Lines   []WhyLine
}

// WhyLine is one line of a bar: what it is, how it comes about, the money, which may be empty, and what is to be known of it.
type WhyLine struct{ What, How, Money, Note string }

// WhyColumns are the columns of a bar's lines.
var WhyColumns = []Column{{"What", false, 150}, {"How", false, 132}, {"Money", true, 72}}

// Driver is a cause of the doubt about the profit.
type Driver struct {
	Share
	Meaning string
}

// LotTitle returns the open lot as a page's title: "Lot 27   2018 Kettrick Dunlin Plus".
func LotTitle(c valuation.Case) string {
	name := Vehicle(c.Lot.ModelYear, c.Lot.Make, c.Lot.Model, c.Lot.Trim)
	if c.Lot.Number == "" {
		return name
	}
	return "Lot " + c.Lot.Number + "   " + name
}

// NewWhy returns the fall of an open lot.
func NewWhy(o desk.Open) Why {
	v := NewVerdict(o)
	w := Why{Settled: o.Fresh, Next: v.Next}
	if o.Valued == nil || len(o.Valued.Answer.Needs) > 0 {
		return w
	}
	a := o.Valued.Answer
	w.Reasons = a.Reasons
	p := NewPurse(a.Currency)
	w.Headline = "Do not bid. Down to the lowest legal bid, " + p.Show(a.Acquisition.Bid)
	if a.WalkAway != nil {
		w.Headline = "From the resale price down to " + p.Show(*a.WalkAway)
	}
	for i, b := range a.Waterfall {
		self := -b.Amount
		if i == 0 || i == len(a.Waterfall)-1 {
			self = b.Amount
		}
		w.Bars = append(w.Bars, WhyBar{Name: b.Name, Amount: p.Major(b.Amount), Text: p.Whole(p.Major(b.Amount)),
			Figure:  p.Code + " " + p.Whole(p.Major(self)),
			Meaning: barMeanings[b.Of()], Lines: barLines(b.Of(), story{o.Valued.Of, a, p})})
	}
	for _, d := range a.Drivers {
		w.Drivers = append(w.Drivers, Driver{Share{d.Name, d.Share}, driverMeaning(d.Kind)})
	}
	return w
}

// barMeanings say what each bar of the fall is, by its kind.
var barMeanings = map[string]string{
	valuation.BarResale: "What it should sell for, finished, on average over what may come.",
	valuation.BarOlder: "What the days until the sale take off the price: it grows older meanwhile, and the market and the " +
		"season move.",
	valuation.BarStop:    "What it is worth that you need not finish: where the strip-down shows more than the stop line, you stop.",
	valuation.BarAsIs:    "What it should bring as it stands, selling paid.",
	valuation.BarParts:   "What its parts should bring, selling them and the rest paid.",
	valuation.BarHours:   "Your hours at your rates.",
	valuation.BarSelling: "What selling it costs you: a share of the price, and what is flat.",
	valuation.BarRepair: "The work that is known: parts, materials, sublet work and your hours at your rates, each with its " +
		"chance counted in.",
	valuation.BarHidden:  "Damage that nobody has seen yet: the chance that it is there, times what it costs when it is.",
	valuation.BarFreight: "Getting it home.",
	valuation.BarStorage: "What the yard charges beyond its free days.",
	valuation.BarHolding: "Space, insurance and the like, day by day until it is sold.",
	valuation.BarCapital: "What the money costs while it is out.",
	valuation.BarAllowance: "Who wins has most likely overrated the lot. This is what being the highest of several guesses costs on " +
		"average.",
	valuation.BarFees:   "What the sale puts on top of the hammer price.",
	valuation.BarProfit: "What is left on average. It is no spare money: it pays for the risk that your house rules look at.",
	valuation.BarBid:    "The largest legal bid that keeps every house rule.",
	valuation.BarLowest: "No bid keeps every house rule, or a stop forbids one. This is the lowest that the sale takes.",
}

// driverMeaning says what a cause of the doubt is and what narrows it.
func driverMeaning(kind string) string {
	switch kind {
	case scenario.OfResale:
		return "How sure the price is. More comparables like yours narrow it."
	case scenario.OfFactor:
		return "What makes every job of this lot dearer at once. A closer look narrows it."
	case scenario.OfHours:
		return "How many hours of your own it may take."
	case scenario.OfFreight:
		return "How far the price of getting it home may stray."
	case scenario.OfStorage:
		return "How long it may stand at the yard."
	case scenario.OfTime:
		return "How many days may pass until it is sold, each at its cost."
	case scenario.OfRest:
		return "All causes below half a percent together."
	}
	return "How far this one job or risk may stray by itself."
}

// story is what the lines of a bar are told from.
type story struct {
	c valuation.Case
	a valuation.Answer
	p Purse
}

// barLines returns the lines of a bar.
func barLines(kind string, s story) []WhyLine {
	switch kind {
	case valuation.BarResale:
		return s.resale()
	case valuation.BarSelling:
		return s.selling()
	case valuation.BarRepair:
		return s.repair()
	case valuation.BarHidden:
		return s.hidden()
	case valuation.BarFees:
		return s.fees()
	case valuation.BarProfit:
		return s.profit()
	case valuation.BarBid, valuation.BarLowest:
		return s.ceilings()
	}
	return s.around(kind)
}

// repair returns the repair lines, the dearest first.
func (s story) repair() []WhyLine {
	planned := slices.Clone(s.a.Repair.Lines)
	slices.SortStableFunc(planned, func(a, b valuation.LineFigure) int { return cmp.Compare(b.Mean, a.Mean) })
	var lines []WhyLine
	for _, l := range planned {
		lines = append(lines, WhyLine{l.Job, hours(l.Hours), s.p.Whole(l.Mean), joined(" ", place(l.Area), sentence(l.Why), sentence(l.Caution))})
	}
	if s.a.Labour.Mean > 0 {
		lines = append(lines, WhyLine{"Of it and of hidden damage, own work", hours(s.a.Hours.Mean), s.p.Whole(s.a.Labour.Mean),
			"Your hours at your rates. They are counted as a cost, and come to you."},
			WhyLine{What: "My hours, 8 times in 10", How: fmt.Sprintf("%.0f to %.0f h", s.a.Hours.P10, s.a.Hours.P90),
				Money: s.p.Range(s.a.Labour.P10, s.a.Labour.P90)})
	}
	return append(lines, spread(s.p, s.a.Repair.Spread))
}

// place says where a line's work lies.
func place(area string) string {
	if area == "" {
		return ""
	}
	return "At " + damage.Area(area) + "."
}

// hidden returns the risks, the dearest on average first.
func (s story) hidden() []WhyLine {
	risks := slices.Clone(s.a.Hidden.Risks)
	mean := func(r valuation.RiskFigure) float64 { return r.Chance * r.MeanIfPresent }
	slices.SortStableFunc(risks, func(a, b valuation.RiskFigure) int { return cmp.Compare(mean(b), mean(a)) })
	var lines []WhyLine
	for _, r := range risks {
		lines = append(lines, WhyLine{r.Name, Percent(r.Chance) + " × " + s.p.Whole(r.MeanIfPresent), s.p.Whole(mean(r)),
			joined(" ", sentence(r.Why), sentence(r.Caution))})
	}
	return append(lines, spread(s.p, s.a.Hidden.Spread))
}

// fees returns the invoice but for its hammer price, and its total.
func (s story) fees() []WhyLine {
	var lines []WhyLine
	for i, l := range s.a.Acquisition.Lines {
		if i > 0 {
			lines = append(lines, WhyLine{What: l.Name, Money: s.p.Exact(l.Amount)})
		}
	}
	return append(lines, WhyLine{"Invoice total", "hammer price " + s.p.Exact(s.a.Acquisition.Bid), s.p.Exact(s.a.Acquisition.Total),
		"What is paid to the sale: the hammer price and the lines above."})
}

// spread says how far a sum may lie from its mean.
func spread(p Purse, x valuation.Spread) WhyLine {
	return WhyLine{What: "All of it, 8 times in 10", How: p.Range(x.P10, x.P90)}
}

// ceilings returns how far each house rule would go by itself.
func (s story) ceilings() []WhyLine {
	var lines []WhyLine
	for _, c := range s.a.Ceilings {
		l := WhyLine{What: sentence(valuation.RuleWords[c.Rule]), How: "at most", Note: "The largest legal bid that this rule allows by " +
			"itself."}
		switch {
		case c.Any:
			l.How = "any bid"
		case c.Bid == nil:
			l.How = "no bid"
		default:
			l.Money = s.p.Exact(*c.Bid)
		}
		if c.Rule == s.a.BindingRule {
			l.How += ", sets the bid"
		}
		lines = append(lines, l)
	}
	return lines
}

// profit returns what the profit at the bid looks like.
func (s story) profit() []WhyLine {
	f := s.a.Profit
	lines := []WhyLine{
		{What: "On average", Money: s.p.Whole(f.Mean)},
		{What: "8 times in 10", How: s.p.Range(f.P10, f.P90)},
		{What: "Middle", How: "half the time below", Money: s.p.Whole(f.P50)},
		{What: "1 time in 20 below", Money: s.p.Whole(f.P05)},
		{What: "Chance of a loss", How: Percent(f.LossChance)},
		{What: "Worst tenth", How: "mean of the worst 10 in 100", Money: s.p.Whole(f.WorstTenth)},
		{What: "Margin", How: Percent(f.Margin), Note: "The expected profit over everything laid out: invoice, repair, selling, own work, " +
			"capital."},
	}
	if f.PerHour != nil {
		lines = append(lines, WhyLine{What: "Per hour of mine", Money: s.p.Whole(*f.PerHour), Note: "The profit and your pay together, over " +
			"your hours."})
	}
	return lines
}
