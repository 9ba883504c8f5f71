package worksheet

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	toolkit "fyne.io/fyne/v2/theme"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/damage"
	"walkline/ui/form"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// topic is one thing that the survey says beside the damaged areas: a line that says it in words, and its fields, which a press on
// the line folds out.
type topic struct {
	name   string
	line   *widgets.Button
	words  *widget.RichText // what is known of it
	said   string           // by line and words
	form   *form.Form
	fields fyne.CanvasObject
}

// newTopics returns the topics of the survey; grown is called when one has folded out or in.
func newTopics(p *Page, grown func()) []*topic {
	var all []*topic
	for _, name := range damage.Topics {
		t := &topic{name: name, form: form.New(form.Surveyed(p.edit)), words: form.Small("")}
		t.fields = form.Topic(t.form, name)
		t.fields.Hide()
		t.line = widgets.NewButtonWithIcon("", toolkit.MenuExpandIcon(), func() {
			t.fold(!t.fields.Visible())
			grown()
		})
		t.line.Alignment, t.line.Importance = widget.ButtonAlignLeading, widget.LowImportance
		all = append(all, t)
	}
	return all
}

// fold folds the fields out or in.
func (t *topic) fold(out bool) {
	t.fields.Hide()
	t.line.SetIcon(toolkit.MenuExpandIcon())
	if out {
		t.fields.Show()
		t.line.SetIcon(toolkit.MenuDropDownIcon())
	}
}

// show writes the survey into the fields and says it in words; it reports whether these have changed.
func (t *topic) show(c valuation.Case) (changed bool) {
	t.form.Render(c)
	words := damage.Topic(c.Survey, t.name)
	if t.said == words {
		return false
	}
	t.said = words
	t.words.Hide()
	if words == damage.NotKnown {
		t.line.SetText(t.name + ": " + words)
		return true
	}
	t.line.SetText(t.name)
	t.words.Segments[0].(*widget.TextSegment).Text = words
	t.words.Refresh()
	t.words.Show()
	return true
}

// topicsBody lays the topics out under each other.
func topicsBody(all []*topic) fyne.CanvasObject {
	body := container.NewVBox(form.Heading("Beside the areas",
		"Press a line to fill it in. A question left open counts as not known, never as none."))
	for _, t := range all {
		body.Add(t.line)
		body.Add(t.words)
		body.Add(t.fields)
	}
	body.Add(widget.NewSeparator())
	return body
}
