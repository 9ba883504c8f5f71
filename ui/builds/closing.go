package builds

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
)

// closing asks about what is open of a build that is said to have ended.
type closing struct {
	page *Page
	body *fyne.Container
}

func newClosing(p *Page) *closing { return &closing{page: p, body: container.NewVBox()} }

// render shows the questions, each with what answers it at once where something does.
func (c *closing) render(o desk.OpenBuild) {
	c.body.Objects = nil
	questions := o.Questions()
	if c.body.Hidden = o.Build.Closing == "" || len(questions) == 0; c.body.Hidden {
		return
	}
	help := "Until they are answered this build teaches nothing."
	if o.Build.Closing == build.Partly {
		help = "It was closed with them open: what was not entered is taken as not known."
	}
	c.body.Add(form.Heading("Before it teaches: open questions", help))
	for _, q := range questions {
		words := widgets.NewNote(widgets.Info, view.QuestionWords(q))
		if answer := view.AnswerWords(q); answer != "" {
			all := widget.NewButton(answer, func() { c.page.do(desk.AnswerAll(q)) })
			c.body.Add(container.NewBorder(nil, nil, nil, container.NewVBox(all), words))
			continue
		}
		c.body.Add(words)
	}
	if o.Build.Closing == build.Asking {
		c.body.Add(container.NewHBox(widget.NewButton("Close as it is: what is open is not known",
			func() { c.page.do(desk.CloseAsItIs()) })))
	}
	c.body.Refresh()
}
