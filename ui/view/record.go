package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// Bin is one bar of a histogram: where it lies, how many are in it, and the bin in a sentence.
type Bin struct {
	From, To float64
	Count    int
	Words    string
}

// CoverageColumns are the columns of the table of intervals.
var CoverageColumns = []Column{{"Stated", true, 58}, {"Held", true, 88}, {"Share", true, 64}, {"Could be", true, 114},
	{"So far", false, 96}}

// Coverage returns how often each interval of a figure held what came.
func Coverage(f hindsight.FigureRecord) [][]string {
	var rows [][]string
	for _, c := range f.Coverage {
		if c.N == 0 {
			rows = append(rows, []string{whole(c.Level), "", "", "", "no outcome"})
			continue
		}
		verdict := "as stated"
		if !c.Holds() {
			verdict = "too seldom"
			if c.Share > c.Level {
				verdict = "too often"
			}
		}
		rows = append(rows, []string{whole(c.Level), fmt.Sprintf("%d of %d", c.Inside, c.N), whole(c.Share),
			whole(c.Low) + " to " + whole(c.High), verdict})
	}
	return rows
}

// whole writes a share in whole per cents.
func whole(x float64) string { return fmt.Sprintf("%.0f %%", 100*x) }

// seldom writes a small share; what rounds to nothing is not nothing.
func seldom(x float64) string {
	if x < .005 {
		return "fewer than 1 %"
	}
	return whole(x)
}

// Tenths returns where in their forecasts the outcomes of a figure fell.
func Tenths(f hindsight.FigureRecord) []Bin {
	bins := make([]Bin, len(f.PIT))
	for i, n := range f.PIT {
		from, to := float64(i)/float64(len(f.PIT)), float64(i+1)/float64(len(f.PIT))
		where := fmt.Sprintf("tenth %d of %d of the forecast, low to high", i+1, len(f.PIT))
		switch i {
		case 0:
			where = "lowest tenth of the forecast"
		case len(f.PIT) - 1:
			where = "highest tenth of the forecast"
		}
		bins[i] = Bin{from, to, n, Count(n, "outcome") + " in the " + where + "."}
	}
	return bins
}

// FigureWords says how a figure's forecasts did, in a few sentences.
func FigureWords(r desk.TrackRecord, f hindsight.FigureRecord) string {
	if f.N == 0 {
		return "No outcome is known yet."
	}
	unit := map[string]string{"hours": " hours", "days": " days"}[f.Key]
	score := fmt.Sprintf("%.1f%s", f.CRPS, unit)
	if unit == "" {
		p := NewPurse(r.Currency)
		score = p.Code + " " + p.Whole(f.CRPS)
	}
	words := []string{Count(f.N, "outcome") + "."}
	if f.Key == hindsight.HammerKey {
		words = append(words, "Lots that you won and lots that others won. Each is held against the forecast from the results before it.")
	}
	if f.Unscored < f.N {
		words = append(words, fmt.Sprintf("On average a forecast and its outcome lie %s apart (CRPS, for the statistician).", score))
	}
	if f.Unscored > 0 && f.Key != hindsight.HammerKey {
		words = append(words, fmt.Sprintf("%d in a currency other than %s are left out of the scores.", f.Unscored, r.Currency))
	}
	if skill, ok := f.Skill(); ok && skill >= 0 {
		words = append(words, fmt.Sprintf("That is %s better than saying \"like my other buys\" of every lot.", whole(skill)))
	} else if ok {
		words = append(words, fmt.Sprintf("That is %s worse than saying \"like my other buys\" of every lot.", whole(-skill)))
	}
	switch {
	case f.Uneven < 0.05:
		words = append(words, fmt.Sprintf("Bars so uneven come up in %s of right forecasts: something is off.", seldom(f.Uneven)))
	default:
		words = append(words, "No more uneven than chance alone.")
	}
	return strings.Join(words, " ")
}

// RatioLines are the figures of the ratio study of foretold prices, each with what it says.
func RatioLines(r hindsight.Record) [][2]string {
	if r.Ratios == nil {
		return nil
	}
	s := r.Ratios
	return [][2]string{{"Forecast price against sold price, median", fmt.Sprintf("%s of it, over %s", whole(s.Median), Count(s.N, "sale"))},
		{"How far from that, on average (COD)", fmt.Sprintf("%.1f %%", s.COD)},
		{"Above 1: expensive vehicles are forecast too low (PRD)", fmt.Sprintf("%.2f", s.PRD)}}
}

// ReliabilityBin is some forecasts of like chance.
type ReliabilityBin struct {
	Said, Came, Low, High float64
	N                     int
	Words                 string
}

// Reliability returns the points of a reliability diagram.
func Reliability(r score.Reliability) []ReliabilityBin {
	bins := make([]ReliabilityBin, len(r.Bins))
	for i, b := range r.Bins {
		bins[i] = ReliabilityBin{b.Said, b.Came, b.Low, b.High, b.N,
			fmt.Sprintf("Said %s: came %d times in %d, %s (so few leave %s to %s).", whole(b.Said), b.Events, b.N, whole(b.Came), whole(b.Low),
				whole(b.High))}
	}
	return bins
}

// BrierWords says how stated chances did.
func BrierWords(r score.Reliability) string {
	if r.N == 0 {
		return "No outcome of a forecast chance is known yet."
	}
	return fmt.Sprintf("%d of %d came. For the statistician: Brier score %.3f, 0 is perfect; saying the overall share every time would score "+
		"%.3f. Chances that are off cost %.3f, telling likely from unlikely wins %.3f.", r.Events, r.N, r.Brier, r.Uncertainty, r.Calibration,
		r.Resolution)
}

// MoneyBar is one step from the profit foretold to the profit made.
type MoneyBar struct {
	Name, Text string
	Amount     float64
}

// Causes returns the steps from the profit foretold to the profit made.
func Causes(m hindsight.Money) []MoneyBar {
	if len(m.Buys) == 0 {
		return nil
	}
	p := NewPurse(m.Currency)
	bar := func(name string, a money.Amount, sign string) MoneyBar {
		return MoneyBar{name, sign + p.Whole(p.Major(a)), p.Major(a)}
	}
	bars := []MoneyBar{bar("Profit forecast", m.Foretold, "")}
	for _, c := range m.Causes {
		sign := ""
		if c.Difference > 0 {
			sign = "+"
		}
		bars = append(bars, bar(c.Name, c.Difference, sign))
	}
	return append(bars, bar("Profit made", m.Came, ""))
}

// ReplayColumns are the columns of the replay.
var ReplayColumns = []Column{{"Past lot", false, 240}, {"Bid then", true, 90}, {"Bid now", true, 90}, {"Hammer", true, 90},
	{"Profit", true, 90}, {"With today's factors", false, 150}}

// ReplayRows returns the past lots with what today's factors would have bid.
func ReplayRows(r desk.Replay, currency string) [][]string {
	p := NewPurse(currency)
	dash := func(a *money.Amount, none string) string {
		if a == nil {
			return none
		}
		return p.Group(*a)
	}
	rows := make([][]string, len(r.Lots))
	for i, l := range r.Lots {
		rows[i] = []string{l.Name, dash(l.Then, "-"), dash(l.Now, "do not bid"), dash(l.Hammer, "-"), dash(l.Profit, "-"), l.Verdict}
		if l.Verdict == valuation.NotReplayed {
			rows[i][2] = "-"
		}
	}
	return rows
}

// ReplayWords says what the replay comes to.
func ReplayWords(r desk.Replay, currency string) string {
	p, s := NewPurse(currency), r.Sum
	words := fmt.Sprintf("%d would be bought again, %d refused.", s.Bought, s.Refused)
	if s.Refused > 0 {
		words += fmt.Sprintf(" Of those refused, %d had lost %s together and %d had made %s.", s.LossesRefused, p.Show(s.LossAvoided),
			s.GainsRefused, p.Show(s.GainMissed))
	}
	if s.WouldBuy+s.Left > 0 {
		words += fmt.Sprintf(" Of the lots that others took, %d would be bought at their hammer price and %d not; what they would have made "+
			"is not known.", s.WouldBuy, s.Left)
	}
	if s.NotReplayed > 0 {
		words += fmt.Sprintf(" %d cannot be replayed: no forecast was kept, or the hammer price is not known.", s.NotReplayed)
	}
	return words
}

// MoneyWords says over how many buys the money is counted.
func MoneyWords(m hindsight.Money) string {
	if len(m.Buys) == 0 {
		return "No buy's money is complete yet: it takes the hammer price, the invoice, bills, hours, days and what it sold for."
	}
	return fmt.Sprintf("From the profit forecast to the profit made over %s, in %s. A bar to the right is money won against the forecast.",
		Count(len(m.Buys), "buy"), m.Currency)
}
