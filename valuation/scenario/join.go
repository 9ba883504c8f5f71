package scenario

// Join puts the scenarios of several lots one after the other, as those of one lot that may be any of them. Lines and risks are left out.
// Shape: each column has as many values as all of theirs together. Limits: at least one; all of one seed and one number of scenarios.
func Join(all []Outcome) Outcome {
	var o Outcome
	o.strata.count = make([]float64, len(all[0].strata.count))
	for _, x := range all {
		for to, from := range map[*[]float64][]float64{&o.Factor: x.Factor, &o.Repair: x.Repair, &o.Hidden: x.Hidden, &o.Labour: x.Labour,
			&o.Hours: x.Hours, &o.HiddenLabour: x.HiddenLabour, &o.Freight: x.Freight, &o.Storage: x.Storage, &o.Days: x.Days,
			&o.Holding: x.Holding, &o.Cash: x.Cash, &o.Cost: x.Cost} {
			if *to == nil && len(from) > 0 {
				*to = make([]float64, 0, len(all)*len(from))
			}
			*to = append(*to, from...)
		}
		o.strata.of = append(o.strata.of, x.strata.of...)
		for k, n := range x.strata.count {
			o.strata.count[k] += n
		}
	}
	return o
}
