package form

import (
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

func TestCodesAreReadAsPeopleWriteThem(t *testing.T) {
	for text, want := range map[string][]string{"": nil, "12, 1 ,Engine Bay": {"12", "01", "engine_bay"}, "top,": {"top"}} {
		if got, err := coded(text, lot.Areas); err != nil || !slices.Equal(got, want) {
			t.Errorf("%q reads %q, %v", text, got, err)
		}
	}
	if _, err := coded("12, bonnet", lot.Areas); err == nil || err.Error() != `"bonnet" is none of its words` {
		t.Errorf("an area that is none: %v", err)
	}
}

// edited is a form over a case, with what was edited in it.
type edited struct {
	c      valuation.Case
	labels []string
}

func (e *edited) edit(label string, change func(*valuation.Case)) {
	e.labels = append(e.labels, label)
	change(&e.c)
}

func TestAmountsHaveTheDecimalsOfTheirCurrency(t *testing.T) {
	e := &edited{c: valuation.Defaults()}
	e.c.Currency = "JPY"
	f := New(e.edit)
	Selling(f)
	seen.Open(t, fyne.NewSize(900, 400), f.Rows)
	f.Render(e.c)
	if len(e.labels) > 0 {
		t.Fatalf("writing the case edited %q", e.labels)
	}
	flat := seen.All[*widgets.NumberEntry](f.Rows)[1]
	test.Type(flat.Focus(), "1.5")
	if got := flat.Fault(); got != "no decimals here" || e.c.Selling.Flat > 1 {
		t.Errorf("one yen and a half: %q, kept %g", got, e.c.Selling.Flat)
	}
}

func TestNamesOfFeesFollowTheCase(t *testing.T) {
	e := &edited{c: valuation.Defaults()}
	e.c.Currency = "USD"
	e.c.Buying.Fees = []invoice.Schedule{{Name: "Buyer's fee", Mode: "whole", Rows: []invoice.Row{{}}}}
	terms := NewTerms(e.edit, "")
	seen.Open(t, fyne.NewSize(900, 900), container.NewStack(terms.Body))
	terms.Render(e.c)
	name := seen.All[*widgets.TextEntry](terms.Body)[0]
	other := e.c.Clone()
	other.Buying.Fees[0].Name = "Gate fee"
	terms.Render(other)
	if name.Text != "Gate fee" || len(e.labels) > 0 {
		t.Errorf("the name says %q after the edits %q", name.Text, e.labels)
	}
	test.Type(name, "s")
	if got := e.c.Buying.Fees[0].Name; got == "Buyer's fee" || len(e.labels) != 1 {
		t.Errorf("typed, the name is %q after the edits %q", got, e.labels)
	}
}

// TestADayThatIsRefusedStaysWhileItIsTyped types a day that begins as one that the form's owner refuses: 2026-11-2 before 2026-11-27.
func TestADayThatIsRefusedStaysWhileItIsTyped(t *testing.T) {
	c := valuation.Defaults()
	var f *Form
	f = New(func(_ string, change func(*valuation.Case)) {
		next := c
		if change(&next); next.ValuedOn == "" || next.ValuedOn >= "2026-11-20" {
			c = next
		}
		f.Render(c)
	})
	f.Date("Valued on", func(c *valuation.Case) *lot.Date { return &c.ValuedOn })
	w := seen.Open(t, fyne.NewSize(500, 100), f.Rows)
	f.Render(c)
	e := seen.All[*widgets.TextEntry](f.Rows)[0]
	w.Canvas().Focus(e)
	test.Type(e, "2026-11-27")
	if e.Text != "2026-11-27" || c.ValuedOn != "2026-11-27" {
		t.Errorf("typed %q, kept %q", e.Text, c.ValuedOn)
	}
	w.Canvas().Unfocus()
	e.SetText("2026-11-2")
	if f.Render(c); e.Text == "2026-11-2" {
		t.Error("a day that was refused stands as if it were kept")
	}
}

// In a narrow place a label goes over its field, and nothing is wider than the place.
func TestLabelsGoOverFieldsWhereThereIsNoRoom(t *testing.T) {
	type one struct{ name string }
	f := NewOf(func(string, func(*one)) {}, func(one) money.Currency { return money.Currency{} })
	pane := NewFit(f.Rows)
	f.Fit(pane)
	f.Text("Chance needed", func(o *one) *string { return &o.name })
	w := seen.Open(t, fyne.NewSize(500, 200), pane.Pane)
	label, field := f.Rows.Objects[0], f.Rows.Objects[1]
	if field.Position().X < label.Size().Width || field.Position().Y != 0 {
		t.Errorf("in a wide place the field is at %v", field.Position())
	}
	w.Resize(fyne.NewSize(130, 200))
	if field.Position().X != 0 || field.Position().Y < label.Size().Height || f.Rows.MinSize().Width > 130 ||
		f.Rows.MinSize().Height < label.Size().Height+field.Size().Height {
		t.Errorf("in a narrow place the field is at %v, the rows ask for %v", field.Position(), f.Rows.MinSize())
	}
}

// Where labels stand over their fields, low, likely and high stand between the label and the boxes, not over the label.
func TestHeadsStandRightOverTheBoxes(t *testing.T) {
	type one struct{ hours prob.Three }
	f := NewOf(func(string, func(*one)) {}, func(one) money.Currency { return money.Currency{} })
	pane := NewFit(f.Rows)
	f.Fit(pane)
	e := f.Three("Body hours", widgets.Spec{}, func(o *one) any { return &o.hours })
	w := seen.Open(t, fyne.NewSize(900, 200), pane.Pane)
	heads, label := f.Rows.Objects[1], f.Rows.Objects[2]
	if heads.Position().Y != 0 || label.Position().Y < heads.Size().Height {
		t.Errorf("in a wide place the heads are at %v, the label at %v", heads.Position(), label.Position())
	}
	w.Resize(fyne.NewSize(e.MinSize().Width+20, 200))
	if y := heads.Position().Y; label.Position().Y != 0 || y < label.Size().Height || e.Position().Y < y+heads.Size().Height {
		t.Errorf("in a narrow place: label at %v, heads at %v, boxes at %v", label.Position(), y, e.Position())
	}
}

// The cells of a typed row never touch: where the text is large, or the place narrow, there are more rows.
func TestCellsOfARowNeverTouch(t *testing.T) {
	for _, width := range []float32{1200, 500, 260} {
		line := NewComparable(func(map[string]string) {}, func() {})
		w := seen.Open(t, fyne.NewSize(width, 900), container.NewVBox(line.Row))
		w.Resize(fyne.NewSize(width+1, 900))
		for name, e := range line.cells {
			if e.Size().Width < e.MinSize().Width {
				t.Errorf("at %v the cell %s is %v wide", width, name, e.Size().Width)
			}
		}
		for _, o := range seen.All[*widgets.Words](line.Row) {
			if o.Size().Width < o.MinSize().Width {
				t.Errorf("at %v %q has %v of %v", width, o.Text(), o.Size().Width, o.MinSize().Width)
			}
		}
	}
}

// A line that needs more rows in a narrower window gets their height at once, and is not cut off at the foot.
func TestWhatStandsAtTheFootKeepsItsHeight(t *testing.T) {
	line := NewComparable(func(map[string]string) {}, func() {})
	w := seen.Open(t, fyne.NewSize(1200, 600), Under(widgets.NewCaption("Comparables"), widgets.NewCaption("rows"), line.Row))
	for _, width := range []float32{500, 1200, 260} {
		w.Resize(fyne.NewSize(width, 600))
		if line.Row.Size().Height != line.Row.MinSize().Height {
			t.Errorf("at %v the line asks for %v and has %v", width, line.Row.MinSize(), line.Row.Size())
		}
	}
}

// The day of a comparable is typed as people write days, and stands so in its cell.
func TestTheDayOfAComparableIsTypedAsPeopleWriteIt(t *testing.T) {
	var got map[string]string
	line := NewComparable(func(cells map[string]string) { got = cells }, func() {})
	seen.Open(t, fyne.NewSize(900, 200), line.Row)
	for typed, want := range map[string]string{"Oct 2, 2026": "2026-10-02", "2026-10-02": "2026-10-02", "10/30/2026": "2026-10-30",
		"soon": "soon",
		"":     ""} {
		line.cells["date"].SetText(typed)
		if line.cells["date"].OnSubmitted(""); got["date"] != want {
			t.Errorf("%q is handed on as %q, want %q", typed, got["date"], want)
		}
	}
}
