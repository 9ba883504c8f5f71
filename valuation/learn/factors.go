package learn

import (
	"maps"

	"walkline/valuation/lot"
)

// Factors are what past buys have taught and the buyer has accepted. The zero value is the starter values: nothing is
// changed. JSON keys are those of the case file's "factors".
type Factors struct {
	Hours         map[string]Ratio  `json:"hours"` // by trade
	Parts         map[string]Ratio  `json:"parts"` // by source
	Materials     *Ratio            `json:"materials"`
	Outside       *Ratio            `json:"outside"`
	Hidden        *Ratio            `json:"hidden"` // money for hidden damage that is there
	Resale        *Bias             `json:"resale"`
	AskedToSold   *Ratio            `json:"asked_to_sold"`
	BrandDiscount *Ratio            `json:"brand_discount"` // on what is left after the discount, 1 - discount
	DaysToSell    *Ratio            `json:"days_to_sell"`
	Risks         map[string]Chance `json:"risks"` // by risk of the catalogue
	Loading       *Loading          `json:"shared_loading"`
	OwnShare      *Loading          `json:"own_share"`      // of the bidders' shared doubt, what differs between them
	HalfLife      float64           `json:"half_life_days"` // age at which a buy counts half; 0: [StarterHalfLife]
}

// Ratio is actual / foretold: a factor on the forecast, the median of what is expected, and how unsure the next buy's
// ratio is beyond the range that its forecast states already.
type Ratio struct {
	Factor float64  `json:"factor"`
	LogSD  float64  `json:"log_sd"`
	Known  float64  `json:"known"` // share of the doubt about the factor that the buys took away, 0..1
	When   lot.Date `json:"when"`  // day on which it was learned
	From   int      `json:"from"`  // buys that it was learned from
}

// Bias is what the resale price comes to against its forecast: a factor on every quantile, and a factor on the forecast's
// spread about its median, on the log scale.
type Bias struct {
	Factor float64  `json:"factor"`
	Spread float64  `json:"spread"`
	When   lot.Date `json:"when"`
	From   int      `json:"from"`
}

// Chance is the chance of a hidden risk as Beta counts, before findings.
type Chance struct {
	A    float64  `json:"a"`
	B    float64  `json:"b"`
	When lot.Date `json:"when"`
	From int      `json:"from"`
}

// Loading is how strongly costs lean on a lot's common factor: of the lines and risks that name no loading of their own.
type Loading struct {
	Value float64  `json:"value"`
	When  lot.Date `json:"when"`
	From  int      `json:"from"`
}

// StarterHalfLife is the age in days at which a buy counts half. Starter value, from memory: replace it with yours.
const StarterHalfLife = 730

// halfLife returns the half-life in force, in days.
func (f Factors) halfLife() float64 {
	if f.HalfLife > 0 {
		return f.HalfLife
	}
	return StarterHalfLife
}

// Empty reports whether the factors change no forecast.
func (f Factors) Empty() bool {
	return len(f.Hours)+len(f.Parts)+len(f.Risks) == 0 && f.Materials == nil && f.Outside == nil && f.Hidden == nil &&
		f.Resale == nil && f.AskedToSold == nil && f.BrandDiscount == nil && f.DaysToSell == nil && f.Loading == nil && f.OwnShare == nil
}

// Clone returns a copy that shares nothing that can be changed.
func (f Factors) Clone() Factors {
	f.Hours, f.Parts, f.Risks = maps.Clone(f.Hours), maps.Clone(f.Parts), maps.Clone(f.Risks)
	f.Materials, f.Outside, f.Hidden = copied(f.Materials), copied(f.Outside), copied(f.Hidden)
	f.Resale, f.Loading, f.OwnShare = copied(f.Resale), copied(f.Loading), copied(f.OwnShare)
	f.AskedToSold, f.BrandDiscount, f.DaysToSell = copied(f.AskedToSold), copied(f.BrandDiscount), copied(f.DaysToSell)
	return f
}

func copied[T any](p *T) *T {
	if p == nil {
		return nil
	}
	v := *p
	return &v
}
