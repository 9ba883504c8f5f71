package hidden_test

import (
	"math"
	"slices"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s = %.9g, want %.9g", what, got, want)
	}
}

// Source: Bayes' rule as exact fractions. The haemophilia example, Gelman et al., Bayesian Data Analysis, 3rd ed.,
// section 1.4 (from memory): prior 1/2, two unaffected sons (each has chance 1/2 if she carries, 1 if not) leave 1/5;
// a third leaves 1/9. A test of sensitivity .95 and specificity .9 at a prior of .1: .095 / (.095 + .09) = 19/37.
func TestPosteriorAgainstClosedForm(t *testing.T) {
	son := func(id string) hidden.Evidence { return hidden.Evidence{Finding: id, IfPresent: .5, IfAbsent: 0} }
	carrier := hidden.Risk{Chance: hidden.Beta{A: 1, B: 1}, Findings: []hidden.Evidence{son("one"), son("two"), son("three")}}
	test := hidden.Risk{Chance: hidden.Beta{A: 1, B: 9}, Findings: []hidden.Evidence{{Finding: "test", IfPresent: .95, IfAbsent: .1}}}
	for _, c := range []struct {
		risk    hidden.Risk
		answers map[string]string
		want    float64
	}{
		{carrier, nil, 1. / 2},
		{carrier, map[string]string{"one": "no"}, 1. / 3},
		{carrier, map[string]string{"one": "no", "two": "no"}, 1. / 5},
		{carrier, map[string]string{"one": "no", "two": "no", "three": "no"}, 1. / 9},
		{carrier, map[string]string{"one": "no", "two": "no", "three": "yes"}, 1},
		{test, map[string]string{"test": "yes"}, 19. / 37},
		{test, map[string]string{"test": "no"}, .005 / (.005 + .81)},
		{test, map[string]string{"other": "yes"}, .1},
	} {
		near(t, "posterior", alone(c.risk, c.answers), c.want, 1e-15)
	}
}

func TestOrderOfFindingsIsIrrelevant(t *testing.T) {
	r := hidden.Risk{Chance: hidden.Beta{A: 3, B: 17}, Findings: []hidden.Evidence{{"a", .8, .3}, {"b", .6, .1}, {"c", .2, .5}}}
	answers := map[string]string{"a": "yes", "b": "no", "c": "yes"}
	want := .15 * .8 * .4 * .2 / (.15*.8*.4*.2 + .85*.3*.9*.5)
	for _, order := range [][3]int{{0, 1, 2}, {2, 1, 0}, {1, 2, 0}} {
		turned := r
		turned.Findings = []hidden.Evidence{r.Findings[order[0]], r.Findings[order[1]], r.Findings[order[2]]}
		near(t, "posterior", alone(turned, answers), want, 1e-15)
	}
	step := r // one answer after the other: the posterior of the first is the prior of the next
	p := alone(hidden.Risk{Chance: r.Chance}, nil)
	for _, e := range r.Findings {
		step.Chance, step.Findings = hidden.Beta{A: p, B: 1 - p}, []hidden.Evidence{e}
		p = alone(step, answers)
	}
	near(t, "step by step", p, want, 1e-15)
}

func TestContradictionKeepsThePrior(t *testing.T) {
	r := hidden.Risk{Chance: hidden.Beta{A: 1, B: 3}, Findings: []hidden.Evidence{{"proof", .5, 0}, {"alibi", 0, .5}}}
	both := map[string]string{"proof": "yes", "alibi": "yes"}
	if !r.Contradicted(both) || alone(r, both) != .25 {
		t.Errorf("proof and alibi: contradicted %v, posterior %g", r.Contradicted(both), alone(r, both))
	}
	one := map[string]string{"proof": "yes", "alibi": "no"}
	if r.Contradicted(one) || alone(r, one) != 1 {
		t.Errorf("proof alone: contradicted %v, posterior %g", r.Contradicted(one), alone(r, one))
	}
}

func TestRaise(t *testing.T) {
	entry := func(id string, signs ...lot.Sign) hidden.Entry {
		return hidden.Entry{Risk: hidden.Risk{ID: id, Name: id}, Triggers: signs}
	}
	c := hidden.Catalogue{Risks: []hidden.Entry{
		entry("rail", lot.Sign{Areas: []string{"12"}}, lot.Sign{Areas: []string{"11"}}), entry("wet", lot.Sign{Loss: []string{"flood"}}),
		entry("mount", lot.Sign{Areas: []string{"12"}}), entry("dull", lot.Sign{Areas: []string{"12"}}), entry("none"),
	}}
	own := []hidden.Risk{{ID: "mount", Name: "mine"}, {ID: "dull", Removed: true}, {ID: "extra", Name: "extra"}}
	survey := []lot.Damage{{Area: "12", Extent: "minor", Depth: "skin"}, {Area: "11", Extent: "minor", Depth: "skin"}}
	var got []string
	for _, r := range hidden.Raise(own, c, lot.Lot{Loss: []string{"collision"}}, survey) {
		got = append(got, r.ID+" "+r.Name)
	}
	if want := []string{"mount mine", "extra extra", "rail rail"}; !slices.Equal(got, want) {
		t.Errorf("raised %q, want %q", got, want)
	}
}

// Closed form: a risk of chance p and certain cost costs p x cost; nothing where it is not there.
func TestDrawOfARisk(t *testing.T) {
	const n = 2000
	d := prob.NewDraws(n, 3)
	factor := make([]float64, n)
	d.Column("lot/factor", factor)
	r := hidden.Risk{ID: "r", Cost: prob.Certain(500), Days: prob.Certain(4), Hours: map[string]prob.Three{"body": prob.Certain(3)}}
	out := r.Draw(hidden.There{Chance: .25}, hidden.Setting{Draws: d, Factor: factor, Rates: map[string]float64{"body": 40}})
	near(t, "scenarios in which it is there", float64(len(out.At)), n/4, 1)
	for i, cash := range out.Cash {
		row := [4]float64{cash, out.Labour[i], out.Hours[i], out.Days[i]}
		if row != [4]float64{500, 120, 3, 4} {
			t.Fatalf("scenario %d: %v", out.At[i], row)
		}
	}
}

// alone returns the chance of one risk after answers.
func alone(r hidden.Risk, answers map[string]string) float64 {
	return hidden.After([]hidden.Risk{r}, answers, 0).Chances[0]
}

// shared are three risks that one look tells of, each with its own figures, and a look that tells of the first alone.
func shared() []hidden.Risk {
	tells := func(id string, present, absent float64) hidden.Evidence {
		return hidden.Evidence{Finding: id, IfPresent: present, IfAbsent: absent}
	}
	return []hidden.Risk{
		{Chance: hidden.Beta{A: 2, B: 8}, Findings: []hidden.Evidence{tells("ripple", .7, .1), tells("lamp", .8, .2)}},
		{Chance: hidden.Beta{A: 3, B: 7}, Findings: []hidden.Evidence{tells("ripple", .9, .15)}},
		{Chance: hidden.Beta{A: 1, B: 19}, Findings: []hidden.Evidence{tells("ripple", .4, .05)}},
	}
}

// TestASharedAnswerAgainstEnumeration goes through all eight states of three risks: the look stays silent with a chance of
// its own times a factor for each damage that is there (noisy-or), and Bayes' rule gives each risk's chance.
func TestASharedAnswerAgainstEnumeration(t *testing.T) {
	risks := shared()
	event := hidden.Look{Chances: []float64{.2, .3, .05}, Yes: [][2]float64{{.1, .7}, {.15, .9}, {.05, .4}}}
	for _, answer := range []string{"yes", "no"} {
		var all float64
		var there [3]float64
		for state := range 8 {
			prior, no := 1.0, event.Silent()
			for i, p := range event.Chances {
				if state>>i&1 == 1 {
					prior, no = prior*p, no*(1-event.Yes[i][1])/(1-event.Yes[i][0])
				} else {
					prior *= 1 - p
				}
			}
			weight := prior * no
			if answer == "yes" {
				weight = prior * (1 - no)
			}
			all += weight
			for i := range there {
				if state>>i&1 == 1 {
					there[i] += weight
				}
			}
		}
		for i, got := range hidden.After(risks, map[string]string{"ripple": answer}, 0).Chances {
			near(t, answer, got, there[i]/all, 1e-12)
		}
	}
}

// TestAYesIsSharedOut: a look with three possible causes raises them less, together, than if it told of each alone, and a no
// lowers each by as much as its own figures say.
func TestAYesIsSharedOut(t *testing.T) {
	risks := shared()
	yes, no := hidden.After(risks, map[string]string{"ripple": "yes"}, 0).Chances, hidden.After(risks, map[string]string{"ripple": "no"},
		0).Chances
	together, apart := 0.0, 0.0
	for i, r := range risks {
		if prior := r.Chance.Mean(); yes[i] <= prior {
			t.Errorf("risk %d: %.3f before, %.3f after", i, prior, yes[i])
		}
		together, apart = together+yes[i], apart+alone(r, map[string]string{"ripple": "yes"})
		near(t, "no", no[i], alone(r, map[string]string{"ripple": "no"}), 1e-12)
	}
	if together >= .9*apart {
		t.Errorf("together %.3f, each by itself %.3f", together, apart)
	}
	turned := []hidden.Risk{risks[2], risks[0], risks[1]} // the order of risks and of their findings does not matter
	turned[1].Findings = []hidden.Evidence{risks[0].Findings[1], risks[0].Findings[0]}
	both := map[string]string{"ripple": "yes", "lamp": "no"}
	a, b := hidden.After(risks, both, 0).Chances, hidden.After(turned, both, 0).Chances
	near(t, "order", a[0], b[1], 1e-12)
	near(t, "order", a[2], b[0], 1e-12)
}
