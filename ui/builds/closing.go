package builds

import (
	"walkline/ui/widgets/draw"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/build"
)

// closing asks about what is open of a build that is said to have ended.
type closing struct {
	page    *Page
	body    *fyne.Container
	answers []*widgets.Button // each answers one question at once
}

func newClosing(p *Page) *closing { return &closing{page: p, body: container.NewVBox()} }

// render shows the questions, each with what answers it at once where something does.
func (c *closing) render(o desk.OpenBuild) {
	c.body.Objects, c.answers = nil, nil
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
			c.body.Add(container.NewBorder(nil, nil, nil, c.buttons(q, answer), words))
			continue
		}
		c.body.Add(words)
	}
	if o.Build.Closing == build.Asking {
		c.body.Add(container.NewHBox(widgets.NewButton("Close as it is: what is open is not known",
			func() { c.page.do(desk.CloseAsItIs()) })))
	}
	c.body.Refresh()
}

// buttons returns what answers a question at once. That what has no bill cost as forecast comes before that it cost nothing.
func (c *closing) buttons(q desk.Question, words string) fyne.CanvasObject {
	keys := container.NewVBox()
	add := func(words string, does func(desk.Question) desk.Action) {
		key := widgets.NewButton(words, func() { c.answer(does(q)) })
		c.answers = append(c.answers, key)
		keys.Add(key)
	}
	if q.About == desk.OpenCosts {
		add("As it was forecast", desk.TakeForecast)
	}
	add(words, desk.AnswerAll)
	return keys
}

// answer answers a question; the next one that can be takes the keyboard, for the buttons are new ones then. After the last the window
// has it.
func (c *closing) answer(a desk.Action) {
	canvas := draw.CanvasOf(c.body)
	c.page.do(a)
	switch next := c.first(); {
	case canvas == nil:
	case next == nil:
		canvas.Unfocus()
	default:
		canvas.Focus(next)
	}
}

// first returns what answers the first question at once, nil where nothing does.
func (c *closing) first() fyne.Focusable {
	if c.body.Hidden || len(c.answers) == 0 {
		return nil
	}
	return c.answers[0]
}
