package valuation

import (
	"fmt"
	"slices"

	"walkline/valuation/donor"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// OwnFormat is the version of the document that holds a shop's changes to the catalogues.
const OwnFormat = "walkline-own/1"

// Own is what a shop changed in the catalogues or added to them: whole entries, by their ids.
type Own struct {
	Format   string           `json:"format"`
	Currency string           `json:"currency"`
	Jobs     []repair.Job     `json:"jobs"`
	Risks    []hidden.Entry   `json:"risks"`
	Findings []hidden.Finding `json:"findings"`

	Assemblies []donor.Assembly `json:"assemblies"` // what a vehicle is parted out into
	Parting    *donor.Terms     `json:"parting"`    // what holds for all of them; nil: as the starter has it

	// JobScales and RiskScales say how the vehicle changes what all jobs and all risks cost; empty: as the starter has it.
	JobScales  []lot.Scale `json:"job_scales"`
	RiskScales []lot.Scale `json:"risk_scales"`
}

// With returns the knowledge with a shop's own entries instead of those of the same ids, and the rest of them behind. An
// entry that has a fault is left out, so that what it would replace stays.
func (k Knowledge) With(o Own) Knowledge {
	bad := map[string]bool{}
	for _, f := range k.CheckOwn(o) {
		bad[f.ID] = true
	}
	if !bad[scalesID] {
		k.Jobs.Scales, k.Risks.Scales = scales(k.Jobs.Scales, o.JobScales), scales(k.Risks.Scales, o.RiskScales)
	}
	if o.Parting != nil && !bad[partingID] {
		k.Parts.Terms = *o.Parting
	}
	k.Parts.Assemblies = laid(k.Parts.Assemblies, o.Assemblies, assemblyID, bad)
	k.Risks.Findings = laid(k.Risks.Findings, o.Findings, func(f hidden.Finding) string { return f.ID }, bad)
	k.Jobs.Jobs = laid(k.Jobs.Jobs, renamed(o.Jobs, bad, other(o.Currency, k.Jobs.Currency)), func(j repair.Job) string { return j.ID }, bad)
	risks := slices.Clone(o.Risks)
	for i := range risks {
		risks[i].Currency = other(o.Currency, k.Risks.Currency)
	}
	k.Risks.Risks = laid(k.Risks.Risks, risks, func(r hidden.Entry) string { return r.ID }, bad)
	return k
}

func assemblyID(a donor.Assembly) string { return a.ID }

// other returns a currency where it is not the catalogue's.
func other(code, catalogue string) string {
	if code == catalogue {
		return ""
	}
	return code
}

// renamed returns the jobs that have no fault under the ids that they have now, in the shop's currency.
func renamed(jobs []repair.Job, bad map[string]bool, currency string) []repair.Job {
	var out []repair.Job
	for _, j := range jobs {
		if !bad[j.ID] {
			j.ID, j.Currency = lot.JobID(j.ID), currency
			out = append(out, j)
		}
	}
	return out
}

// laid returns the starter's entries with the shop's over them.
func laid[T any](starter, own []T, id func(T) string, bad map[string]bool) []T {
	all := slices.Clone(starter)
	for _, e := range own {
		if bad[id(e)] {
			continue
		}
		if at := slices.IndexFunc(all, func(s T) bool { return id(s) == id(e) }); at >= 0 {
			all[at] = e
		} else {
			all = append(all, e)
		}
	}
	return all
}

// scalesID names the scales of the catalogues among the faults of entries; no entry has this id.
const scalesID = "scales of the catalogues"

// partingID names the terms of parting out in the same way.
const partingID = "terms of parting out"

// parting returns the faults of a shop's own terms of parting out.
func (k Knowledge) parting(o Own) *faults {
	f := new(faults)
	if o.Parting == nil {
		return f
	}
	for _, x := range o.Parting.Check() {
		f.unless(false, "parting."+x.Key, x.Value, x.Want)
	}
	f.unless(o.Parting.Scrap == k.Parts.Scrap || other(o.Currency, k.Parts.Currency) == "", "parting.scrap", o.Parting.Scrap,
		"the starter's: the catalogue's prices are in "+k.Parts.Currency)
	return f
}

// EntryFault is a fault of one entry of a catalogue.
type EntryFault struct {
	ID string
	Fault
}

// CheckOwn returns every fault of a shop's own entries beside the knowledge that they are laid over: figures, words, ids given
// twice, and jobs and findings that are named but not there.
func (k Knowledge) CheckOwn(o Own) []EntryFault {
	jobs, findings := known(k, o)
	risks := map[string]bool{}
	for _, r := range append(slices.Clone(k.Risks.Risks), o.Risks...) {
		risks[r.ID] = true
	}
	var all []EntryFault
	note := func(id string, f *faults) {
		for _, x := range f.all {
			all = append(all, EntryFault{id, x})
		}
	}
	of := new(faults)
	of.scales("job_scales", o.JobScales)
	of.scales("risk_scales", o.RiskScales)
	note(scalesID, of)
	note(partingID, k.parting(o))
	for _, a := range o.Assemblies {
		f := new(faults)
		f.assembly("assemblies."+a.ID, a)
		f.unless(a.Price.Zero() || other(o.Currency, k.Parts.Currency) == "", "assemblies."+a.ID+".price", a.Price,
			"a share: the catalogue's prices are in "+k.Parts.Currency)
		note(a.ID, f)
	}
	seen := map[string]bool{}
	for _, x := range o.Findings {
		f := new(faults)
		f.id("findings."+x.ID, x.ID, seen)
		f.finding("findings."+x.ID, x)
		note(x.ID, f)
	}
	seen = map[string]bool{}
	for _, j := range o.Jobs {
		f := new(faults)
		f.id("jobs."+j.ID, j.ID, seen)
		f.job("jobs."+j.ID, j, jobs)
		for i, id := range j.Settles {
			f.unless(risks[id], fmt.Sprintf("jobs.%s.settles[%d]", j.ID, i), fmt.Sprintf("%q", id), "the id of a risk of the catalogue")
		}
		note(j.ID, f)
	}
	seen = map[string]bool{}
	for _, r := range o.Risks {
		f := new(faults)
		f.id("risks."+r.ID, r.ID, seen)
		f.entry("risks."+r.ID, r, findings, jobs)
		note(r.ID, f)
	}
	return all
}

// known returns the ids of the jobs and of the findings that there are.
func known(k Knowledge, o Own) (jobs, findings map[string]bool) {
	jobs, findings = map[string]bool{}, map[string]bool{}
	for _, j := range append(slices.Clone(k.Jobs.Jobs), o.Jobs...) {
		jobs[j.ID] = true
	}
	for _, f := range append(slices.Clone(k.Risks.Findings), o.Findings...) {
		findings[f.ID] = true
	}
	return jobs, findings
}

// assembly adds the faults that the catalogue of assemblies finds in one of its entries.
func (f *faults) assembly(at string, a donor.Assembly) {
	for _, x := range a.Check() {
		f.all = append(f.all, Fault{Key: at + "." + x.Key, Value: x.Value, Want: x.Want})
	}
}

func (f *faults) finding(at string, x hidden.Finding) {
	f.unless(x.Text != "", at+".text", `""`, "the question in words, answered yes or no")
	f.between(at+".minutes", x.Minutes, 0, 600)
	for _, need := range x.Needs {
		f.word(at+".needs", need, lot.Abilities)
	}
}

func (f *faults) job(at string, j repair.Job, known map[string]bool) {
	f.line(at, j.Line)
	if j.Area != "" {
		f.word(at+".area", j.Area, lot.Areas)
	}
	f.signs(at+".calls", j.Calls)
	f.signs(at+".never", j.Never)
	f.moves(at+".moves", j.Moves)
	f.scales(at+".scales", j.Scales)
	for i, b := range j.Brings {
		brings := fmt.Sprintf("%s.brings[%d]", at, i)
		f.unless(known[b.ID] && b.ID != j.ID, brings+".id", fmt.Sprintf("%q", b.ID), "the id of another job of the catalogue")
		f.chance(brings+".chance", b.Chance)
	}
	others := func(list string, ids []string) {
		for i, id := range ids {
			f.unless(known[id] && id != j.ID, fmt.Sprintf("%s.%s[%d]", at, list, i), fmt.Sprintf("%q", id),
				"the id of another job of the catalogue")
		}
	}
	others("spares", j.Spares)
	others("covers", j.Covers)
}

func (f *faults) entry(at string, e hidden.Entry, known, jobs map[string]bool) {
	f.risk(at, e.Risk)
	f.signs(at+".triggers", e.Triggers)
	f.signs(at+".never", e.Never)
	f.moves(at+".moves", e.Moves)
	f.scales(at+".scales", e.Scales)
	for i, b := range e.Brings {
		f.unless(jobs[b.ID], fmt.Sprintf("%s.brings[%d].id", at, i), fmt.Sprintf("%q", b.ID), "the id of a job of the catalogue")
		f.chance(fmt.Sprintf("%s.brings[%d].chance", at, i), b.Chance)
	}
	for i, x := range e.Findings {
		f.unless(known[x.Finding], fmt.Sprintf("%s.findings[%d].finding", at, i), fmt.Sprintf("%q", x.Finding),
			"the id of a finding of the catalogue")
	}
}

// signs adds a fault for each word of a sign that is none, and for a sign that asks for nothing.
func (f *faults) signs(key string, signs []lot.Sign) {
	for i, s := range signs {
		f.sign(fmt.Sprintf("%s[%d]", key, i), s)
	}
}

func (f *faults) sign(at string, s lot.Sign) {
	f.unless(!s.Empty(), at, "nothing", "at least one word that it asks for")
	for _, list := range append(s.Lists(&lot.Lot{}), lot.Asked{Key: "areas", Want: s.Areas, Words: lot.Areas},
		lot.Asked{Key: "extents", Want: s.Extents, Words: lot.Extents}, lot.Asked{Key: "depths", Want: s.Depths, Words: lot.Depths}) {
		for _, w := range list.Want {
			f.word(at+"."+list.Key, w, list.Words)
		}
	}
	f.between(at+".min_age", float64(s.MinAge), 0, 100)
	f.between(at+".min_miles", float64(s.MinMiles), 0, 2e6)
	f.between(at+".min_soak", float64(s.MinSoak), 0, mostTime)
}

// moves adds a fault for each move of a chance whose sign or odds are at fault.
func (f *faults) moves(key string, moves []lot.Move) {
	for i, m := range moves {
		at := fmt.Sprintf("%s[%d]", key, i)
		f.sign(at+".when", m.When)
		f.unless(m.Odds > 0 && m.Odds <= mostOdds, at+".odds", m.Odds, "a factor above 0, at most 1000")
	}
}

// scales adds a fault for each scale whose sign or factors are at fault.
func (f *faults) scales(key string, scales []lot.Scale) {
	for i, s := range scales {
		at := fmt.Sprintf("%s[%d]", key, i)
		f.sign(at+".when", s.When)
		for _, x := range []float64{s.Parts, s.Materials, s.Hours} {
			f.between(at, x, 0, mostOdds)
		}
	}
}

// mostOdds is by how much one sign may multiply odds.
const mostOdds = 1000
