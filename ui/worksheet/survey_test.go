package worksheet

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/ui/theme"
	"walkline/ui/widgets"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
)

// choosing returns the field that offers a word, the n-th of them.
func (b *bench) choosing(t *testing.T, word string, n int) *widgets.Select {
	t.Helper()
	for _, s := range seen.All[*widgets.Select](b.page.Object()) {
		if slices.Contains(s.Options, word) {
			if n == 0 {
				return s
			}
			n--
		}
	}
	t.Fatalf("no field offers %q", word)
	return nil
}

// fold presses the line of a topic.
func (b *bench) fold(t *testing.T, topic string) {
	t.Helper()
	for _, x := range seen.All[*widgets.Button](b.page.Object()) {
		if strings.HasPrefix(x.Text, topic) {
			test.Tap(x)
			return
		}
	}
	t.Fatalf("no line for %q", topic)
}

func (b *bench) tick(t *testing.T, words string) {
	t.Helper()
	for _, c := range seen.All[*widgets.Check](b.page.Object()) {
		if c.Text == words {
			test.Tap(c)
			return
		}
	}
	t.Fatalf("no tick %q", words)
}

// Selecting an area by mouse or by arrows keeps no step and marks nothing; the fields beside the plan do, and undo takes it back.
func TestReadingAnAreaNeverChangesIt(t *testing.T) {
	c := plainCase()
	c.Damage = []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted", Note: "grille"}}
	b := at(t, "Damage", c)
	p := seen.All[*plan.Plan](b.page.Object())[0]
	before := len(b.Steps)
	for y := float32(0); y < p.Size().Height; y += 12 {
		for x := float32(0); x < p.Size().Width; x += 12 {
			test.TapAt(p, fyne.NewPos(x, y))
		}
	}
	if got := b.State.Open.Case.Damage; len(b.Steps) != before || !slices.Equal(got, c.Damage) {
		t.Errorf("clicks all over the plan made the steps %q and left %v", b.Steps[before:], got)
	}
	p.Select("06")
	b.show(b.State)
	b.wants(t, "Selected: 06 rear")
	b.choosing(t, unhurt, 0).SetSelected("disabling")
	b.choosing(t, "structure", 0).SetSelected("structure")
	want := append(slices.Clone(c.Damage), lot.Damage{Area: "06", Extent: "disabling", Depth: "structure"})
	if got := b.State.Open.Case.Damage; !slices.Equal(got, want) {
		t.Errorf("the survey is %+v", got)
	}
	b.choosing(t, unhurt, 0).SetSelected(unhurt)
	if got := b.State.Open.Case.Damage; !slices.Equal(got, c.Damage) {
		t.Errorf("cleared, the survey is %+v", got)
	}
	if b.Do(desk.Undo()); !slices.Equal(b.State.Open.Case.Damage, want) {
		t.Errorf("undone, the survey is %+v", b.State.Open.Case.Damage)
	}
}

// All that the survey says is entered in the window, one field at a time; at first nothing of it is known.
func TestTheSurveyIsEnteredInTheWindow(t *testing.T) {
	b := at(t, "Damage", plainCase())
	b.wants(t, "Missing parts: not known", "Water: not known", "Hail: not known", "Fire and smoke: not known", "Mechanical: not known")
	for _, topic := range damage.Topics {
		b.fold(t, topic)
	}
	b.tick(t, "catalytic converter")
	b.choosing(t, "to the dash", 0).SetSelected("to the dash")
	b.choosing(t, "salt", 0).SetSelected("salt")
	b.choosing(t, "many, to about 75", 0).SetSelected("many, to about 75")
	b.choosing(t, "large", 0).SetSelected("large")
	b.choosing(t, "no dents", 0).SetSelected("no dents")
	b.choosing(t, "no dents", 1).SetSelected("beaten")
	b.tick(t, "stay in")
	b.choosing(t, "smoke only", 0).SetSelected("smoke only")
	b.tick(t, "interior")
	b.tick(t, "overheated")
	for _, topic := range b.page.survey.topics {
		if wide := topic.fields.MinSize().Width; wide > listWidth-theme.Space {
			t.Errorf("the fields of %q want %v of the %d beside the plan", topic.name, wide, listWidth)
		}
	}
	s := b.State.Open.Case.Survey
	if s == nil || s.Water == nil || s.Hail == nil || s.Fire == nil {
		t.Fatalf("the survey is %+v", s)
	}
	if !slices.Equal(s.Missing, []string{"catalytic_converter"}) || s.Water.Height != "dash" || s.Water.Kind != "salt" ||
		s.Water.Hours != nil ||
		s.Fire.Reach != "smoke" || !slices.Equal(s.Fire.Where, []string{"interior"}) || !slices.Equal(s.Causes, []string{"overheated"}) {
		t.Errorf("the survey is %+v, water %+v, fire %+v", s, s.Water, s.Fire)
	}
	if h := s.Hail; h.Count != "many" || h.Size != "large" || !h.Left || slices.Contains(h.Hit(), "hood") || len(h.Hit()) != 4 ||
		h.On("roof") != (lot.Dents{Count: "beaten", Size: "large"}) {
		t.Errorf("the hail is %+v", h)
	}
	b.wants(t, "to the dash, salt", "roof beaten, more a panel", "catalytic converter")
	for range len(b.Steps) {
		b.Do(desk.Undo())
	}
	if b.State.Open.Case.Survey != nil {
		t.Errorf("all undone, the survey is %+v", b.State.Open.Case.Survey)
	}
	b.wants(t, "Water: not known")
}

// What was said is taken back to "not known", and then nothing of a survey is kept.
func TestWhatIsNotKnownIsNoValue(t *testing.T) {
	b := at(t, "Facts", plainCase())
	kind := b.choosing(t, "sport utility", 0)
	if kind.Selected != damage.NotKnown || b.State.Open.Case.Survey != nil {
		t.Fatalf("at first the kind is %q, the survey %+v", kind.Selected, b.State.Open.Case.Survey)
	}
	for word, want := range map[string]string{"sport utility": "utility", "motorcycle": "motorcycle"} {
		kind.SetSelected(word)
		c := b.State.Open.Case
		if c.Survey == nil || c.Survey.Kind != want || c.Repair.UseCatalogue != (want != "motorcycle") || len(b.State.Open.Faults) > 0 {
			t.Errorf("%s: survey %+v, catalogue %v, faults %v", word, c.Survey, c.Repair.UseCatalogue, b.State.Open.Faults)
		}
	}
	b.choosing(t, "5", 0).SetSelected("5")
	if got := b.State.Open.Case.Survey.Doors; got != 5 {
		t.Errorf("%d doors", got)
	}
	b.choosing(t, "5", 0).SetSelected(damage.NotKnown)
	kind.SetSelected(damage.NotKnown)
	if c := b.State.Open.Case; c.Survey != nil || !c.Repair.UseCatalogue {
		t.Errorf("taken back, the survey is %+v, catalogue %v", c.Survey, c.Repair.UseCatalogue)
	}
}
