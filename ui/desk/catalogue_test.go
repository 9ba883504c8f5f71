package desk_test

import (
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// hood is a job that any hit at the front calls for.
func hood(materials float64) repair.Job {
	return repair.Job{Line: repair.Line{ID: "hood", Job: "Replace the hood", Materials: prob.Certain(materials)},
		Calls: []lot.Sign{{Areas: []string{"12"}}}}
}

func TestOwnEntriesAreValuedWithKeptAndUndone(t *testing.T) {
	u := newUser(t)
	u.Know.Jobs = repair.Catalogue{Currency: "USD", Jobs: []repair.Job{hood(100)}}
	u.start()
	u.newLot()
	revision := u.s.Open.Revision
	s := u.well(desk.Go(desk.Bench), desk.EditOwn("hood", func(o *valuation.Own) { o.Jobs = append(o.Jobs, hood(250)) }))
	materials := func() float64 { return u.Knowledge().Jobs.Jobs[0].Materials.Likely }
	if materials() != 250 || s.Know.Jobs.Jobs[0].Materials.Likely != 250 || s.Starter.Jobs.Jobs[0].Materials.Likely != 100 {
		t.Errorf("valued with %g", materials())
	}
	if s.Open.Revision <= revision || s.Open.Fresh {
		t.Error("the open lot is not valued again")
	}
	if again := u.Load(t.Context()); len(again.Own.Jobs) != 1 || materials() != 250 {
		t.Errorf("read again: %+v", again.Own)
	}
	if s = u.well(desk.Undo()); materials() != 100 || len(s.Own.Jobs) != 0 {
		t.Errorf("undone, valued with %g", materials())
	}
	if u.well(desk.Redo()); materials() != 250 {
		t.Errorf("done again, valued with %g", materials())
	}
	s = u.well(desk.EditOwn("name", func(o *valuation.Own) { o.Jobs[0].Job = "" }))
	if len(s.OwnFaults) != 1 || s.OwnFaults[0].Key != "jobs.hood.job" || materials() != 100 {
		t.Errorf("faults %v, valued with %g", s.OwnFaults, materials())
	}
}

func TestOwnEntriesThatCannotBeReadAreSaid(t *testing.T) {
	u := newUser(t)
	u.Know.Jobs = repair.Catalogue{Currency: "USD", Jobs: []repair.Job{hood(100)}}
	if err := u.kept.PutSetting(t.Context(), "catalogue", map[string]any{"format": "walkline-own/9", "currency": "USD"}); err != nil {
		t.Fatal(err)
	}
	if s := u.Load(t.Context()); !strings.Contains(s.Trouble, "walkline-own/9") || len(s.Know.Jobs.Jobs) != 1 {
		t.Errorf("%q", s.Trouble)
	}
}
