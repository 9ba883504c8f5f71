package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/money"
	"walkline/valuation/score"
)

// writeText writes a page and returns the exit code.
func writeText(out, errs io.Writer, text string) int {
	if _, err := io.WriteString(out, text); err != nil {
		fmt.Fprintf(errs, "walk: writing the answer: %v\n", err)
		return failed
	}
	return done
}

// tuneText writes the record and the proposals for a person at a terminal.
func tuneText(t tuning) string {
	p := page{currency: t.Currency}
	p.cur, _ = money.Lookup(t.Currency)
	p.record(t.Record)
	p.line("\nWhat past buys would change (nothing is changed by this)")
	if len(t.Proposals) == 0 {
		p.line("  Nothing: no past buy with a forecast and an outcome.")
	}
	for _, q := range t.Proposals {
		p.proposal(q)
	}
	p.list("Notes", append(t.Record.LeftOut, t.Doubts...))
	p.line("\n%s", t.Record.Selected)
	return p.String()
}

// record writes how the forecasts did.
func (p *page) record(r hindsight.Record) {
	p.line("How the forecasts did on %d buys that were finished and sold", r.Buys)
	for _, f := range r.Figures {
		if f.N == 0 {
			continue
		}
		p.line("\n  %s, %d outcomes", f.Name, f.N)
		for _, c := range f.Coverage {
			verdict := ""
			if !c.Holds() {
				verdict = "  not as stated"
			}
			p.line("    %2.0f %% interval held %3.0f %% (%.0f to %.0f %% with this many)%s", 100*c.Level, 100*c.Share, 100*c.Low, 100*c.High,
				verdict)
		}
		p.line("    by tenths of the forecast, low to high: %s", strings.Trim(fmt.Sprint(f.PIT), "[]"))
		if s, ok := f.Skill(); ok {
			than := "better"
			if s < 0 {
				than = "worse"
			}
			p.line("    score %.4g, naive baseline %.4g: %.0f %% %s", f.CRPS, *f.Naive, 100*math.Abs(s), than)
		}
	}
	p.reliability("Hidden damage: stated chance against what was found", r.Risks)
	p.reliability("Losses: stated chance against what came", r.Losses)
	if r.Ratios != nil {
		p.line("\n  Forecast price against sold price, sales: %d. Median %.0f %% of it, on average %.1f %% away from that (COD).",
			r.Ratios.N, 100*r.Ratios.Median, r.Ratios.COD)
		p.line("    Expensive against cheap vehicles %.2f (PRD): above 1, expensive ones are forecast too low.", r.Ratios.PRD)
	}
	p.causes(r.Money)
}

func (p *page) reliability(title string, r score.Reliability) {
	if r.N == 0 {
		return
	}
	p.line("\n  %s, %d of %d", title, r.Events, r.N)
	p.line("    Brier score %.4f = calibration %.4f - resolution %.4f + uncertainty %.4f + within tenths %.4f", r.Brier, r.Calibration,
		r.Resolution, r.Uncertainty, r.Within)
	for _, b := range r.Bins {
		p.line("    said %3.0f %%, came %3.0f %% of %d (%.0f to %.0f %%)", 100*b.Said, 100*b.Came, b.N, 100*b.Low, 100*b.High)
	}
}

func (p *page) causes(m hindsight.Money) {
	if len(m.Buys) == 0 {
		return
	}
	p.line("\n  Money over %d buys, in %s", len(m.Buys), m.Currency)
	p.line("    %-22s %14s", "Profit forecast", p.cur.Text(m.Foretold))
	for _, c := range m.Causes {
		p.line("    %-22s %14s", c.Name, p.cur.Text(c.Difference))
	}
	p.line("    %-22s %14s", "Profit made", p.cur.Text(m.Came))
}

// proposal writes one proposal with its reasons and effects.
func (p *page) proposal(q proposed) {
	p.line("\n  %s: %s -> %s", q.Name, factorText(q.Unit, q.Now.At), factorText(q.Unit, q.Proposed.At))
	p.line("    between %s and %s, four times in five", factorText(q.Unit, q.Proposed.Low), factorText(q.Unit, q.Proposed.High))
	for _, w := range q.Why {
		p.line("    - %s", w)
	}
	for _, e := range q.Effects {
		p.line("    %s: walk away above %s -> %s", e.Lot, orNoBid(e.Before), orNoBid(e.After))
	}
}

func factorText(u learn.Unit, x float64) string {
	if u == learn.ChanceUnit {
		return fmt.Sprintf("%.0f %%", 100*x)
	}
	return fmt.Sprintf("%.2f", x)
}

func orNoBid(s *string) string {
	if s == nil {
		return "no bid"
	}
	return *s
}
