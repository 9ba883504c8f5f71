package casefile

import (
	"walkline/valuation"
	"walkline/valuation/resale"
)

// Knowledge reads the job catalogue, the risk catalogue and the market's prior from their documents.
// Errors: every fault, its key led by the document it stands in.
func Knowledge(jobs, risks, prior []byte) (valuation.Knowledge, []Fault) {
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
	return k, faults
}
