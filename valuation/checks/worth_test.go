package checks

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"walkline/valuation/hidden"
	"walkline/valuation/prob"
)

func plain(x float64) float64 { return x }

func certainHammer(x float64) Surplus { return NewSurplus(prob.Certain(x), plain) }

// The surplus against a sum over 200,000 even quantiles of the hammer price, with a fee table that falls at 3,000.
func TestSurplusAgainstASum(t *testing.T) {
	hammer := prob.Three{Low: 2000, Likely: 3000, High: 4400}
	cost := func(x float64) float64 {
		if x < 3000 {
			return x + 400
		}
		return x + 250
	}
	s := NewSurplus(hammer, cost)
	const n = 200000
	table := hammer.Score()
	for _, most := range []float64{0, 2400, 2600, 3100, 3400, 3500, 4000, 4649, 4650, 9000} {
		want := 0.0
		for i := range n {
			z := prob.NormQuantile((float64(i) + .5) / n)
			want += max(0, most-cost(table.At(z))) / n
		}
		near(t, fmt.Sprintf("surplus at %g", most), s.At(most), want, 2.5) // a jump inside a step of the guess is read as a slope
	}
}

// randomStakes returns a case of up to four risks and four findings, some of which inform several.
func randomStakes(r *rand.Rand) Stakes {
	s := Stakes{Surplus: NewSurplus(prob.Three{Low: 2000, Likely: 2000 + 2000*r.Float64(), High: 4400}, plain), Most: 1000 + 4500*r.Float64()}
	names := []string{"a", "b", "c", "d"}
	for i := range 1 + r.IntN(4) {
		risk := hidden.Risk{ID: names[i], Chance: hidden.Beta{A: 1, B: 1}}
		for _, f := range names {
			if r.Float64() < .6 {
				risk.Findings = append(risk.Findings, hidden.Evidence{Finding: f, IfPresent: r.Float64(), IfAbsent: r.Float64()})
			}
		}
		s.Risks, s.Chances, s.IfThere = append(s.Risks, risk), append(s.Chances, r.Float64()), append(s.IfThere, 3000*r.Float64())
	}
	for _, f := range names {
		s.Findings = append(s.Findings, hidden.Finding{ID: f})
	}
	return s
}

// state is one of the ways in which the risks may lie.
func (s Stakes) state(bits int) (chance, cost float64) {
	chance = 1
	for i, p := range s.Chances {
		if bits>>i&1 == 1 {
			chance *= p
			cost += s.IfThere[i]
		} else {
			chance *= 1 - p
		}
	}
	return chance, cost
}

// counted returns the worth of a look by going through every state of every risk: the surplus after each answer, by the
// chance of that answer, less the surplus now. said is the chance of each answer in a state.
func (s Stakes) counted(answers int, said func(answer, bits int) float64) float64 {
	mean := 0.0
	for bits := range 1 << len(s.Risks) {
		p, cost := s.state(bits)
		mean += p * cost
	}
	after := 0.0
	for k := range answers {
		chance, expected := 0.0, 0.0
		for bits := range 1 << len(s.Risks) {
			p, cost := s.state(bits)
			chance += p * said(k, bits)
			expected += p * said(k, bits) * cost
		}
		if chance > 0 {
			after += chance * s.Surplus.At(s.Most+mean-expected/chance)
		}
	}
	return after - s.Surplus.At(s.Most)
}

func TestWorthAgainstEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	several := 0
	for range 400 {
		s := randomStakes(r)
		perfect := s.counted(1<<len(s.Risks), func(k, bits int) float64 {
			if k == bits {
				return 1
			}
			return 0
		})
		worth := s.Worth()
		for _, l := range s.looks() {
			if len(l.informs) == 0 {
				continue
			}
			silent := l.event().Silent()
			no := func(bits int) float64 {
				p := silent
				for _, i := range l.informs {
					if bits>>i.risk&1 == 1 {
						p *= (1 - i.yes[1]) / (1 - i.yes[0])
					}
				}
				if p < -1e-12 || p > 1+1e-9 {
					t.Fatalf("a chance of %g", p)
				}
				return p
			}
			want := s.counted(2, func(k, bits int) float64 { return math.Abs(float64(1-k) - no(bits)) })
			got := worth[l.finding.ID]
			near(t, "worth", got, want, 1e-5)
			if got < 0 || got > perfect+1e-6 {
				t.Errorf("worth %g, perfect information %g", got, perfect)
			}
			if len(l.informs) > 1 && got > 1 {
				several++
			}
		}
		near(t, "perfect information", s.Perfect(), perfect, .01*perfect+3)
	}
	if several < 50 {
		t.Errorf("only %d looks at several risks were worth something", several)
	}
}

// With one risk, the answers are those of package hidden: chance of yes and no by total probability, posterior by odds.
func TestOneRiskIsBayes(t *testing.T) {
	risk := hidden.Risk{ID: "r", Chance: hidden.Beta{A: 2, B: 6}, Findings: []hidden.Evidence{{Finding: "f", IfPresent: .8, IfAbsent: .1}}}
	s := Stakes{Risks: []hidden.Risk{risk}, Chances: []float64{.25}, IfThere: []float64{1000}, Findings: []hidden.Finding{{ID: "f"}}}
	got := s.looks()[0].answers()
	near(t, "chance of yes", got[0].chance, .25*.8+.75*.1, 1e-12)
	for k, word := range []string{"yes", "no"} {
		near(t, word, got[k].payoff[0], 1000*(.25-hidden.After([]hidden.Risk{risk}, map[string]string{"f": word}, 0).Chances[0]), 1e-9)
	}
}

// A look whose answers leave the lot out of reach, or bought at every hammer price, is worth nothing; one that costs
// nothing to be wrong about is too.
func TestWorthIsNothingWhereNothingChanges(t *testing.T) {
	risk := hidden.Risk{ID: "r", Findings: []hidden.Evidence{{Finding: "f", IfPresent: .8, IfAbsent: .1}}}
	s := Stakes{Risks: []hidden.Risk{risk}, Chances: []float64{.25}, IfThere: []float64{500}, Findings: []hidden.Finding{{ID: "f"}},
		Surplus: NewSurplus(prob.Three{Low: 2000, Likely: 3000, High: 4400}, plain)}
	for most, want := range map[float64]bool{1000: false, 1800: false, 2200: true, 3000: true, 4300: true, 4800: false, 9000: false} {
		s.Most = most
		if got := s.Worth()["f"]; (got > 0) != want {
			t.Errorf("at %g the look is worth %g", most, got)
		}
	}
	s.Most, s.IfThere = 3000, []float64{0}
	if got := s.Worth()["f"]; got != 0 {
		t.Errorf("damage that costs nothing: %g", got)
	}
}

// Looks at risks of their own, against going through every state and every set of answers.
func TestJointWorthAgainstEnumeration(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 60 {
		s := Stakes{Surplus: NewSurplus(prob.Three{Low: 2000, Likely: 3000, High: 4400}, plain), Most: 2000 + 2500*r.Float64()}
		type seen struct{ risk, a, b float64 }
		var looks []seen
		var ids []string
		for i := range 2 {
			risk := hidden.Risk{ID: fmt.Sprint(i)}
			for j := range 2 {
				f := fmt.Sprint(i, j)
				e := hidden.Evidence{Finding: f, IfPresent: r.Float64(), IfAbsent: r.Float64()}
				risk.Findings = append(risk.Findings, e)
				looks, ids = append(looks, seen{float64(i), e.IfPresent, e.IfAbsent}), append(ids, f)
				s.Findings = append(s.Findings, hidden.Finding{ID: f})
			}
			s.Risks, s.Chances, s.IfThere = append(s.Risks, risk), append(s.Chances, r.Float64()), append(s.IfThere, 2000*r.Float64())
		}
		want := s.counted(1<<len(looks), func(k, bits int) float64 {
			p := 1.0
			for n, l := range looks {
				yes := l.b
				if bits>>int(l.risk)&1 == 1 {
					yes = l.a
				}
				if k>>n&1 == 0 {
					yes = 1 - yes
				}
				p *= yes
			}
			return p
		})
		got := s.JointWorth(ids)
		near(t, "joint worth", got, want, .01*want+2)
		if got > s.Perfect()+2 || got < s.JointWorth(ids[:3])-2 || s.JointWorth(nil) != 0 {
			t.Errorf("joint worth %g, of three %g, perfect %g", got, s.JointWorth(ids[:3]), s.Perfect())
		}
	}
}

// BenchmarkLook prints how many times faster a look that tells of ten risks is weighed as a product than by going through
// all states of the risks, which is the baseline; both give the same worth.
func BenchmarkLook(b *testing.B) {
	r := rand.New(rand.NewPCG(7, 8))
	s := Stakes{Surplus: NewSurplus(prob.Three{Low: 2000, Likely: 3000, High: 4400}, plain), Most: 3200, Findings: []hidden.Finding{{ID: "f"}}}
	for i := range 10 {
		s.Risks = append(s.Risks, hidden.Risk{ID: fmt.Sprint(i), Findings: []hidden.Evidence{{Finding: "f", IfPresent: .6, IfAbsent: .2}}})
		s.Chances, s.IfThere = append(s.Chances, .3*r.Float64()), append(s.IfThere, 900*r.Float64())
	}
	l := s.looks()[0]
	states := func(answer, bits int) float64 {
		no := l.event().Silent()
		for _, i := range l.informs {
			if bits>>i.risk&1 == 1 {
				no *= (1 - i.yes[1]) / (1 - i.yes[0])
			}
		}
		return math.Abs(float64(1-answer) - no)
	}
	if got, want := s.Worth()["f"], s.counted(2, states); math.Abs(got-want) > 1e-6 {
		b.Fatalf("worth %g, counted %g", got, want)
	}
	start := time.Now()
	for range 100 {
		s.counted(2, states)
	}
	counted := time.Since(start) / 100
	for b.Loop() {
		s.Worth()
	}
	b.ReportMetric(float64(counted)*float64(b.N)/float64(b.Elapsed()), "times-faster-than-all-states")
}

// BenchmarkRank ranks 100 findings on 80 risks, with perfect information and three rounds.
func BenchmarkRank(b *testing.B) {
	r := rand.New(rand.NewPCG(5, 6))
	s := Stakes{Surplus: NewSurplus(prob.Three{Low: 2000, Likely: 3000, High: 4400}, plain), Most: 3200}
	var items []Item
	for i := range 100 {
		id := fmt.Sprint(i)
		s.Findings = append(s.Findings, hidden.Finding{ID: id, Minutes: 2})
		items = append(items, Item{ID: id, Kind: "inspection", Minutes: 2})
	}
	for i := range 80 {
		risk := hidden.Risk{ID: fmt.Sprint(i)}
		for range 3 {
			risk.Findings = append(risk.Findings, hidden.Evidence{Finding: fmt.Sprint(r.IntN(100)), IfPresent: .5 + .4*r.Float64(),
				IfAbsent: .3 * r.Float64()})
		}
		s.Risks, s.Chances, s.IfThere = append(s.Risks, risk), append(s.Chances, .4*r.Float64()), append(s.IfThere, 1200*r.Float64())
	}
	for b.Loop() {
		Rank(items, s)
	}
}
