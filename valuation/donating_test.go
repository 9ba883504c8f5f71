package valuation_test

import (
	"math"
	"slices"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// fedCase is a lot with three lines of certain figures; each part costs 500 used.
func fedCase() valuation.Case {
	c := sure()
	c.Repair.UseCatalogue, c.Hidden.UseCatalogue, c.Repair.Lines, c.Hidden.Risks = false, false, nil, nil
	for _, id := range []string{"hood", "door", "lamp"} {
		c.Repair.Lines = append(c.Repair.Lines, repair.Line{ID: id, Job: "Replace the " + id, Area: "12", Parts: []repair.Part{{Name: id,
			Options: []repair.Option{{Source: "used", Price: prob.Certain(500)}}}}})
	}
	return c
}

// A donor is paid once, however many lines it feeds; its rest comes back once. The sums are done by hand.
func TestADonorIsPaidOnce(t *testing.T) {
	one := 1.0
	c := fedCase()
	cost := func(feeds ...string) float64 {
		c.Repair.Donor = &repair.Donor{Feeds: feeds, Price: prob.Certain(900), Freight: prob.Certain(100), Sound: &one,
			Brings: prob.Certain(300)}
		if faults := c.Check(); len(faults) > 0 {
			t.Fatal(faults)
		}
		a, err := valuation.Value(c, valuation.Knowledge{})
		if err != nil {
			t.Fatal(err)
		}
		return a.Repair.Mean
	}
	for want, feeds := range map[float64][]string{700 + 1500: nil, 700 + 1000: {"hood"}, 700 + 500: {"hood", "lamp"},
		700: {"hood", "door", "lamp"}} {
		if got := cost(feeds...); math.Abs(got-want) > .01 {
			t.Errorf("feeding %v costs %.2f, want %.2f", feeds, got, want)
		}
	}
	half := .5
	c.Repair.Donor.Sound, c.Repair.Donor.Feeds = &half, []string{"hood", "door", "lamp"}
	a, err := valuation.Value(c, valuation.Knowledge{})
	if err != nil || math.Abs(a.Repair.Mean-(700+3*250)) > 30 { // three even coins over the scenarios: within 4 standard errors
		t.Errorf("where half of the parts can be used: %.2f, %v", a.Repair.Mean, err)
	}
}

// On the catalogue, a donor that the buyer plans with takes the place of the one that the catalogue guesses at, what the donor lacks is had
// from the usual sources, and the shopping list asks it first.
func TestADonorStandsBeforeTheOtherSources(t *testing.T) {
	know := shipped(t)
	var faults []valuation.Fault
	if know.Parts, faults = casefile.Assemblies(assets.Assemblies()); len(faults) > 0 {
		t.Fatal(faults)
	}
	c := sure()
	c.Repair.UseCatalogue = true
	c.Damage = []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}
	d, said := valuation.ProposeDonor(c, know, false)
	if said == "" || !d.Brings.Zero() || len(d.Feeds) < 5 || d.Price.Likely != 2900 || !slices.Contains(d.Feeds, "hood_replace") {
		t.Fatalf("%+v, %q", d, said)
	}
	d.Hit = []string{"06", "05", "07"}
	c.Repair.Donor = &d
	front, said := valuation.ProposeDonor(c, know, false)
	if said != "" || front.Brings.Zero() || front.Brings.High > front.Price.High {
		t.Fatalf("the rest of one hit at the rear brings %+v, %q", front.Brings, said)
	}
	d.Hit = lot.Areas
	if all, _ := valuation.ProposeDonor(c, know, false); all.Brings.Likely >= front.Brings.Likely {
		t.Errorf("one hit everywhere brings %+v, at the rear %+v", all.Brings, front.Brings)
	}
	plan := valuation.Plan(c, know)
	if plan[0].ID != repair.DonorLine || slices.ContainsFunc(plan, func(l valuation.PlannedLine) bool { return l.ID == repair.DonorJob }) {
		t.Errorf("the plan begins with %s", plan[0].ID)
	}
	bought, first := 0, map[string]bool{}
	for _, x := range valuation.Shopping([]valuation.Case{c}, know) {
		if x.Source == repair.DonorSource && x.Price.Likely > 0 {
			bought++
		}
		first[x.Line] = first[x.Line] || x.Source == repair.DonorSource && x.Turn == 1 && x.Price.Zero()
	}
	if bought != 1 || !first["hood_replace"] {
		t.Errorf("%d donors are bought; the hood asks it first: %v", bought, first["hood_replace"])
	}
	var none donor.Catalogue
	know.Parts = none
	if d, said := valuation.ProposeDonor(c, know, false); said == "" || !d.Brings.Zero() {
		t.Errorf("without assemblies: %+v %q", d.Brings, said)
	}
}
