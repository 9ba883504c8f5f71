package repair

import (
	"slices"

	"walkline/valuation/prob"
)

// The ids of the line of a donor vehicle that the buyer plans with, and of the catalogue's job that guesses at one.
const (
	DonorLine = "donor_bought"
	DonorJob  = "donor_vehicle"
)

// DonorSource is the source of what comes off a donor vehicle.
const DonorSource = "donor"

// Donor is one vehicle bought whole for its parts. It is paid once, however many lines it feeds, and what is not used is sold. JSON keys
// are those of the case file, money is in major units of the case's currency.
type Donor struct {
	Vehicle  string                `json:"vehicle"` // which it is, in words
	Hit      []string              `json:"hit"`     // where it is damaged itself, codes of lot.Areas
	Feeds    []string              `json:"feeds"`   // ids of the lines whose parts come off it
	Price    prob.Three            `json:"price" unit:"money"`
	Freight  prob.Three            `json:"freight" unit:"money"`
	LeadDays prob.Three            `json:"lead_days"`
	Hours    map[string]prob.Three `json:"hours"`               // to strip it, by trade
	Sound    *float64              `json:"sound"`               // chance that a part of it can be used; nil: [UsuallySound]
	Brings   prob.Three            `json:"brings" unit:"money"` // what the rest of it is sold for, selling paid
	Starter  bool                  `json:"starter"`             // its figures are starter values still
}

// UsuallySound is the chance that what comes off a donor can be used. Starter value, from memory.
const UsuallySound = 0.9

// caution stands at a donor's line. Common practice, no source.
const donorCaution = "Whether a used part may go in, and where a section may be cut or joined, the maker's procedure and the local law " +
	"decide. Airbags of a donor fit only where the law allows them and no recall is open. Drain fuel, refrigerant and high-voltage packs " +
	"by trained hands. Keep its title and bill of sale."

// Fed reports whether parts of a line come off the donor.
func (d *Donor) Fed(id string) bool { return d != nil && slices.Contains(d.Feeds, id) }

// Take has parts of a line come off the donor, or no more; without a donor nothing does.
func (d *Donor) Take(id string, on bool) {
	switch {
	case d == nil:
	case on && !d.Fed(id):
		d.Feeds = append(slices.Clone(d.Feeds), id)
	case !on:
		d.Feeds = slices.DeleteFunc(slices.Clone(d.Feeds), func(fed string) bool { return fed == id })
	}
}

// Beside returns lines of a lot with a donor (nil: none) so that the catalogue guesses at no other one beside it.
func (d *Donor) Beside(own []Line) []Line {
	if d != nil && !slices.ContainsFunc(own, func(l Line) bool { return l.ID == DonorJob }) {
		own = append(slices.Clone(own), Line{ID: DonorJob, Removed: true})
	}
	return own
}

// Feed returns lines with the donor's own before them, each that it feeds with the donor before its other sources. What proves unfit is
// had from those.
func (d *Donor) Feed(lines []Line) []Line {
	if d == nil {
		return lines
	}
	out := []Line{d.line()}
	sound := Or(d.Sound, UsuallySound)
	for _, l := range lines {
		if d.Fed(l.ID) {
			l.Parts = slices.Clone(l.Parts)
			for i, p := range l.Parts {
				p.Options = slices.DeleteFunc(slices.Clone(p.Options), func(o Option) bool { return o.Source == DonorSource })
				p.Options = append([]Option{{Source: DonorSource, Chance: &sound}}, p.Options...)
				l.Parts[i] = p
			}
		}
		out = append(out, l)
	}
	return out
}

// line is the donor as a line of work: it is bought for certain, and what the rest of it brings comes back.
func (d *Donor) line() Line {
	job := "Buy a donor vehicle and strip it"
	if d.Vehicle != "" {
		job += ": " + d.Vehicle
	}
	why := "You plan with it: paid once, and the lines that it feeds ask it first."
	if d.Starter {
		why += " Starter values, from memory, stand for what you have not entered: ask for the price of a real one."
	}
	return Line{ID: DonorLine, Job: job, Operation: "replace", Hours: d.Hours, Caution: donorCaution, Why: why,
		Parts: []Part{{Name: "donor vehicle", Options: []Option{{Source: DonorSource, Price: d.Price, Freight: d.Freight, LeadDays: d.LeadDays,
			CoreBack: d.Brings}}}}}
}
