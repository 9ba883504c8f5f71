package hedonic

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"

	"walkline/valuation/prob"
)

// PriorFormat is the version of the file of starter priors that this package reads.
const PriorFormat = "walkline-resale-prior/2"

// Prior is what other models' prices teach about a table of comparables before it is looked at. It is fitted by
// cmd/fitprior from open data and read by [ParsePrior].
type Prior struct {
	Format  string     `json:"format"`
	Note    string     `json:"note"`
	Memory  []string   `json:"from_memory"` // figures that aren't fitted: starter values
	Sources []Source   `json:"sources"`
	Walk    prob.Scale `json:"market_walk"` // drift of the whole market, log points per square root of a year
	Markets []Market   `json:"markets"`
}

// Source is one data set that the prior was fitted to.
type Source struct {
	File     string `json:"file"`
	Rows     int    `json:"rows"`
	When     string `json:"data_from"`
	Citation string `json:"citation"`
}

// Market is what one market's models have in common. Effects are on the logarithm of the price: "age" per year,
// "mileage/FORM" per 10,000 miles at 50,000, a numeric column per its unit, "column=level" for a level of a column.
type Market struct {
	Name     string                `json:"name"`
	Currency string                `json:"currency,omitempty"`
	Models   int                   `json:"models"` // fitted to
	Effects  map[string]Effect     `json:"effects"`
	Spreads  map[string]prob.Scale `json:"spreads"`  // of effects whose size the table itself must tell: trim, model, ...
	Residual prob.Scale            `json:"residual"` // of one price about the fit
	DF       float64               `json:"degrees_of_freedom"`
	OLS      map[string]float64    `json:"least_squares_check,omitempty"` // medians over the models of plain slopes, for comparison
}

// Effect is a Gaussian belief about an effect on the logarithm of the price.
type Effect struct {
	Mean float64 `json:"mean"`
	SD   float64 `json:"sd"`
}

// ParsePrior returns the prior in data, the JSON that cmd/fitprior writes.
// Errors: not that JSON, another version, a missing effect, or a spread that isn't positive.
func ParsePrior(data []byte) (Prior, error) {
	var p Prior
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&p); err != nil {
		return Prior{}, fmt.Errorf("reading the resale prior: %w", err)
	}
	if p.Format != PriorFormat {
		return Prior{}, fmt.Errorf("the resale prior has format %q; this program reads %q", p.Format, PriorFormat)
	}
	if err := p.check(); err != nil {
		return Prior{}, fmt.Errorf("the resale prior can't be used: %w", err)
	}
	return p, nil
}

func (p Prior) check() error {
	if len(p.Markets) == 0 || !p.Walk.Valid() {
		return fmt.Errorf("it names no market, or no drift of the market")
	}
	for _, m := range p.Markets {
		if err := m.check(); err != nil {
			return fmt.Errorf("market %q: %w", m.Name, err)
		}
	}
	return nil
}

func (m Market) check() error {
	for _, name := range m.needs() {
		if e, ok := m.Effects[name]; !ok || !(e.SD > 0) {
			return fmt.Errorf("effect %q is missing or has no spread", name)
		}
	}
	for name, e := range m.Effects {
		if !finite(e.Mean, e.SD) || e.SD < 0 {
			return fmt.Errorf("effect %q is no Number", name)
		}
	}
	for _, name := range []string{spreadTrim, spreadYear, spreadModel, spreadNumber, spreadLevel, spreadSlope} {
		if !m.Spreads[name].Valid() {
			return fmt.Errorf("spread %q is missing or not positive", name)
		}
	}
	if !m.Residual.Valid() || !(m.DF > 1) {
		return fmt.Errorf("the residual's spread or degrees of freedom are missing")
	}
	return nil
}

func (m Market) needs() []string {
	names := []string{effectAge, effectBend, effectCondition}
	for _, f := range Forms {
		names = append(names, f.effect())
	}
	return names
}

func finite(xs ...float64) bool {
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return false
		}
	}
	return true
}

// The effects and spreads that every market states.
const (
	effectAge       = "age"
	effectBend      = "bend"
	effectCondition = "condition"

	spreadTrim   = "trim"
	spreadYear   = "year" // of the step from one model year to the next, beside the slope of age
	spreadModel  = "model"
	spreadNumber = "number" // slope of an unknown numeric column, per standard deviation of the column
	spreadLevel  = "level"  // levels of an unknown column of words
	spreadSlope  = "slope"  // how far a model's own slopes lie from the shared ones, per year and per 10,000 miles
)
