package widgets

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/theme"
	"walkline/valuation/lot"
)

// CreateRenderer returns the renderer.
func (p *Plan) CreateRenderer() fyne.WidgetRenderer { return newPlanRenderer(p) }

// planRenderer draws the cells as one picture, kept until something in it changes, and the words as texts over it.
type planRenderer struct {
	plan     *Plan
	raster   *canvas.Raster
	ring     *canvas.Rectangle
	numbers  [clockPoints]*text
	names    [planTiles]*text
	states   [planTiles]*text
	legend   [8]*text // two headings, three extents, three depths
	front    *text
	caption  *text
	hint     *text
	geometry planGeometry
	shown    planPicture
	image    image.Image
}

const planHint = "Arrows move · 0 to 3 or Space: extent · D: depth"

func newPlanRenderer(p *Plan) *planRenderer {
	r := &planRenderer{plan: p, ring: newFocusRing()}
	r.raster = canvas.NewRaster(r.picture)
	for i := range r.numbers {
		r.numbers[i] = newText(lot.Areas[i], theme.SizeSmall, colorForeground)
	}
	for i := range r.names {
		r.names[i] = newText(capital(AreaName(lot.Areas[clockPoints+i])), theme.SizeSmall, colorForeground)
		r.states[i] = newText("", theme.SizeSmall, theme.ColorMuted)
	}
	words := append(append([]string{"Extent", "Depth"}, lot.Extents...), lot.Depths...)
	for i, w := range words {
		r.legend[i] = newText(w, theme.SizeSmall, theme.ColorMuted)
	}
	r.front = newText("front", theme.SizeSmall, theme.ColorMuted)
	r.caption = newText("", theme.SizeBody, colorForeground)
	r.hint = newText(planHint, theme.SizeSmall, theme.ColorMuted)
	r.words()
	return r
}

// capital returns words with their first letter raised.
func capital(words string) string {
	if words == "" {
		return words
	}
	return strings.ToUpper(words[:1]) + words[1:]
}

func (r *planRenderer) texts() []*text {
	all := append([]*text{r.front, r.caption, r.hint}, r.numbers[:]...)
	all = append(append(all, r.names[:]...), r.states[:]...)
	return append(all, r.legend[:]...)
}

func (r *planRenderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.ring, r.raster}
	for _, t := range r.texts() {
		objects = append(objects, t.Text)
	}
	return objects
}

func (r *planRenderer) MinSize() fyne.Size { return planMinSize() }

func (r *planRenderer) Destroy() {}

func (r *planRenderer) Layout(size fyne.Size) {
	r.geometry = planGeometryFor(size)
	g := &r.geometry
	r.raster.Resize(size)
	showFocus(r.ring, r.plan.focused, g.used())
	half := lineHeight(theme.SizeSmall) / 2
	for i, t := range r.numbers {
		t.place(g.cells[i].center().SubtractXY(0, half), 0.5)
	}
	for i := range r.names {
		at := fyne.NewPos(g.words, g.cells[clockPoints+i].center().Y)
		r.states[i].place(at, 0)
		if r.states[i].Text.Text == "" {
			r.names[i].place(at.SubtractXY(0, half), 0)
		} else {
			r.names[i].place(at.SubtractXY(0, 2*half), 0)
		}
	}
	r.front.place(g.middle.SubtractXY(0, g.inner*0.68+half), 0.5)
	r.caption.place(fyne.NewPos(0, g.caption), 0)
	r.hint.place(fyne.NewPos(0, g.caption+lineHeight(theme.SizeBody)), 0)
	r.layoutLegend(half)
}

func (r *planRenderer) layoutLegend(half float32) {
	g := &r.geometry
	beside := func(t *text, sample tile) {
		t.place(fyne.NewPos(sample.pos.X+sample.size.Width+theme.Half+2, sample.center().Y-half), 0)
	}
	above := g.extents[0].pos.SubtractXY(0, planLegendStep())
	r.legend[0].place(above, 0)
	r.legend[1].place(above.AddXY(planLegendColumn(), 0), 0)
	for i := range g.extents {
		beside(r.legend[2+i], g.extents[i])
		beside(r.legend[5+i], g.depths[i])
	}
}

// words brings the texts up to the survey.
func (r *planRenderer) words() {
	for i, t := range r.states {
		d := r.plan.survey.cells[clockPoints+i]
		t.Text.Text = ""
		if d.Extent != "" {
			t.Text.Text = hurtWords(d.Extent, d.Depth)
		}
	}
	r.caption.Text.Text = r.plan.Caption()
	r.hint.Text.Text = ""
	if r.plan.focused {
		r.hint.Text.Text = planHint
	}
}

func (r *planRenderer) Refresh() {
	r.words()
	for _, t := range r.texts() {
		t.dress()
		t.Refresh()
	}
	r.Layout(r.plan.Size())
	r.raster.Refresh()
}

// picture returns the cells drawn w x h pixels large, from the last drawing when nothing changed.
func (r *planRenderer) picture(w, h int) image.Image {
	pic := planPicture{width: w, height: h, size: r.plan.Size(), cells: [19]lot.Damage(r.plan.survey.cells),
		chosen: r.plan.survey.selected, focused: r.plan.focused, colors: planColorsNow()}
	if r.image == nil || pic != r.shown {
		r.image, r.shown = pic.painted(planGeometryFor(pic.size)), pic
	}
	return r.image
}
