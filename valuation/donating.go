package valuation

import (
	"cmp"
	"fmt"
	"slices"

	"walkline/valuation/donor"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// donor adds the faults of a donor vehicle.
func (f *faults) donor(d *repair.Donor) {
	if d == nil {
		return
	}
	f.words("repair.donor.hit", d.Hit, lot.Areas)
	f.three("repair.donor.price", d.Price)
	f.unless(d.Price.Low > 0, "repair.donor.price.low", d.Price.Low, "what the donor costs: more than 0")
	f.three("repair.donor.freight", d.Freight)
	f.spell("repair.donor.lead_days", d.LeadDays)
	f.hours("repair.donor.hours", d.Hours)
	f.chance("repair.donor.sound", d.Sound)
	f.three("repair.donor.brings", d.Brings)
	f.unless(d.Brings.Likely <= d.Price.Likely && d.Brings.High <= d.Price.High, "repair.donor.brings", d.Brings.Likely,
		"no more than the donor costs: a gain beyond it is a trade of its own")
}

// ProposeDonor returns a donor vehicle with starter values for a case: what one costs and takes as the job catalogue has it, the lines that
// it can feed (all with a used source), and what the rest of it brings from the assemblies that neither its own damage nor those lines
// take.
// What the case says of one already stays, but for what the rest brings while that is a starter value; said names what could not be
// proposed. Limits: as [Value].
func ProposeDonor(c Case, k Knowledge, allowed bool) (d repair.Donor, said string) {
	if c.Repair.Donor == nil {
		d = startDonor(c, k)
	} else {
		d = Copy(*c.Repair.Donor)
	}
	if !d.Starter {
		return d, ""
	}
	if d.Price.Zero() {
		return d, "The job catalogue has no price of a donor in " + c.Currency + ": enter the catalogue's rate under Costs."
	}
	d.Brings, said = leftOver(c, k, d, allowed)
	return d, said
}

// startDonor returns what the catalogue knows of a donor vehicle, nothing of its price where there is no rate for the catalogue's money.
func startDonor(c Case, k Knowledge) repair.Donor {
	sound := repair.UsuallySound
	d := repair.Donor{Starter: true, Sound: &sound}
	for _, l := range Plan(c, k) {
		if usedFor(l.Line) {
			d.Feeds = append(d.Feeds, l.ID)
		}
	}
	for _, j := range k.Jobs.Jobs {
		rate, given := c.rate(cmp.Or(j.Currency, k.Jobs.Currency))
		if j.ID != repair.DonorJob || len(j.Parts) == 0 || len(j.Parts[0].Options) == 0 || !given {
			continue
		}
		o := j.Parts[0].Options[0]
		d.Price, d.Freight, d.LeadDays, d.Hours = o.Price.Times(rate), o.Freight.Times(rate), o.LeadDays, Copy(j.Hours)
	}
	return d
}

// usedFor reports whether a part of a line may be had used.
func usedFor(l repair.Line) bool {
	return slices.ContainsFunc(l.Parts, func(p repair.Part) bool {
		return slices.ContainsFunc(p.Options, func(o repair.Option) bool { return o.Source == "used" })
	})
}

// leftOver returns what a donor brings beside what it feeds: the assemblies of such a vehicle, all places that it gives parts from, and
// those where it is hit itself, taken as spoiled. Errors: why it can't be said, in words.
func leftOver(c Case, k Knowledge, d repair.Donor, allowed bool) (prob.Three, string) {
	rate, given := c.rate(k.Parts.Currency)
	switch {
	case len(d.Hit) == 0:
		return prob.Three{}, "What the rest of it brings counts as nothing until you say where the donor is damaged itself."
	case len(k.Parts.Assemblies) == 0 || !given:
		return prob.Three{}, fmt.Sprintf("What the rest of it brings needs a catalogue of assemblies in %s, or its rate under Costs.", c.Currency)
	}
	w := work{c: c, k: k}
	w.currency, _ = money.Lookup(c.Currency)
	w.market = NewMemory().doubtful(c, c.beliefs(w.currency), k.Prior)
	if w.market.model.Err() != nil {
		return prob.Three{}, "What the rest of it brings needs a resale price: comparables, or a guess."
	}
	var gone []lot.Damage
	for _, area := range d.Hit {
		gone = append(gone, lot.Damage{Area: area, Extent: "disabling", Depth: "structure"})
	}
	for _, l := range Plan(c, k) {
		if d.Fed(l.ID) && l.Area != "" {
			gone = append(gone, lot.Damage{Area: l.Area, Extent: "disabling", Depth: "structure"})
		}
	}
	made := k.Parts.In(rate).Propose(twin(c), gone, w.currency.Major(w.before()), allowed)
	return least(made, c, d.Price), ""
}

// twin is a vehicle of the lot's kind with nothing known against it.
func twin(c Case) lot.Lot {
	l := lot.Lot{ModelYear: c.Lot.ModelYear, Make: c.Lot.Make, Model: c.Lot.Model}
	if s := c.Survey; s != nil {
		l.Survey = &lot.Survey{Kind: s.Kind, Powertrain: s.Powertrain}
	}
	return l
}

// least returns the money of a proposal less the hours that it takes at their rate, none of it above what the donor costs.
func least(p donor.Proposal, c Case, price prob.Three) prob.Three {
	rate := c.Labour.Rates[lot.Trades[0]]
	net := func(brings, hours, most float64) float64 { return min(max(0, brings-hours*rate), most) }
	return prob.Three{Low: net(p.Money.Low, p.Hours.High, price.Low), Likely: net(p.Money.Likely, p.Hours.Likely, price.Likely),
		High: net(p.Money.High, p.Hours.Low, price.High)}
}
