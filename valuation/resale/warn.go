package resale

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"sort"
	"strings"
)

// Thresholds of the warnings. Starter values, from memory: replace them with yours.
const (
	fewRows      = 5
	staleYears   = 1.0
	yearsBeyond  = 0.5    // years outside the rows' range of ages
	milesBeyond  = 5_000. // miles outside the rows' range of mileages
	dominates    = 0.5    // share of the whole pull on the answer
	grosslyOff   = 4.0    // standardised residual of a row that doesn't fit
	mostOutliers = 3      // named one by one
)

// Warnings returns what the user should know about the fit, most of it about the rows. Empty: nothing to say.
func (m Model) Warnings() []Warning {
	out := m.unusedRows()
	if m.used == 0 {
		if m.err != nil {
			return append(out, Warning{Code: WarnUnknown, Text: m.err.Error()})
		}
		return append(out, Warning{Code: WarnGuess, Text: "no comparable: the price is your own guess and nothing else"})
	}
	if m.used <= fewRows {
		out = append(out, Warning{Code: WarnFew, Text: fmt.Sprintf("only %s: the price leans on other models' slopes and spreads",
			count(m.used, "comparable"))})
	}
	out = append(out, m.beyond()...)
	out = append(out, m.stale()...)
	out = append(out, m.strangers()...)
	out = append(out, m.dominant()...)
	return append(out, m.outliers()...)
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// unusedRows groups the rows that aren't used by their reason.
func (m Model) unusedRows() []Warning {
	names, places := map[string][]string{}, map[string][]int{}
	for _, r := range m.rows[m.used:] {
		reason := r.reason
		if strings.HasPrefix(reason, sameVehicle) {
			reason = sameVehicle + "another row"
		}
		names[reason], places[reason] = append(names[reason], r.name()), append(places[reason], r.index)
	}
	var out []Warning
	for _, reason := range slices.Sorted(maps.Keys(names)) {
		sort.Strings(names[reason])
		sort.Ints(places[reason])
		text := fmt.Sprintf("%s not used (%s): %s", count(len(names[reason]), "row"), reason, shortList(names[reason]))
		out = append(out, Warning{WarnUnused, text, places[reason]})
	}
	return out
}

func shortList(names []string) string {
	const most = 5
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
}

// beyond warns where the subject lies outside what the rows cover.
func (m Model) beyond() []Warning {
	oldest, newest, least, most := math.Inf(-1), math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, r := range m.rows[:m.used] {
		oldest, newest = max(oldest, r.traits.Age), min(newest, r.traits.Age)
		if r.traits.MilesKnown {
			least, most = min(least, r.traits.Miles), max(most, r.traits.Miles)
		}
	}
	var out []Warning
	say := func(code Code, text string) { out = append(out, Warning{Code: code, Text: text}) }
	if m.subject.Age > oldest+yearsBeyond {
		say(WarnOlder, "the vehicle is older than every comparable: the price is extended beyond them")
	}
	if m.subject.Age < newest-yearsBeyond {
		say(WarnNewer, "the vehicle is newer than every comparable: the price is extended beyond them")
	}
	switch {
	case !m.subject.MilesKnown:
		say(WarnNoMileage, "the vehicle's mileage is not known: mileage is left out of the price")
	case most < least:
		say(WarnNoRowMileage, "no comparable states its mileage: mileage is left out of the price")
	case m.subject.Miles > most+milesBeyond:
		say(WarnMoreMiles, "the vehicle has more miles than every comparable: the price is extended beyond them")
	case m.subject.Miles < least-milesBeyond:
		say(WarnFewerMiles, "the vehicle has fewer miles than every comparable: the price is extended beyond them")
	}
	return out
}

func (m Model) stale() []Warning {
	var old, undated []int
	for _, r := range m.rows[:m.used] {
		if !r.row.Date.Known() {
			undated = append(undated, r.index)
		} else if r.traits.Back-(m.cal.sale-m.cal.today) > staleYears {
			old = append(old, r.index)
		}
	}
	var out []Warning
	if len(old) > 0 {
		out = append(out, Warning{WarnStale, fmt.Sprintf("%s more than a year old: the market may have moved", count(len(old), "comparable")),
			old})
	}
	if len(undated) > 0 && (len(undated) < m.used || m.beliefs.Today.Known()) {
		out = append(out, Warning{WarnUndated, fmt.Sprintf("%s without a date, read as of today", count(len(undated), "comparable")), undated})
	}
	for _, w := range out {
		sort.Ints(w.Rows)
	}
	return out
}

// strangers warns where no row is of the subject's own model, trim or title brand.
func (m Model) strangers() []Warning {
	models, trims, brands := 0, 0, 0
	for _, r := range m.rows[:m.used] {
		if r.traits.Model == m.subject.Model {
			models++
		}
		if r.traits.Trim == m.subject.Trim {
			trims++
		}
		if r.traits.Brand == m.subject.Brand {
			brands++
		}
	}
	var out []Warning
	if m.subject.Model != "" && models == 0 {
		out = append(out, Warning{Code: WarnOtherModel, Text: "no comparable is of the vehicle's own make and model"})
	}
	if m.subject.Trim != "" && trims == 0 {
		out = append(out, Warning{Code: WarnOtherTrim, Text: "no comparable is of the vehicle's own trim"})
	}
	if m.subject.Brand != "" && brands == 0 {
		text := fmt.Sprintf("no comparable has the title brand %q: its discount is your belief alone", m.subject.Brand)
		out = append(out, Warning{Code: WarnOtherBrand, Text: text})
	}
	return out
}

// dominant warns of a row that pulls the answer more than the rest together.
func (m Model) dominant() []Warning {
	if m.used < 3 {
		return nil
	}
	total, most, at := 0.0, 0.0, 0
	for i := range m.used {
		hold := m.blend.Hold(i)
		total += hold
		if hold > most {
			most, at = hold, i
		}
	}
	if most < dominates*total {
		return nil
	}
	text := fmt.Sprintf("%s carries more of the price than all other comparables together", m.rows[at].name())
	return []Warning{{WarnDominant, text, []int{m.rows[at].index}}}
}

func (m Model) outliers() []Warning {
	z := m.blend.LeftOut()
	var out []Warning
	var rest []int
	for i, r := range m.rows[:m.used] {
		if math.Abs(z[i]) < grosslyOff {
			continue
		}
		if len(out) == mostOutliers {
			rest = append(rest, r.index)
			continue
		}
		side := "below"
		if z[i] > 0 {
			side = "above"
		}
		text := fmt.Sprintf("%s lies far %s the others and hardly counts: check its price", r.name(), side)
		out = append(out, Warning{WarnOutlier, text, []int{r.index}})
	}
	if len(rest) > 0 {
		sort.Ints(rest)
		out = append(out, Warning{WarnOutlier, fmt.Sprintf("%d more rows lie far from the others", len(rest)), rest})
	}
	return out
}
