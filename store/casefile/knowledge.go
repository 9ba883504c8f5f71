package casefile

import (
	"walkline/valuation"
	"walkline/valuation/checks"
	"walkline/valuation/donor"
	"walkline/valuation/resale"
)

// Knowledge reads the job catalogue, the risk catalogue, the market's prior and the jurisdiction packs from their documents.
// Errors: every fault, its key led by the document it stands in.
func Knowledge(jobs, risks, prior []byte, packs ...[]byte) (valuation.Knowledge, []Fault) {
	var k valuation.Knowledge
	var faults []Fault
	for _, doc := range []struct {
		name string
		data []byte
		into any
	}{{"jobs", jobs, &k.Jobs}, {"risks", risks, &k.Risks}} {
		for _, f := range Decode(doc.data, doc.into) {
			f.Key = doc.name + ": " + f.Key
			faults = append(faults, f)
		}
	}
	p, err := resale.ParsePrior(prior)
	if err != nil {
		faults = append(faults, Fault{Key: "prior", Want: err.Error()})
	}
	k.Prior = p
	for _, data := range packs {
		pack, wrong := Pack(data)
		for _, f := range wrong {
			f.Key = "jurisdiction " + pack.ID + ": " + f.Key
			faults = append(faults, f)
		}
		k.Packs = append(k.Packs, pack)
	}
	return k, faults
}

// Assemblies reads the catalogue of what a lot is parted out into. Errors: every fault of form and of value.
func Assemblies(data []byte) (donor.Catalogue, []Fault) {
	var c donor.Catalogue
	faults := Decode(data, &c)
	var values []Fault
	for _, f := range c.Check() {
		values = append(values, Fault{Key: f.Key, Value: f.Value, Want: f.Want})
	}
	return c, append(faults, Unsaid(faults, values)...)
}

// Pack reads the document of one jurisdiction strictly. Errors: every fault of form and of value.
func Pack(data []byte) (checks.Pack, []Fault) {
	var p checks.Pack
	faults := Decode(data, &p)
	var values []Fault
	for _, f := range p.Check() {
		values = append(values, Fault{Key: f.Key, Value: f.Value, Want: f.Want})
	}
	return p, append(faults, Unsaid(faults, values)...)
}
