package plan

import (
	"image"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/damage"
	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// CreateRenderer returns the renderer.
func (p *Plan) CreateRenderer() fyne.WidgetRenderer { return newRenderer(p) }

// renderer draws the cells as one picture, kept until something in it changes, and the words as texts over it.
type renderer struct {
	plan     *Plan
	raster   *canvas.Raster
	ring     *canvas.Rectangle
	numbers  [clockPoints]*draw.Text
	names    [tiles]*draw.Text
	states   [tiles]*draw.Text
	legend   [8]*draw.Text // two headings, three extents, three depths
	front    *draw.Text
	caption  *draw.Text
	hint     *draw.Text
	geometry geometry
	shown    picture
	image    image.Image
}

const hintWords = "Arrows move · 0 to 3 or Space: extent · S, B, T or D: depth"

func newRenderer(p *Plan) *renderer {
	r := &renderer{plan: p, ring: draw.NewFocusRing()}
	r.raster = canvas.NewRaster(r.picture)
	for i := range r.numbers {
		r.numbers[i] = draw.NewText(lot.Areas[i], theme.SizeSmall, draw.Foreground)
	}
	for i := range r.names {
		r.names[i] = draw.NewText(capital(damage.Area(lot.Areas[clockPoints+i])), theme.SizeSmall, draw.Foreground)
		r.states[i] = draw.NewText("", theme.SizeSmall, theme.ColorMuted)
	}
	words := append(append([]string{"Extent", "Depth"}, lot.Extents...), lot.Depths...)
	for i, w := range words {
		r.legend[i] = draw.NewText(w, theme.SizeSmall, theme.ColorMuted)
	}
	r.front = draw.NewText("front", theme.SizeSmall, theme.ColorMuted)
	r.caption = draw.NewText("", theme.SizeBody, draw.Foreground)
	r.hint = draw.NewText(hintWords, theme.SizeSmall, theme.ColorMuted)
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

func (r *renderer) texts() []*draw.Text {
	all := append([]*draw.Text{r.front, r.caption, r.hint}, r.numbers[:]...)
	all = append(append(all, r.names[:]...), r.states[:]...)
	return append(all, r.legend[:]...)
}

func (r *renderer) Objects() []fyne.CanvasObject {
	objects := []fyne.CanvasObject{r.raster, r.ring}
	for _, t := range r.texts() {
		objects = append(objects, t.Text)
	}
	return objects
}

func (r *renderer) MinSize() fyne.Size { return leastSize() }

func (r *renderer) Destroy() {}

func (r *renderer) Layout(size fyne.Size) {
	r.geometry = geometryFor(size)
	g := &r.geometry
	r.raster.Resize(size)
	draw.ShowFocus(r.ring, r.plan.focused, g.used())
	half := draw.LineHeight(theme.SizeSmall) / 2
	for i, t := range r.numbers {
		t.Place(center(g.cells[i]).SubtractXY(0, half), 0.5)
	}
	for i := range r.names {
		at := fyne.NewPos(g.words, center(g.cells[clockPoints+i]).Y)
		r.states[i].Place(at, 0)
		if r.states[i].Text.Text == "" {
			r.names[i].Place(at.SubtractXY(0, half), 0)
		} else {
			r.names[i].Place(at.SubtractXY(0, 2*half), 0)
		}
	}
	r.front.Place(g.middle.SubtractXY(0, g.inner*0.68+half), 0.5)
	r.caption.Place(fyne.NewPos(0, g.caption), 0)
	r.hint.Place(fyne.NewPos(0, g.caption+draw.LineHeight(theme.SizeBody)), 0)
	r.layoutLegend(half)
}

func (r *renderer) layoutLegend(half float32) {
	g := &r.geometry
	beside := func(t *draw.Text, sample damage.Tile) {
		t.Place(fyne.NewPos(sample.Pos.X+sample.Width+theme.Half+2, sample.Center().Y-half), 0)
	}
	above := fyne.Position(g.extents[0].Pos).SubtractXY(0, legendStep())
	r.legend[0].Place(above, 0)
	r.legend[1].Place(above.AddXY(legendColumn(), 0), 0)
	for i := range g.extents {
		beside(r.legend[2+i], g.extents[i])
		beside(r.legend[5+i], g.depths[i])
	}
}

// words brings the texts up to the survey.
func (r *renderer) words() {
	for i, t := range r.states {
		d := r.plan.survey.cells[clockPoints+i]
		t.Text.Text = ""
		if d.Extent != "" {
			t.Text.Text = damage.State(d)
		}
	}
	r.caption.Text.Text = r.plan.Caption()
	r.hint.Text.Text = ""
	if r.plan.focused {
		r.hint.Text.Text = hintWords
	}
}

func (r *renderer) Refresh() {
	r.words()
	for _, t := range r.texts() {
		t.Dress()
		t.Refresh()
	}
	r.Layout(r.plan.Size())
	r.raster.Refresh()
}

// picture returns the cells drawn w x h pixels large, from the last drawing when nothing changed.
func (r *renderer) picture(w, h int) image.Image {
	pic := picture{width: w, height: h, size: r.plan.Size(), cells: [19]lot.Damage(r.plan.survey.cells),
		chosen: r.plan.survey.selected, focused: r.plan.focused, colors: colorsNow()}
	for i, area := range lot.Areas {
		pic.photos[i] = r.plan.photos[area] > 0
	}
	if r.image == nil || pic != r.shown {
		r.image, r.shown = pic.painted(geometryFor(pic.size)), pic
	}
	return r.image
}
