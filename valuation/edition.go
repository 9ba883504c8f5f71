package valuation

import (
	"slices"

	"walkline/valuation/donor"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// Entries returns the catalogues of the knowledge as a document of whole entries, the form in which an edition of them is kept.
func (k Knowledge) Entries() Own {
	return Own{Format: OwnFormat, Currency: k.Jobs.Currency, Jobs: k.Jobs.Jobs, Risks: k.Risks.Risks, Findings: k.Risks.Findings,
		Assemblies: k.Parts.Assemblies, Parting: &k.Parts.Terms, JobScales: k.Jobs.Scales, RiskScales: k.Risks.Scales}
}

// On returns the knowledge with the catalogues of an edition in the place of its own. What its entries say of jobs, risks and findings that
// the edition has not is left out: entries of two editions may stand side by side.
func (k Knowledge) On(edition Own) Knowledge {
	e := Copy(edition)
	jobs, findings, risks := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, j := range e.Jobs {
		jobs[j.ID] = true
	}
	for _, f := range e.Findings {
		findings[f.ID] = true
	}
	for _, r := range e.Risks {
		risks[r.ID] = true
	}
	for i := range e.Jobs {
		j := &e.Jobs[i]
		j.Brings = slices.DeleteFunc(j.Brings, func(b repair.Brought) bool { return !jobs[b.ID] })
		j.Spares, j.Covers, j.Settles = among(j.Spares, jobs), among(j.Covers, jobs), among(j.Settles, risks)
	}
	for i := range e.Risks {
		r := &e.Risks[i]
		r.Brings = slices.DeleteFunc(r.Brings, func(b hidden.Work) bool { return !jobs[b.ID] })
		r.Findings = slices.DeleteFunc(r.Findings, func(x hidden.Evidence) bool { return !findings[x.Finding] })
	}
	k.Jobs.Jobs, k.Risks.Risks, k.Risks.Findings = e.Jobs, e.Risks, e.Findings
	k.Jobs.Scales, k.Risks.Scales = e.JobScales, e.RiskScales
	if len(e.Assemblies) > 0 { // an edition of before the Bench reached them has none
		k.Parts.Assemblies = e.Assemblies
	}
	if e.Parting != nil {
		k.Parts.Terms = *e.Parting
	}
	return k
}

func among(ids []string, there map[string]bool) []string {
	return slices.DeleteFunc(ids, func(id string) bool { return !there[id] })
}

// Laid returns an edition with entries of another over it, by their ids; scales that the other has stand in the place of its own.
func (o Own) Laid(over Own) Own {
	o.Jobs = laid(o.Jobs, over.Jobs, func(j repair.Job) string { return j.ID }, nil)
	o.Risks = laid(o.Risks, over.Risks, func(r hidden.Entry) string { return r.ID }, nil)
	o.Findings = laid(o.Findings, over.Findings, func(f hidden.Finding) string { return f.ID }, nil)
	o.Assemblies = laid(o.Assemblies, over.Assemblies, assemblyID, nil)
	o.JobScales, o.RiskScales = scales(o.JobScales, over.JobScales), scales(o.RiskScales, over.RiskScales)
	if over.Parting != nil {
		o.Parting = over.Parting
	}
	return o
}

// scales returns the shop's scales where it has any, the starter's else.
func scales(starter, own []lot.Scale) []lot.Scale {
	if len(own) > 0 {
		return own
	}
	return starter
}

// The kinds of entries of the catalogues, as an [EntryKey] names them.
const (
	KindJob      = "job"
	KindRisk     = "risk"
	KindFinding  = "look"
	KindAssembly = "assembly"
	KindScales   = "scales"  // ids: jobs, risks
	KindParting  = "parting" // id: terms
)

// EntryKey names one entry of the catalogues.
type EntryKey struct{ Kind, ID string }

// Keys returns the key of every entry, in order.
func (o Own) Keys() []EntryKey {
	var all []EntryKey
	for _, j := range o.Jobs {
		all = append(all, EntryKey{KindJob, j.ID})
	}
	for _, r := range o.Risks {
		all = append(all, EntryKey{KindRisk, r.ID})
	}
	for _, f := range o.Findings {
		all = append(all, EntryKey{KindFinding, f.ID})
	}
	for _, a := range o.Assemblies {
		all = append(all, EntryKey{KindAssembly, a.ID})
	}
	if len(o.JobScales) > 0 {
		all = append(all, EntryKey{KindScales, "jobs"})
	}
	if len(o.RiskScales) > 0 {
		all = append(all, EntryKey{KindScales, "risks"})
	}
	if o.Parting != nil {
		all = append(all, EntryKey{KindParting, "terms"})
	}
	return all
}

// Only returns the document with the entries of some keys alone.
func (o Own) Only(keys ...EntryKey) Own {
	return o.filtered(func(k EntryKey) bool { return slices.Contains(keys, k) })
}

// Without returns the document without the entries of some keys.
func (o Own) Without(keys ...EntryKey) Own {
	return o.filtered(func(k EntryKey) bool { return !slices.Contains(keys, k) })
}

func (o Own) filtered(keep func(EntryKey) bool) Own {
	o.Jobs = slices.DeleteFunc(slices.Clone(o.Jobs), func(j repair.Job) bool { return !keep(EntryKey{KindJob, j.ID}) })
	o.Risks = slices.DeleteFunc(slices.Clone(o.Risks), func(r hidden.Entry) bool { return !keep(EntryKey{KindRisk, r.ID}) })
	o.Findings = slices.DeleteFunc(slices.Clone(o.Findings), func(f hidden.Finding) bool { return !keep(EntryKey{KindFinding, f.ID}) })
	o.Assemblies = slices.DeleteFunc(slices.Clone(o.Assemblies), func(a donor.Assembly) bool { return !keep(EntryKey{KindAssembly, a.ID}) })
	if !keep(EntryKey{KindScales, "jobs"}) {
		o.JobScales = nil
	}
	if !keep(EntryKey{KindScales, "risks"}) {
		o.RiskScales = nil
	}
	if !keep(EntryKey{KindParting, "terms"}) {
		o.Parting = nil
	}
	return o
}
