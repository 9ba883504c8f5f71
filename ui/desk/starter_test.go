package desk_test

import (
	"context"
	"slices"
	"testing"

	"walkline/cmd/wire/trial"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// editionOf is a starter with jobs of these hours; every figure is made up.
func editionOf(hours map[string]float64) valuation.Knowledge {
	k := valuation.Knowledge{Jobs: repair.Catalogue{Currency: "USD"}, Risks: hidden.Catalogue{Currency: "USD"}}
	for _, id := range []string{"hood", "lamp", "latch", "grille"} {
		if h, there := hours[id]; there {
			k.Jobs.Jobs = append(k.Jobs.Jobs, repair.Job{Line: repair.Line{ID: id, Job: "Replace the " + id,
				Hours: map[string]prob.Three{"body": prob.Certain(h)}}, Calls: []lot.Sign{{Areas: []string{"12"}}}})
		}
	}
	return k
}

// hoursOf returns the hours of each job that lots are valued with.
func hoursOf(s desk.State) map[string]float64 {
	all := map[string]float64{}
	for _, j := range s.Know.Jobs.Jobs {
		all[j.ID] = j.Hours["body"].Likely
	}
	return all
}

func same(a, b map[string]float64) bool {
	for k, x := range a {
		if y, there := b[k]; !there || x != y {
			return false
		}
	}
	return len(a) == len(b)
}

// A later edition of the starter changes nothing of itself: each entry that differs is named and is taken or left; what was left is named
// again only when the starter changes it once more; undo takes a decision back; the shop's own entries stay until the starter's is taken.
func TestALaterStarterIsTakenOrLeftEntryByEntry(t *testing.T) {
	kept := trial.Store(t)
	var s desk.State
	start := func(edition string, hours map[string]float64) *desk.Desk {
		d := trial.Desk(kept)
		d.Know, d.Edition = editionOf(hours), edition
		s = d.Load(context.Background())
		if s.Trouble != "" {
			t.Fatal(s.Trouble)
		}
		s = d.Do(context.Background(), s, desk.Go(desk.Bench))
		s = d.Do(context.Background(), s, desk.ShowSection("Repair jobs"))
		return d
	}
	wants := func(when string, hours map[string]float64, changed ...string) {
		t.Helper()
		var ids []string
		for _, c := range s.StarterChanges {
			ids = append(ids, c.Key.ID)
		}
		if got := hoursOf(s); s.Trouble != "" || !same(got, hours) || !slices.Equal(ids, changed) {
			t.Errorf("%s: %v, want %v; changed %q, want %q; %s", when, got, hours, ids, changed, s.Trouble)
		}
	}
	job := func(id string) valuation.EntryKey { return valuation.EntryKey{Kind: valuation.KindJob, ID: id} }
	first := map[string]float64{"hood": 2, "lamp": 1, "latch": 3}
	start("1", first)
	wants("first start", first)
	start("1", first)
	wants("same edition", first)
	d := start("2", map[string]float64{"hood": 5, "lamp": 1, "grille": 4})
	wants("second edition", first, "hood", "grille", "latch")
	s = d.Do(context.Background(), s, desk.TakeStarter(job("hood")))
	wants("hood taken", map[string]float64{"hood": 5, "lamp": 1, "latch": 3}, "grille", "latch")
	s = d.Do(context.Background(), s, desk.Undo())
	wants("undone", first, "hood", "grille", "latch")
	s = d.Do(context.Background(), s, desk.Redo())
	s = d.Do(context.Background(), s, desk.LeaveStarter(job("grille"), job("latch")))
	wants("the rest left", map[string]float64{"hood": 5, "lamp": 1, "latch": 3})
	d = start("2", map[string]float64{"hood": 5, "lamp": 1, "grille": 4})
	wants("the next day", map[string]float64{"hood": 5, "lamp": 1, "latch": 3})
	own := editionOf(map[string]float64{"lamp": 9}).Jobs.Jobs[0]
	s = d.Do(context.Background(), s, desk.EditOwn("own lamp", func(o *valuation.Own) { o.Jobs = append(o.Jobs, own) }))
	wants("an own lamp", map[string]float64{"hood": 5, "lamp": 9, "latch": 3})
	d = start("3", map[string]float64{"hood": 5, "lamp": 7, "grille": 6})
	wants("third edition", map[string]float64{"hood": 5, "lamp": 9, "latch": 3}, "lamp", "grille")
	s = d.Do(context.Background(), s, desk.TakeStarter(job("lamp"), job("grille"), job("latch")))
	wants("all taken", map[string]float64{"hood": 5, "lamp": 7, "grille": 6})
	if len(s.Own.Jobs) != 0 {
		t.Errorf("the own entry of a job that was taken stays: %+v", s.Own.Jobs)
	}
	s = d.Do(context.Background(), s, desk.Undo())
	wants("undone", map[string]float64{"hood": 5, "lamp": 9, "latch": 3}, "lamp", "grille")
	s = d.Do(context.Background(), s, desk.Redo())
	start("3", map[string]float64{"hood": 5, "lamp": 7, "grille": 6})
	wants("at last", map[string]float64{"hood": 5, "lamp": 7, "grille": 6})
}

// An own assembly survives a changed starter, which is shown to take or leave. A book that was kept before assemblies were entries of the
// starter is asked of nothing.
func TestOwnAssembliesSurviveALaterStarter(t *testing.T) {
	kept := trial.Store(t)
	var s desk.State
	start := func(edition string, share float64) *desk.Desk {
		d := trial.Desk(kept)
		d.Know, d.Edition = editionOf(map[string]float64{"hood": 2}), edition
		d.Know.Parts.Currency = "USD"
		if share > 0 {
			d.Know.Parts.Assemblies = []donor.Assembly{{ID: "lid", Name: "lid", Share: prob.Certain(share), Chance: 0.5},
				{ID: "door", Name: "door", Share: prob.Certain(0.02), Chance: 0.5}}
		}
		s = d.Load(context.Background())
		return d
	}
	start("1", 0)
	d := start("2", 0.01)
	if len(s.StarterChanges) != 0 || len(s.Know.Parts.Assemblies) != 2 {
		t.Errorf("asked of %+v, %d assemblies", s.StarterChanges, len(s.Know.Parts.Assemblies))
	}
	own := donor.Assembly{ID: "door", Name: "my door", Share: prob.Certain(0.05), Chance: 0.9}
	s = d.Do(context.Background(), s, desk.EditOwn("own door", func(o *valuation.Own) { o.Assemblies = append(o.Assemblies, own) }))
	start("2", 0.01)
	d = start("3", 0.03)
	want := valuation.EntryKey{Kind: valuation.KindAssembly, ID: "lid"}
	if len(s.StarterChanges) != 1 || s.StarterChanges[0].Key != want || s.Know.Parts.Assemblies[0].Share.Likely != 0.01 ||
		s.Know.Parts.Assemblies[1].Name != "my door" {
		t.Fatalf("changes %+v, assemblies %+v", s.StarterChanges, s.Know.Parts.Assemblies)
	}
	s = d.Do(context.Background(), s, desk.TakeStarter(want))
	if got := s.Know.Parts.Assemblies; got[0].Share.Likely != 0.03 || got[1].Name != "my door" || len(s.StarterChanges) != 0 {
		t.Errorf("taken: %+v, %+v", got, s.StarterChanges)
	}
}

// Entries of two editions stand side by side: what one names and the other has not is left out, not guessed.
func TestEditionsSideBySideNameNothingThatIsNotThere(t *testing.T) {
	k := editionOf(map[string]float64{"hood": 2, "lamp": 1})
	e := k.Entries()
	e.Jobs = valuation.Copy(e.Jobs)
	e.Jobs[0].Brings = []repair.Brought{{ID: "lamp"}, {ID: "gone"}}
	e.Jobs[0].Spares, e.Jobs[0].Settles = []string{"gone"}, []string{"gone"}
	j := k.On(e).Jobs.Jobs[0]
	if len(j.Brings) != 1 || j.Brings[0].ID != "lamp" || len(j.Spares)+len(j.Settles) != 0 {
		t.Errorf("the job names %+v", j)
	}
	if len(e.Jobs[0].Brings) != 2 {
		t.Error("the edition itself was changed")
	}
}
