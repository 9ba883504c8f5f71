// Package rail answers: which section of a page is shown?
//
// A [Rail] is a row or a column of buttons, one a section, and the room in which the section of the moment lies. The button
// of that section is lit. The page lays the two out, and writes a section when the rail tells that it was gone to.
//
// What it does not do: it knows nothing of what a section holds, and remembers no section from one start to the next.
package rail

import (
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// Section is a part of a page.
type Section struct {
	Name string
	Body fyne.CanvasObject
}

// Rail shows one section at a time.
type Rail struct {
	Buttons *fyne.Container // to be laid out
	Room    *fyne.Container // to be laid out

	sections []Section
	buttons  []*widgets.Button
	current  int
	gone     func(i int)
}

// Across returns a rail whose buttons stand in a row, showing its first section. gone is called when a section was gone to.
func Across(sections []Section, gone func(i int)) *Rail {
	return build(sections, container.NewHBox(), widget.ButtonAlignCenter, gone)
}

// Down returns a rail whose buttons stand in a column.
func Down(sections []Section, gone func(i int)) *Rail {
	return build(sections, container.NewVBox(), widget.ButtonAlignLeading, gone)
}

func build(sections []Section, buttons *fyne.Container, align widget.ButtonAlign, gone func(int)) *Rail {
	r := &Rail{Buttons: buttons, Room: container.NewStack(), sections: sections, gone: gone}
	for i, s := range sections {
		b := widgets.NewButton(s.Name, func() { r.Go(i) })
		b.Alignment = align
		r.buttons = append(r.buttons, b)
		buttons.Add(b)
	}
	r.show(0)
	return r
}

// Go shows a section and tells the page.
func (r *Rail) Go(i int) {
	r.show(i)
	r.gone(i)
}

func (r *Rail) show(i int) {
	r.current = i
	for k, b := range r.buttons {
		b.Importance = widget.LowImportance
		if k == i {
			b.Importance = widget.HighImportance
		}
		b.Refresh()
	}
	r.Room.Objects = []fyne.CanvasObject{r.sections[i].Body}
	r.Room.Refresh()
}

// Close takes the button of a section away, or gives it back; the section that is shown stays.
func (r *Rail) Close(i int, closed bool) { r.buttons[i].Hidden = closed }

// Current returns the section that is shown.
func (r *Rail) Current() int { return r.current }

// Names returns the names of the sections in order.
func (r *Rail) Names() []string {
	var names []string
	for _, s := range r.sections {
		names = append(names, s.Name)
	}
	return names
}
