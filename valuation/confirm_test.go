package valuation_test

import (
	"math"
	"reflect"
	"testing"

	"walkline/valuation"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// A risk that is seen is a line and no risk: the same case in which the risk was certain costs the same.
func TestConfirmTurnsARiskIntoALine(t *testing.T) {
	c, r := oneLook()
	c.Time.HoldingPerDay = 0
	sure := c.Clone()
	sure.Hidden.Risks[len(sure.Hidden.Risks)-1].Chance.B = 0
	want := value(t, sure, valuation.Knowledge{})
	if !valuation.Confirm(&c, valuation.Knowledge{}, r.ID) {
		t.Fatal("no such risk")
	}
	got := value(t, c, valuation.Knowledge{})
	if a, b := got.Repair.Mean+got.Hidden.Mean, want.Repair.Mean+want.Hidden.Mean; math.Abs(a-b) > 2 {
		t.Errorf("repair and hidden damage cost %g, with a certain risk %g", a, b)
	}
	for _, f := range got.Hidden.Risks {
		if f.ID == r.ID {
			t.Error("the risk is still counted")
		}
	}
	if last := got.Repair.Lines[len(got.Repair.Lines)-1]; last.ID != "seen_gear" || last.Job != "Repair: Transmission broken" {
		t.Errorf("%+v", last)
	}
	if valuation.Confirm(&c, valuation.Knowledge{}, r.ID) {
		t.Error("the same risk twice")
	}
}

// A risk that is struck out costs nothing; it comes back as the catalogue has it, and one of the user's own as it was.
func TestARiskIsStruckOutAndComesBack(t *testing.T) {
	k, c := shipped(t), small(1)
	c.Hidden.UseCatalogue = true
	c.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}}
	c.Hidden.Risks = []hidden.Risk{{ID: "mine", Name: "Mine", Chance: hidden.Beta{A: 1, B: 1}, Cost: prob.Certain(1000)}}
	before := value(t, c, k).Hidden
	if len(before.Risks) < 2 {
		t.Fatalf("only %+v", before.Risks)
	}
	now := c
	for _, f := range before.Risks {
		if !valuation.StrikeRisk(&now, k, f.ID) || valuation.StrikeRisk(&now, k, f.ID) {
			t.Errorf("%s was not struck out once", f.ID)
		}
	}
	if got := value(t, now, k).Hidden; got.Mean != 0 || len(got.Risks) > 0 || len(now.Struck()) != len(before.Risks) || len(now.Check()) > 0 {
		t.Errorf("struck out, they cost %g: %+v", got.Mean, got.Risks)
	}
	if valuation.RestoreRisks(&now, k); !reflect.DeepEqual(now.Hidden, c.Hidden) || len(now.Struck()) > 0 {
		t.Errorf("back are %+v", now.Hidden.Risks)
	}
	valuation.Confirm(&now, k, "mine")
	if valuation.RestoreRisks(&now, k); !now.Hidden.Risks[0].Removed {
		t.Error("a risk that is a line was brought back")
	}
}

func TestConfirmFindsTheAreaOfACatalogueRisk(t *testing.T) {
	k := shipped(t)
	c := small(1)
	c.Hidden.UseCatalogue = true
	c.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}}
	a := value(t, c, k)
	for _, f := range a.Hidden.Risks {
		if f.ID == "rail_end_bent" {
			valuation.Confirm(&c, k, f.ID)
			if l := c.Repair.Lines[len(c.Repair.Lines)-1]; l.Area != "12" || l.Caution == "" || len(c.Check()) > 0 {
				t.Errorf("%+v %v", l, c.Check())
			}
			return
		}
	}
	t.Errorf("the survey brings no such risk up: %+v", a.Hidden.Risks)
}
