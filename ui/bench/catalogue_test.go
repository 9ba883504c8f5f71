package bench

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/donor"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// catalogues are two jobs, a risk and a finding; every figure is made up.
func catalogues() valuation.Knowledge {
	front := []lot.Sign{{Areas: []string{"12"}, Extents: []string{"functional"}}}
	return valuation.Knowledge{
		Jobs: repair.Catalogue{Currency: "USD", Jobs: []repair.Job{
			{Line: repair.Line{ID: "hood", Job: "Replace the hood", Area: "12", Operation: "replace",
				Hours: map[string]prob.Three{"body": prob.Certain(2)},
				Parts: []repair.Part{{Name: "hood", Options: []repair.Option{{Source: "used", Price: prob.Certain(150)}}}}}, Calls: front},
			{Line: repair.Line{ID: "aim", Job: "Aim the headlamps", Area: "12", Operation: "align",
				Hours: map[string]prob.Three{"electrical": prob.Certain(1)}}, Calls: front},
		}},
		Risks: hidden.Catalogue{Currency: "USD", Risks: []hidden.Entry{{Risk: hidden.Risk{ID: "rail", Name: "Rail end bent",
			Chance: hidden.Beta{A: 1, B: 3}, Cost: prob.Certain(400)}, Triggers: front}},
			Findings: []hidden.Finding{{ID: "gap", Text: "Is the hood gap uneven?", Minutes: 1, Tools: "none"}}},
		Parts: donor.Catalogue{Currency: "USD", Terms: donor.Terms{Runs: donor.Running{Unknown: 1}},
			Assemblies: []donor.Assembly{{ID: "hood", Name: "hood",
				Share: prob.Three{Low: 0.01, Likely: 0.02, High: 0.03}, Chance: 0.6, Hours: 1, Near: map[string]string{"12": "minor"}}}},
	}
}

// number returns the n-th field for a number beside the table.
func (s *shop) number(n int) fyne.Focusable {
	return seen.All[*widgets.NumberEntry](s.page.Object())[n].Focus()
}

func (s *shop) listed() []string { return seen.All[*table.Table](s.page.Object())[0].Facts() }

func TestAJobIsFoundByAPartOfItsWordsAndChanged(t *testing.T) {
	s := at(t, "Repair jobs")
	s.window.Canvas().Focus(s.page.First())
	test.Type(s.page.First(), "lamps aim")
	if got := s.listed(); len(got) != 1 || !strings.Contains(got[0], "Aim the headlamps") || !strings.Contains(got[0], "starter") {
		t.Fatalf("the search leaves %q", got)
	}
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.wants("Starter values, from memory", "Chance needed")
	s.retype(s.number(0), "40")
	own := s.State.Own.Jobs
	if len(own) != 1 || own[0].ID != "aim" || *own[0].Chance != .4 || *s.State.Know.Jobs.Jobs[1].Chance != .4 {
		t.Fatalf("the own jobs are %+v", own)
	}
	if s.State.Starter.Jobs.Jobs[1].Chance != nil {
		t.Error("the starter's job was changed")
	}
	s.wants("Yours.")
	if got := s.listed(); !strings.Contains(got[0], "yours") {
		t.Errorf("the table says %q", got)
	}
	list := seen.All[*table.Table](s.page.Object())[0]
	if items := list.Menu(0); len(items) != 2 || items[1].Label != "Put the starter value back" {
		t.Errorf("menu %v", items)
	}
	seen.Press(list, fyne.KeyDelete)
	if len(s.State.Own.Jobs) != 0 || len(list.Menu(0)) != 1 {
		t.Errorf("Delete left %+v", s.State.Own.Jobs)
	}
	seen.Press(list, fyne.KeyDelete) // the starter's own stays
	s.Do(desk.Undo())
	if s.wants("Yours."); len(s.State.Own.Jobs) != 1 {
		t.Error("undo did not bring it back")
	}
	s.tap("Put the starter value back")
	if len(s.State.Own.Jobs) != 0 || s.State.Know.Jobs.Jobs[1].Chance != nil {
		t.Errorf("put back, %+v", s.State.Own.Jobs)
	}
}

func TestAJobIsAddedWithAReason(t *testing.T) {
	s := at(t, "Repair jobs")
	s.tap("Add a job")
	s.retype(s.named("New job"), "Weld the bracket")
	s.tap("Add a reason")
	s.wants("Not used as long as this stands", "at least one word")
	if n := len(s.State.Know.Jobs.Jobs); n != 2 {
		t.Errorf("a job with a fault is used: %d jobs", n)
	}
	s.codes(0, "12, 1, engine bay")
	if got := s.State.Own.Jobs[0].Calls[0].Areas; !slices.Equal(got, []string{"12", "01", "engine_bay"}) {
		t.Errorf("areas %q", got)
	}
	if n := len(s.State.Know.Jobs.Jobs); n != 3 || s.State.Know.Jobs.Jobs[2].Job != "Weld the bracket" {
		t.Errorf("%d jobs: %+v", n, s.State.Know.Jobs.Jobs)
	}
	s.codes(0, "12, 13")
	s.wants(`"13" is none of its words`)
	s.tap("Remove this job")
	if len(s.State.Own.Jobs) != 0 || len(s.listed()) != 2 {
		t.Errorf("taken out, %q", s.listed())
	}
}

// codes types into the n-th field for codes.
func (s *shop) codes(n int, words string) {
	s.t.Helper()
	var fields []*widgets.TextEntry
	for _, e := range seen.All[*widgets.TextEntry](s.page.Object()) {
		if strings.HasPrefix(e.PlaceHolder, "any; or") {
			fields = append(fields, e)
		}
	}
	s.retype(fields[n], words)
}

func TestAPartsSourceIsAddedAndTakenOut(t *testing.T) {
	s := at(t, "Repair jobs")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.tap("Add a source: made in the shop")
	part := s.State.Own.Jobs[0].Parts[0]
	if len(part.Options) != 2 || part.Options[1].Source != "made" {
		t.Fatalf("the part is %+v", part)
	}
	s.tap("Remove the source: used")
	if got := s.State.Own.Jobs[0].Parts[0].Options; len(got) != 1 || got[0].Source != "made" {
		t.Errorf("the sources are %+v", got)
	}
}

// Replacing the hood is told to make the aiming needless, and then not.
func TestAJobThatAnotherMakesNeedlessIsNamed(t *testing.T) {
	s := at(t, "Repair jobs")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.find(1, "aim") // what it brings along comes first
	if got := s.State.Own.Jobs; len(got) != 1 || !slices.Equal(got[0].Spares, []string{"aim"}) {
		t.Fatalf("the own jobs are %+v", got)
	}
	s.tap("No longer needless")
	if got := s.State.Own.Jobs[0].Spares; len(got) != 0 {
		t.Errorf("still needless: %q", got)
	}
}

func TestTheChanceOfARiskIsCounted(t *testing.T) {
	s := at(t, "Hidden risks")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.retype(s.number(0), "6")
	if got := s.State.Know.Risks.Risks[0].Chance; got != (hidden.Beta{A: 6, B: 3}) {
		t.Errorf("the chance is %+v", got)
	}
	if got := s.listed(); !strings.Contains(got[0], "67 %") {
		t.Errorf("the table says %q", got)
	}
	s.find(1, "gap hood")
	if got := s.State.Own.Risks[0].Findings; len(got) != 1 || got[0].Finding != "gap" {
		t.Errorf("the findings are %+v", got)
	}
	s.wants("Is the hood gap uneven?")
}

// find types into the n-th field that finds an entry, and takes what it finds.
func (s *shop) find(n int, words string) {
	s.t.Helper()
	add := seen.All[*widgets.Suggest](s.page.Object())[n]
	s.window.Canvas().Focus(add)
	test.Type(add, words)
	seen.Press(add, fyne.KeyReturn)
}

// Every key of a job can be changed on the Bench: what rules it out, what moves its chance and its cost, what it brings, makes needless,
// does with its own and puts right; and a sign asks for anything that the survey says.
func TestEveryKeyOfAJobIsReached(t *testing.T) {
	s := at(t, "Repair jobs")
	seen.Press(s.page.First(), fyne.KeyReturn)
	for _, button := range []string{"Add a exception", "Add a move", "Add a scale"} {
		s.tap(strings.Replace(button, "a e", "an e", 1))
	}
	s.codes(7, "12") // of the exception; the move's and the scale's follow
	s.codes(14, "12")
	s.codes(21, "12")
	for n, words := range []string{"aim", "aim", "aim", "rail"} {
		s.find(n, words)
	}
	j := s.State.Own.Jobs[0]
	if len(j.Never) != 1 || len(j.Moves) != 1 || len(j.Scales) != 1 || len(j.Brings) != 1 || !slices.Equal(j.Spares, []string{"aim"}) ||
		!slices.Equal(j.Covers, []string{"aim"}) || !slices.Equal(j.Settles, []string{"rail"}) {
		t.Errorf("the job is %+v", j)
	}
	for n, want := range []lot.Sign{j.Never[0], j.Moves[0].When, j.Scales[0].When} {
		if !slices.Equal(want.Areas, []string{"12"}) {
			t.Errorf("sign %d asks for %+v", n, want)
		}
	}
	more := seen.All[*widgets.Select](s.page.Object())
	more = slices.DeleteFunc(more, func(x *widgets.Select) bool { return !slices.Contains(x.Options, "Kind of water") })
	more[1].SetSelected("Kind of water")
	s.codes(14, "salt, sewage")
	if got := s.State.Own.Jobs[0].Never[0].WaterKinds; !slices.Equal(got, []string{"salt", "sewage"}) {
		t.Errorf("the exception asks for the water %q", got)
	}
}

// An assembly is changed on the Bench, where damage spoils it too; an own one is added, and one with a fault is named and not sold.
func TestAssembliesAreChangedAndAdded(t *testing.T) {
	s := at(t, "Assemblies")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.codes(0, "car, pickup")
	for _, c := range seen.All[*widgets.Select](s.page.Object()) {
		if slices.Contains(c.Options, "marks") {
			c.SetSelected("disabling")
		}
	}
	s.find(0, "top")
	got := s.State.Know.Parts.Assemblies[0]
	if !slices.Equal(got.Kinds, []string{"car", "pickup"}) || got.Near["12"] != "disabling" || got.Near["top"] != "functional" {
		t.Errorf("the assembly is %+v", got)
	}
	s.tap("Add an assembly")
	if own := s.State.Own.Assemblies; len(own) != 2 || len(s.State.Know.Parts.Assemblies) != 2 || len(s.State.OwnFaults) != 0 {
		t.Errorf("the shop's own are %+v, faults %v", own, s.State.OwnFaults)
	}
	s.Do(desk.EditOwn("a fault", func(o *valuation.Own) { o.Assemblies[1].Chance = 2 }))
	s.wants("Not used as long as this stands")
	if n := len(s.State.Know.Parts.Assemblies); n != 1 {
		t.Errorf("%d assemblies are sold", n)
	}
}

func TestTheMinutesOfALookAreSet(t *testing.T) {
	s := at(t, "Things to look at")
	seen.Press(s.page.First(), fyne.KeyReturn)
	s.retype(s.number(0), "2.5")
	if got := s.State.Know.Risks.Findings[0].Minutes; got != 2.5 {
		t.Errorf("it takes %g minutes", got)
	}
}

// The first change makes an entry the shop's own. The field keeps the keyboard, and Tab goes on to the next one, as without a change.
func TestAChangedEntryKeepsTheKeyboard(t *testing.T) {
	s := at(t, "Repair jobs")
	list := seen.All[*table.Table](s.page.Object())[0]
	list.SelectRow(1)
	list.OnSelected(1)
	canvas := s.window.Canvas()
	canvas.Focus(s.number(0))
	canvas.FocusNext()
	next := canvas.Focused()
	s.retype(s.number(0), "40")
	if len(s.State.Own.Jobs) != 1 || canvas.Focused() != s.number(0) {
		t.Fatalf("%d own jobs, the keyboard is at %T", len(s.State.Own.Jobs), canvas.Focused())
	}
	if canvas.FocusNext(); canvas.Focused() != next || next == s.page.First() {
		t.Errorf("Tab goes to %T, want the next field", canvas.Focused())
	}
	s.tap("Put the starter value back")
	if s.wants("Starter values"); len(s.State.Own.Jobs) != 0 {
		t.Errorf("%d own jobs", len(s.State.Own.Jobs))
	}
}
