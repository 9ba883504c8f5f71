package view

import (
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"

	"walkline/valuation"
	"walkline/valuation/prob"
)

// resale returns where the price comes from.
func (s story) resale() []WhyLine {
	r := s.a.Resale
	how := "your own guess"
	if r.RowsUsed > 0 {
		how = "from " + Count(r.RowsUsed, "comparable")
	}
	return []WhyLine{
		{What: "On average", How: how, Money: s.p.Whole(r.Mean)},
		{What: "Middle", How: "half sell for less", Money: s.p.Whole(r.P50)},
		{What: "8 times in 10", How: s.p.Range(r.P10, r.P90)},
	}
}

// selling returns what the sale costs.
func (s story) selling() []WhyLine {
	var lines []WhyLine
	if f := s.c.Selling.Percent; f > 0 {
		lines = append(lines, WhyLine{What: "Share of the price", How: Percent(f) + " of " + s.p.Whole(s.a.Resale.Mean),
			Money: s.p.Whole(f * s.a.Resale.Mean)})
	}
	if s.c.Selling.Flat > 0 {
		lines = append(lines, WhyLine{What: "Flat", How: "at any price", Money: s.p.Whole(s.c.Selling.Flat)})
	}
	switch fees := s.c.Selling.Papers; {
	case fees == nil:
		lines = append(lines, WhyLine{What: "Title, inspection, registration", How: "not entered: not counted"})
	case *fees > 0:
		lines = append(lines, WhyLine{What: "Title, inspection, registration", How: "fees, at any price", Money: s.p.Whole(*fees)})
	}
	return lines
}

// around returns the lines of what comes with getting the lot home and keeping it.
func (s story) around(kind string) []WhyLine {
	days := WhyLine{What: "Days until sold, 8 times in 10", How: fmt.Sprintf("%.0f to %.0f", s.a.Days.P10, s.a.Days.P90)}
	switch kind {
	case valuation.BarFreight:
		return []WhyLine{{What: "Low, likely, high", How: s.three(s.c.Buying.Freight)}}
	case valuation.BarStorage:
		y := s.c.Buying.Storage
		return []WhyLine{{What: "A day", How: fmt.Sprintf("after %g free days", y.FreeDays), Money: s.p.Whole(y.PerDay)},
			{What: "Days at the yard", How: plainThree(y.Days)}}
	case valuation.BarHolding:
		return []WhyLine{{What: "A day", Money: s.p.Whole(s.c.Time.HoldingPerDay)}, days}
	case valuation.BarCapital:
		return []WhyLine{{What: "A year", How: Percent(s.c.Time.CapitalRate)},
			{What: "Of the invoice total", Money: s.p.Exact(s.a.Acquisition.Total)}, days}
	case valuation.BarOlder:
		return s.growing()
	case valuation.BarStop:
		return s.stopping()
	case valuation.BarAllowance:
		return s.allowance()
	}
	return nil
}

// growing says how the price moves until the day of sale.
func (s story) growing() []WhyLine {
	how := "as the comparables tell"
	if y := s.c.Resale.YearlyChange; y != nil {
		how = Percent(y.Low) + " to " + Percent(y.High) + ", your own judgment"
	} else if s.a.Resale.RowsUsed == 0 {
		how = "not known: there are no comparables that tell"
	}
	return []WhyLine{{What: "A year", How: how}, {What: "Days until sold, 8 times in 10",
		How: fmt.Sprintf("%.0f to %.0f", s.a.Days.P10, s.a.Days.P90)}}
}

// stopping says where to stop and how often that is.
func (s story) stopping() []WhyLine {
	if s.a.StopLine == nil {
		return nil
	}
	return []WhyLine{{What: "Stop line", How: "still to spend at the strip-down", Money: s.p.Whole(*s.a.StopLine),
		Note: "Above it, stop and " + valuation.PlanWords[s.a.StopWay] + "."},
		{What: "How often", How: Percent(s.a.StopChance)}, {What: "Worth of the walk-away bid", Money: s.p.Exact(s.a.WayOutWorth)}}
}

// allowance says where the winner's allowance comes from.
func (s story) allowance() []WhyLine {
	if !s.c.Run.WinnersAllowance {
		return []WhyLine{{What: "Turned off", How: "for this lot"}}
	}
	others, _ := s.c.Market.Others()
	lines := []WhyLine{{What: "Serious bidders", How: fmt.Sprintf("%d others and you", others)}}
	constant := prob.WinnersConstant(others+1) * s.c.OwnShare()
	if constant <= 0 {
		return append(lines, WhyLine{What: "With one other bidder or none", How: "nothing"})
	}
	for _, b := range s.a.Waterfall {
		if b.Of() == valuation.BarAllowance {
			whole := -s.p.Major(b.Amount)
			lines = append(lines, WhyLine{"What all may misjudge alike", "standard deviation", s.p.Whole(whole / constant),
				"What the comparables leave unsure of the price level, and what makes this lot worse than it looks to everyone."},
				WhyLine{"Times, for so many bidders and what differs between them", fmt.Sprintf("× %.3f", constant), s.p.Whole(whole),
					"How far above the middle the winner's guess lies on average (Milgrom and Weber 1982). Only the share of that doubt that " +
						"differs from bidder to bidder counts."})
		}
	}
	return lines
}

// three writes a three-point amount of money.
func (s story) three(t prob.Three) string {
	if t.Sure() {
		return s.p.Whole(t.Low)
	}
	return s.p.Whole(t.Low) + ", " + s.p.Whole(t.Likely) + ", " + s.p.Whole(t.High)
}

// plainThree writes a three-point figure.
func plainThree(t prob.Three) string {
	if t.Sure() {
		return fmt.Sprintf("%g", t.Low)
	}
	return fmt.Sprintf("%g, likely %g, at most %g", t.Low, t.Likely, t.High)
}

// hours writes hours of work; nothing for none.
func hours(h float64) string {
	if h <= 0 {
		return ""
	}
	return fmt.Sprintf("%.1f h", h)
}

// joined joins the parts that say something.
func joined(by string, parts ...string) string {
	var said []string
	for _, p := range parts {
		if p != "" {
			said = append(said, p)
		}
	}
	return strings.Join(said, by)
}

// sentence begins words with a capital.
func sentence(words string) string {
	first, size := utf8.DecodeRuneInString(words)
	if size == 0 {
		return words
	}
	return string(unicode.ToUpper(first)) + words[size:]
}
