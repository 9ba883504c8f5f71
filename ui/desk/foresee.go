package desk

import (
	"fmt"

	"walkline/valuation"
	"walkline/valuation/build"
)

// Foresee works out what is left of a build as of today. It touches no state and may run on any goroutine.
// Errors: the lot's case has faults, named, or nothing carries a resale price.
func (d *Desk) Foresee(c valuation.Case, b build.Build) (valuation.Foresight, error) {
	if faults := c.Check(); len(faults) > 0 {
		return valuation.Foresight{}, fmt.Errorf("the lot's worksheet has a fault: %w", faults[0])
	}
	return valuation.Foresee(c, d.Knowledge(), b, d.Today())
}

// Foreseen returns the state with a forecast that has come back; one of another build or an older revision is dropped.
func (s State) Foreseen(id int64, revision int, f valuation.Foresight, err error) State {
	if s.Build == nil || s.Build.ID != id || s.Build.Revision != revision {
		return s
	}
	o := *s.Build
	if err != nil {
		o.Forecast, o.Problem, o.Fresh = nil, err.Error(), true
		return s.withBuild(o)
	}
	o.Forecast, o.Problem, o.Fresh = &f, "", true
	return s.withBuild(o)
}
