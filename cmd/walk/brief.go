package main

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"walkline/ui/view"
	"walkline/valuation"
	"walkline/valuation/money"
)

// The screen of a terminal that has not been enlarged, with a line left for the next command.
const (
	screenWide = 80
	screenHigh = 23
)

// How much of each list a screen holds.
const (
	briefStops    = 2
	briefReasons  = 2
	briefChecks   = 2
	briefWarnings = 1
)

// brief writes an answer for one screen: the bid, its figures, then what to look at first. What is left out is counted.
func brief(c valuation.Case, a valuation.Answer) string {
	p := page{currency: a.Currency}
	p.cur, _ = money.Lookup(a.Currency)
	o, v := verdictOf(c, a)
	p.title(c)
	p.verdict(v)
	stops, _ := view.Checks(o)
	p.few("STOP", briefStops, texts(stops))
	p.few("", briefReasons, append(v.Next, v.Reasons...))
	p.few("Look at", briefChecks, texts(view.FirstChecks(o)))
	p.few("Warning", briefWarnings, v.Warnings)
	lines := strings.Split(strings.TrimSuffix(p.String(), "\n"), "\n")
	if whole := wrapped(lines); len(whole) <= screenHigh {
		return strings.Join(whole, "\n") + "\n"
	}
	if more := len(lines) - (screenHigh - 1); more > 0 {
		lines = append(lines[:screenHigh-1], fmt.Sprintf("and %d lines more: leave --brief out", more))
	}
	for i, l := range lines {
		lines[i] = cut(l, screenWide)
	}
	return strings.Join(lines, "\n") + "\n"
}

// wrapped breaks lines at words so that none is wider than the screen; what follows of a line stands further in.
func wrapped(lines []string) []string {
	var out []string
	for _, l := range lines {
		for utf8.RuneCountInString(l) > screenWide {
			at := strings.LastIndex(string([]rune(l)[:screenWide]), " ")
			if strings.TrimSpace(l[:max(at, 0)]) == "" {
				break // one word is wider than the screen
			}
			out, l = append(out, l[:at]), "      "+l[at+1:]
		}
		out = append(out, cut(l, screenWide))
	}
	return out
}

// few writes the first of a list, a line each, and counts the rest.
func (p *page) few(head string, most int, items []string) {
	if head != "" {
		head += ": "
	}
	for i, s := range items {
		if i == most {
			p.line("  and %d more", len(items)-i)
			return
		}
		p.line("  %s%s", head, s)
	}
}

func texts(checks []view.Check) []string {
	var out []string
	for _, c := range checks {
		out = append(out, c.Text)
	}
	return out
}

// cut shortens a line to a width.
func cut(line string, width int) string {
	if utf8.RuneCountInString(line) <= width {
		return line
	}
	return string([]rune(line)[:width-1]) + "…"
}
