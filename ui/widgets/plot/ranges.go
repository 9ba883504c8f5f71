package plot

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"walkline/ui/theme"
	"walkline/ui/widgets/draw"
)

// Range is one row of [Ranges]: where a value began, where it stands, and where it may lie.
type Range struct {
	Name, Figure      string // what it is, and its value as written
	Low, Middle, High float64
	Today             float64
	Fact              string // all of it in words
	Blank             bool   // it has no place on the axis: its figure stands alone
}

// RangesData is what [Ranges] shows.
type RangesData struct {
	Rows                      []Range
	Axis                      Axis
	Start                     float64 // where every value began
	Begun, Now, Value, Spread string  // what the line, the open mark, the point and the bar are, for the legend
}

// Ranges shows many multiples on one axis, a row for each: the range as a bar with its middle as a point, the value of today as an open
// mark, and one line where they all began. On the keyboard up and down select a row, Enter opens it.
type Ranges struct {
	bars
	data RangesData
}

// NewRanges returns a picture without rows.
func NewRanges() *Ranges {
	r := &Ranges{bars: newBars(false)}
	r.headed, r.self = true, r
	r.ExtendBaseWidget(r)
	return r
}

// SetData shows rows in the order given.
func (r *Ranges) SetData(d RangesData) {
	rows, facts := make([]barRow, len(d.Rows)), make([]string, len(d.Rows))
	for i, x := range d.Rows {
		rows[i], facts[i] = barRow{name: x.Name, figure: x.Figure}, x.Fact
	}
	r.data = d
	r.set(rows, facts)
}

// Place returns where a row lies: its upper edge and its height.
func (r *Ranges) Place(i int) (top, height float32) {
	return r.head() + float32(i)*barStep(), barStep()
}

// least and most bound what the axis shows: what lies beyond is drawn to its edge.
const (
	least = 1. / 8
	most  = 8.
)

// across returns the scale of the axis, on which twice and half lie equally far from the start and its ticks.
func (r *Ranges) across(width float32) (x func(float64) float32, ticks []float64) {
	names, figures := r.columns(width)
	left, right := names+theme.Wide, width-figures-theme.Wide
	of := span{0.9 * r.data.Start, 1.1 * r.data.Start}
	for _, v := range r.placed() {
		for _, at := range []float64{v.Low, v.High, v.Today} {
			of.take(bounded(at, r.data.Start))
		}
	}
	x = func(v float64) float32 {
		return left + (right-left)*float32(math.Log(bounded(v, r.data.Start)/of.low)/math.Log(of.high/of.low))
	}
	return x, r.ticks(of, x)
}

// steps are the multiples at which an axis may have ticks, from the start outwards.
var steps = [][]float64{{1, 1.1, 1.25, 1.5, 2, 3, 4, 8}, {1, 0.9, 0.75, 0.5, 0.25, 0.125}}

// ticks returns those of the steps that lie on the axis and leave each other room.
func (r *Ranges) ticks(of span, x func(float64) float32) (ticks []float64) {
	room := float64(widthPerTick * theme.Scale() / 2)
	for _, way := range steps {
		last := way[0]
		for i, t := range way {
			if at := t * r.data.Start; at >= of.low && at <= of.high && (i == 0 || math.Abs(float64(x(at)-x(last*r.data.Start))) >= room) {
				ticks, last = append(ticks, at), t
			}
		}
	}
	slices.Sort(ticks)
	return slices.Compact(ticks)
}

func bounded(v, start float64) float64 { return min(max(v, least*start), most*start) }

// placed returns the rows that have a place on the axis.
func (r *Ranges) placed() []Range {
	return slices.DeleteFunc(slices.Clone(r.data.Rows), func(v Range) bool { return v.Blank })
}

// draw draws the axis with its legend, then the rows.
func (r *Ranges) draw(d *drawing, size fyne.Size) {
	if len(r.rows) == 0 {
		d.Text(noBars, fyne.NewPos(0, theme.Half), 0, theme.SizeBody, theme.ColorMuted)
		return
	}
	names, _ := r.columns(size.Width)
	x, ticks := r.across(size.Width)
	bottom := r.head() + float32(len(r.rows))*barStep()
	for i, row := range r.rows {
		r.row(d, i, row, size.Width, names)
	}
	for _, t := range ticks {
		d.Line(fyne.NewPos(x(t), r.head()-tickLength), fyne.NewPos(x(t), bottom), theme.ColorGridLine, 1)
		d.Text(r.data.Axis.write(t), fyne.NewPos(x(t), draw.LineHeight(theme.SizeSmall)+theme.Half), 0.5, theme.SizeSmall, theme.ColorMuted)
	}
	d.Text(r.data.Axis.Title, fyne.NewPos(theme.Space, draw.LineHeight(theme.SizeSmall)+theme.Half), 0, theme.SizeSmall, theme.ColorMuted)
	d.Line(fyne.NewPos(x(r.data.Start), r.head()-tickLength), fyne.NewPos(x(r.data.Start), bottom), theme.ColorMuted, 1.5)
	for i, v := range r.data.Rows {
		if !v.Blank {
			r.mark(d, v, r.head()+(float32(i)+0.5)*barStep(), x)
		}
	}
	d.legend(size.Width-theme.Space, [][]mark{r.marks()})
}

// half is half the height of a range.
const half = theme.Half

// mark draws one range, the value of today and the middle.
func (r *Ranges) mark(d *drawing, v Range, y float32, x func(float64) float32) {
	spread(d, fyne.NewPos(x(v.Low), y), x(v.High)-x(v.Low))
	now(d, fyne.NewPos(x(v.Today), y))
	point(d, fyne.NewPos(x(v.Middle), y))
}

func spread(d *drawing, from fyne.Position, wide float32) {
	d.Rect(from.SubtractXY(0, half), fyne.NewSize(max(wide, 1.5), 2*half), theme.Color(theme.ColorPoint))
}

func now(d *drawing, at fyne.Position) {
	d.Circle(at, theme.Half+1.5, theme.Color(draw.Background), draw.Foreground, 1.5)
}

func point(d *drawing, at fyne.Position) {
	d.Circle(at, theme.Half, theme.Color(theme.ColorAccent), theme.ColorAccent, 1)
}

// marks are the entries of the legend.
func (r *Ranges) marks() []mark {
	return []mark{
		{func(d *drawing, at fyne.Position) {
			d.Line(at.SubtractXY(0, theme.Space), at.AddXY(0, theme.Space), theme.ColorMuted, 1.5)
		}, r.data.Begun},
		{now, r.data.Now}, {point, r.data.Value},
		{func(d *drawing, at fyne.Position) { spread(d, at.SubtractXY(theme.Space, 0), 2*theme.Space) }, r.data.Spread},
	}
}

// CreateRenderer returns the renderer.
func (r *Ranges) CreateRenderer() fyne.WidgetRenderer { return r.renderer(r.draw) }
