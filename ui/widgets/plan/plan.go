package plan

import (
	"fmt"
	"maps"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/damage"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

var (
	_ fyne.Focusable    = (*Plan)(nil)
	_ fyne.Tappable     = (*Plan)(nil)
	_ desktop.Hoverable = (*Plan)(nil)
)

// Plan is the damage plan: a ring of twelve clock points round a vehicle seen from above, front up, with tiles for the
// other areas. A click selects a cell and changes nothing. On the keyboard arrows move, 0 to 3 set the extent, space steps it, D steps
// the depth, S, B and T set skin, bolted and structure.
type Plan struct {
	widget.BaseWidget

	// OnChanged is called when the user changed a cell; extent is empty for none.
	OnChanged func(area, extent, depth string)
	// OnSelected is called when the user moved to another cell.
	OnSelected func(area string)

	survey  *survey
	photos  map[string]int // by area
	hovered int
	focused bool
}

// New returns a plan without damage, with the front selected.
func New(onChanged func(area, extent, depth string)) *Plan {
	p := &Plan{OnChanged: onChanged, survey: newSurvey(), hovered: -1}
	p.ExtendBaseWidget(p)
	return p
}

// SetDamage shows a survey. It calls no handler.
func (p *Plan) SetDamage(damage []lot.Damage) {
	p.survey.set(damage)
	p.Refresh()
}

// SetPhotos says how many photographs are pinned to each area; a cell that has some bears a small frame.
func (p *Plan) SetPhotos(count map[string]int) {
	if !maps.Equal(count, p.photos) {
		p.photos = maps.Clone(count)
		p.Refresh()
	}
}

// Damage returns the damaged cells in the order of lot.Areas.
func (p *Plan) Damage() []lot.Damage { return p.survey.damage() }

// Select goes to an area without calling a handler; an unknown area is left out.
func (p *Plan) Select(area string) {
	for i, a := range lot.Areas {
		if a == area {
			p.survey.choose(i)
			p.Refresh()
		}
	}
}

// Selected returns the area that the keyboard acts on.
func (p *Plan) Selected() string { return lot.Areas[p.survey.selected] }

// Facts returns the damage in words, a line for each cell.
func (p *Plan) Facts() []string {
	var facts []string
	for _, d := range p.survey.damage() {
		facts = append(facts, damage.Words(d))
	}
	if facts == nil {
		return []string{"No damage marked."}
	}
	return facts
}

// Caption returns the line under the plan: the cell under the pointer, else the selected one.
func (p *Plan) Caption() string {
	at := p.survey.selected
	if p.hovered >= 0 {
		at = p.hovered
	}
	return damage.Words(p.survey.cells[at]) + p.photoWords(lot.Areas[at])
}

// photoWords says how many photographs an area has.
func (p *Plan) photoWords(area string) string {
	switch n := p.photos[area]; n {
	case 0:
		return ""
	case 1:
		return " · 1 photo"
	default:
		return fmt.Sprintf(" · %d photos", n)
	}
}

// Tapped selects the cell; it never changes it, so that an area can be read and its photographs reached.
func (p *Plan) Tapped(e *fyne.PointEvent) {
	draw.FocusOn(p)
	g := geometryFor(p.Size())
	if i := g.at(e.Position); i >= 0 {
		p.act(func() bool {
			p.survey.choose(i)
			return false
		})
	}
}

// act does something to the survey, shows it and tells the handlers.
func (p *Plan) act(do func() (changed bool)) {
	before := p.survey.selected
	changed := do()
	p.Refresh()
	if p.survey.selected != before && p.OnSelected != nil {
		p.OnSelected(p.Selected())
	}
	if d := p.survey.cells[p.survey.selected]; changed && p.OnChanged != nil {
		p.OnChanged(d.Area, d.Extent, d.Depth)
	}
}

// TypedKey moves with the arrows and steps the extent with space. The words follow the keys until the pointer moves again.
func (p *Plan) TypedKey(e *fyne.KeyEvent) {
	draw.Leave(p, e)
	p.hovered = -1
	p.act(func() bool {
		switch e.Name {
		case fyne.KeyLeft:
			p.survey.move(-1, 0)
		case fyne.KeyRight:
			p.survey.move(1, 0)
		case fyne.KeyUp:
			p.survey.move(0, -1)
		case fyne.KeyDown:
			p.survey.move(0, 1)
		case fyne.KeySpace:
			return p.survey.stepExtent()
		case fyne.KeyDelete, fyne.KeyBackspace:
			return p.survey.setExtent(0)
		}
		return false
	})
}

// TypedRune sets the extent by a digit and the depth by a letter.
func (p *Plan) TypedRune(r rune) {
	p.hovered = -1
	p.act(func() bool {
		if r >= '0' && r <= '3' {
			return p.survey.setExtent(int(r - '0'))
		}
		switch strings.ToLower(string(r)) {
		case "d":
			return p.survey.stepDepth()
		case "s":
			return p.survey.setDepth("skin")
		case "b":
			return p.survey.setDepth("bolted")
		case "t":
			return p.survey.setDepth("structure")
		}
		return false
	})
}

// FocusGained shows the focus ring.
func (p *Plan) FocusGained() { p.focused = true; p.Refresh() }

// FocusLost hides the focus ring.
func (p *Plan) FocusLost() { p.focused = false; p.Refresh() }

// MouseIn shows the cell under the pointer in words.
func (p *Plan) MouseIn(e *desktop.MouseEvent) { p.MouseMoved(e) }

// MouseMoved shows the cell under the pointer in words.
func (p *Plan) MouseMoved(e *desktop.MouseEvent) {
	g := geometryFor(p.Size())
	p.hover(g.at(e.Position))
}

// MouseOut goes back to the selected cell.
func (p *Plan) MouseOut() { p.hover(-1) }

func (p *Plan) hover(i int) {
	if i != p.hovered {
		p.hovered = i
		p.Refresh()
	}
}
