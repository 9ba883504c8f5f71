package valuation

import (
	"fmt"
	"slices"

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
}

// With returns the knowledge with a shop's own entries instead of those of the same ids, and the rest of them behind. An
// entry that has a fault is left out, so that what it would replace stays.
func (k Knowledge) With(o Own) Knowledge {
	bad := map[string]bool{}
	for _, f := range k.CheckOwn(o) {
		bad[f.ID] = true
	}
	k.Risks.Findings = laid(k.Risks.Findings, o.Findings, func(f hidden.Finding) string { return f.ID }, bad)
	k.Jobs.Jobs = laid(k.Jobs.Jobs, renamed(o.Jobs, bad, o.Currency), func(j repair.Job) string { return j.ID }, bad)
	risks := slices.Clone(o.Risks)
	for i := range risks {
		risks[i].Currency = o.Currency
	}
	k.Risks.Risks = laid(k.Risks.Risks, risks, func(r hidden.Entry) string { return r.ID }, bad)
	return k
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

// EntryFault is a fault of one entry of a catalogue.
type EntryFault struct {
	ID string
	Fault
}

// CheckOwn returns every fault of a shop's own entries beside the knowledge that they are laid over: figures, words, ids given
// twice, and jobs and findings that are named but not there.
func (k Knowledge) CheckOwn(o Own) []EntryFault {
	jobs, findings := known(k, o)
	var all []EntryFault
	note := func(id string, f *faults) {
		for _, x := range f.all {
			all = append(all, EntryFault{id, x})
		}
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
		note(j.ID, f)
	}
	seen = map[string]bool{}
	for _, r := range o.Risks {
		f := new(faults)
		f.id("risks."+r.ID, r.ID, seen)
		f.entry("risks."+r.ID, r, findings)
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

func (f *faults) finding(at string, x hidden.Finding) {
	f.unless(x.Text != "", at+".text", `""`, "the question in words, answered yes or no")
	f.between(at+".minutes", x.Minutes, 0, 600)
}

func (f *faults) job(at string, j repair.Job, known map[string]bool) {
	f.line(at, j.Line)
	if j.Area != "" {
		f.word(at+".area", j.Area, lot.Areas)
	}
	f.signs(at+".calls", j.Calls)
	for i, b := range j.Brings {
		brings := fmt.Sprintf("%s.brings[%d]", at, i)
		f.unless(known[b.ID] && b.ID != j.ID, brings+".id", fmt.Sprintf("%q", b.ID), "the id of another job of the catalogue")
		f.chance(brings+".chance", b.Chance)
	}
	for i, id := range j.Spares {
		f.unless(known[id] && id != j.ID, fmt.Sprintf("%s.spares[%d]", at, i), fmt.Sprintf("%q", id), "the id of another job of the catalogue")
	}
}

func (f *faults) entry(at string, e hidden.Entry, known map[string]bool) {
	f.risk(at, e.Risk)
	f.signs(at+".triggers", e.Triggers)
	for i, x := range e.Findings {
		f.unless(known[x.Finding], fmt.Sprintf("%s.findings[%d].finding", at, i), fmt.Sprintf("%q", x.Finding), "the id of a finding of the catalogue")
	}
}

// signs adds a fault for each word of a sign that is none, and for a sign that asks for nothing.
func (f *faults) signs(key string, signs []lot.Sign) {
	for i, s := range signs {
		at := fmt.Sprintf("%s[%d]", key, i)
		f.unless(!s.Empty(), at, "nothing", "at least one word that it asks for")
		for _, list := range []struct {
			key         string
			have, words []string
		}{
			{"areas", s.Areas, lot.Areas}, {"extents", s.Extents, lot.Extents}, {"depths", s.Depths, lot.Depths},
			{"loss", s.Loss, lot.Losses}, {"airbags_deployed", s.Airbags, lot.AirbagPositions}, {"condition", s.State, lot.Conditions},
			{"keys", s.Keys, lot.KeyStates},
		} {
			for _, w := range list.have {
				f.word(at+"."+list.key, w, list.words)
			}
		}
	}
}
