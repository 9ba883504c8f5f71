package donor

import (
	"cmp"
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Format is the version of the document that holds the assemblies.
const Format = "walkline-assemblies/1"

// Catalogue is the assemblies that a lot is parted out into. JSON keys are those of its document.
type Catalogue struct {
	Format   string `json:"format"`
	Currency string `json:"currency"`
	Note     string `json:"note"`
	Terms
	Assemblies []Assembly `json:"assemblies"` // in the order in which they are told
}

// Terms are the figures of a catalogue that hold for every vehicle that is parted out.
type Terms struct {
	Selling  float64    `json:"selling"`            // of what a part brings: fees, packing, haggling
	Common   float64    `json:"common"`             // the market's own scatter, as a share of the sum
	Overhead prob.Three `json:"hours"`              // own hours beside those of the assemblies
	Days     prob.Three `json:"days"`               // until most of it is money
	Scrap    prob.Three `json:"scrap" unit:"money"` // what the rest brings
	Runs     Running    `json:"runs"`               // chance that what must run does, by how the vehicle runs
	AfterHit Running    `json:"runs_after_a_hit"`   // the same where it was lost to nothing but a blow, see [blows]
}

// Running is the chance by the running state of the vehicle.
type Running struct {
	Drives    float64 `json:"drives"`
	Starts    float64 `json:"starts"`
	TurnsOver float64 `json:"turns_over"`
	Dead      float64 `json:"dead"`
	Unknown   float64 `json:"unknown"`
}

// Assembly is what is taken off and sold as one.
type Assembly struct {
	ID          string            `json:"id"`
	Name        string            `json:"name"`
	Share       prob.Three        `json:"share"` // of the clean resale level; nothing: the price counts
	Price       prob.Three        `json:"price" unit:"money"`
	Chance      float64           `json:"chance"` // that it sells when sound
	Hours       float64           `json:"hours"`
	Near        map[string]string `json:"near"`             // damaged area -> the least extent that spoils it, or Marks
	Depth       string            `json:"depth"`            // the least depth that reaches it; empty: any
	Missing     []string          `json:"missing"`          // keys of the survey's missing parts that take it away
	Bags        []string          `json:"airbags_deployed"` // deployed airbags that spoil it
	Causes      []string          `json:"mechanical"`       // causes of a mechanical loss that spoil it
	Powertrains []string          `json:"powertrains"`      // that have it; empty: all
	Kinds       []string          `json:"kinds"`            // of vehicle that have it; empty: all
	Runs        bool              `json:"runs"`             // it sells as good only where it runs
	Restricted  bool              `json:"restricted"`       // off unless the law there allows its sale
	Caution     string            `json:"caution"`
}

// Marks stands in the place of an extent where damage in an area leaves a doubt, however great, and never spoils the assembly.
const Marks = "marks"

// marked is what is left of the chance of a part that is marked, though not spoiled, in however many areas. Starter value, from memory.
const marked = 0.75

// outside are the areas that are hit from without, where it counts how deep a hit goes; what lies within is reached by any damage there.
var outside = map[string]bool{"01": true, "02": true, "03": true, "04": true, "05": true, "06": true, "07": true, "08": true, "09": true,
	"10": true, "11": true, "12": true, "top": true, "undercarriage": true}

// blows are the causes of loss that leave the works alone: a vehicle that is dead after one is mostly cut off by its crash switch, a fuse
// or a flat battery. Common practice, no source; the chances follow the odds that the catalogue of risks has for a seized engine.
var blows = []string{"collision", "theft", "hail", "vandalism"}

// starterAfterHit stands in for the chances after a blow of a catalogue that has none. Starter values, from memory.
var starterAfterHit = Running{Drives: 1, Starts: 0.97, TurnsOver: 0.87, Dead: 0.75, Unknown: 0.8}

// running returns the chances that what must run does on a lot.
func (c Catalogue) running(l lot.Lot) Running {
	if !blown(l) {
		return c.Runs
	}
	if c.AfterHit == (Running{}) {
		return starterAfterHit
	}
	return c.AfterHit
}

// blown reports whether a lot was lost to nothing but a blow.
func blown(l lot.Lot) bool {
	other := func(cause string) bool { return !slices.Contains(blows, cause) }
	return len(l.Loss) > 0 && !slices.ContainsFunc(l.Loss, other)
}

// StandsIn reports whether the chance that what must run does after a blow is a starter value on this lot, since the catalogue has none.
func (c Catalogue) StandsIn(l lot.Lot) bool { return blown(l) && c.AfterHit == (Running{}) }

// sound returns the chance that the assembly is there and sound; 0 where it is not.
func (a Assembly) sound(l lot.Lot, damage []lot.Damage, runs Running) float64 {
	if !a.fits(l) || slices.ContainsFunc(l.Airbags, func(bag string) bool { return slices.Contains(a.Bags, bag) }) {
		return 0
	}
	chance, doubt := 1.0, 1.0
	for _, d := range damage {
		least, near := a.Near[d.Area]
		switch {
		case !near || outside[d.Area] && slices.Index(lot.Depths, d.Depth) < slices.Index(lot.Depths, a.Depth):
		case least != Marks && slices.Index(lot.Extents, d.Extent) >= slices.Index(lot.Extents, least):
			return 0
		default:
			doubt = marked
		}
	}
	if a.Runs {
		chance *= runs.of(l.Condition)
	}
	return chance * doubt
}

// fits reports whether a vehicle of that kind has the assembly, and has it still. A kind or powertrain that is not known is the usual one:
// nothing is offered that may not be there.
func (a Assembly) fits(l lot.Lot) bool {
	among := func(words []string, word, usual string) bool {
		return len(words) == 0 || slices.Contains(words, cmp.Or(word, usual))
	}
	has := func(words []string) func(string) bool {
		return func(word string) bool { return slices.Contains(words, word) }
	}
	causes := []string{}
	if slices.Contains(l.Loss, "mechanical") {
		causes = append(causes, "unknown")
	}
	var s lot.Survey
	if l.Survey != nil {
		s = *l.Survey
	}
	if len(s.Causes) > 0 {
		causes = s.Causes
	}
	if !among(a.Powertrains, s.Powertrain, lot.Powertrains[0]) || !among(a.Kinds, s.Kind, lot.Kinds[0]) ||
		slices.ContainsFunc(s.Missing, has(a.Missing)) {
		return false
	}
	return !slices.ContainsFunc(causes, has(a.Causes))
}

// of returns the chance of a running state; one that is not known counts as such.
func (r Running) of(condition string) float64 {
	switch condition {
	case "drives":
		return r.Drives
	case "starts":
		return r.Starts
	case "turns_over":
		return r.TurnsOver
	case "dead":
		return r.Dead
	}
	return r.Unknown
}
