package assets_test

import (
	"testing"

	"walkline/valuation"
	"walkline/valuation/money"
	"walkline/valuation/repair"
)

// A source that has the part more often, or has it sooner, never lowers the bid: of each wreck all sources are made better, every kind of
// change by itself. Sources are tried in the order of their expected cost, which a better one may change.
func TestBetterSourcesNeverLowerTheBid(t *testing.T) {
	better := map[string]func(*repair.Option){
		"more often": func(o *repair.Option) {
			if o.Chance != nil {
				more := *o.Chance + (1-*o.Chance)/2
				o.Chance = &more
			}
		},
		"sooner": func(o *repair.Option) { o.LeadDays = o.LeadDays.Times(.5) },
	}
	for _, name := range []string{"01_light_front", "03c_corner_functional_bolted", "04b_side_doors_bolted", "13_vandalism"} {
		c := wreck(t, name)
		c.Run.Scenarios = 4096
		was := bidOf(t, c, starter(t))
		for what, change := range better {
			k := valuation.Copy(starter(t))
			for j := range k.Jobs.Jobs {
				for p := range k.Jobs.Jobs[j].Parts {
					for o := range k.Jobs.Jobs[j].Parts[p].Options {
						change(&k.Jobs.Jobs[j].Parts[p].Options[o])
					}
				}
			}
			if now := bidOf(t, c, k); now < was {
				t.Errorf("%s: sources that have it %s lower the bid from %d to %d", name, what, was/100, now/100)
			}
		}
	}
}

func bidOf(t *testing.T, c valuation.Case, k valuation.Knowledge) money.Amount {
	t.Helper()
	a, err := valuation.Value(c, k)
	if err != nil || a.WalkAway == nil {
		t.Fatal(err, a.Reasons)
	}
	return *a.WalkAway
}
