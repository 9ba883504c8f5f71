package bench

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation"
)

// mostShown is how many changes of the starter are laid out at once; the others follow as these are decided.
const mostShown = 25

// StarterSection is the name of the section of changes in the starter catalogues.
const StarterSection = "Starter changes"

// starterChanges is the section of what a later version changed in the starter catalogues: each entry is taken or left.
type starterChanges struct {
	page  *Page
	sum   *widget.RichText
	all   *fyne.Container
	list  *fyne.Container
	first fyne.Focusable
}

func newStarterChanges(p *Page) *section {
	s := &starterChanges{page: p, sum: form.Small(""), list: container.NewVBox()}
	take := widgets.NewButton("Take all", func() { p.do(desk.TakeStarter(s.keys()...)) })
	leave := widgets.NewButton("Keep all mine", func() { p.do(desk.LeaveStarter(s.keys()...)) })
	s.all = container.NewHBox(take, leave)
	s.first = take
	head := container.NewVBox(form.Heading("Changes in the starter catalogues", "What you work with stays as it is until you take another "+
		"entry. Taking one also gives up what you changed in it; what you keep is named again when it changes again."), s.sum, s.all)
	body := form.Under(head, container.NewVScroll(s.list), nil)
	return &section{name: StarterSection, body: body, show: s.show, first: func() fyne.Focusable { return s.first }}
}

func (s *starterChanges) keys() []valuation.EntryKey {
	var keys []valuation.EntryKey
	for _, c := range s.page.state.StarterChanges {
		keys = append(keys, c.Key)
	}
	return keys
}

func (s *starterChanges) show(st desk.State) {
	s.sum.Segments[0].(*widget.TextSegment).Text = view.StarterSum(st)
	s.sum.Refresh()
	s.all.Hidden = len(st.StarterChanges) == 0
	s.all.Refresh()
	s.list.Objects = nil
	changes := view.StarterChanges(st)
	for i, c := range changes {
		if i == mostShown {
			s.list.Add(form.Small(fmt.Sprintf("%d more follow.", len(changes)-i)))
			break
		}
		s.list.Add(s.change(c))
	}
	s.list.Refresh()
}

// change lays out one entry with what is to be decided.
func (s *starterChanges) change(c view.StarterChange) fyne.CanvasObject {
	title := widget.NewLabel(c.Title)
	title.TextStyle.Bold, title.Wrapping = true, fyne.TextWrapWord
	body := container.NewVBox(title)
	for _, words := range c.Lines {
		body.Add(form.Small(words))
	}
	body.Add(container.NewHBox(widgets.NewButton("Take", func() { s.page.do(desk.TakeStarter(c.Key)) }),
		widgets.NewButton("Keep mine", func() { s.page.do(desk.LeaveStarter(c.Key)) })))
	body.Add(widget.NewSeparator())
	return body
}
