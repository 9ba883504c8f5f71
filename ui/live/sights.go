package live

import (
	"image"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets/plan"
	"walkline/valuation/lot"
)

// Sights brings what is looked at between two bids.
type Sights struct {
	Runner task.Runner // nil: nothing is shown
	// Photo brings a photograph large, at once or later, on the window's goroutine.
	Photo func(p lot.Photo, show func(image.Image, error))
}

// quiet is how long the bidding stands still until the sights are shown. Ours: longer than a crier waits for the next bid.
const quiet = 5 * time.Second

// planPixels is the height that the plan is drawn in.
const planPixels = 640

// sights are the lot's first photograph and its damage, shown large while the bidding stands still.
type sights struct {
	by          Sights
	photo, plan *canvas.Image
	plans       plan.Pictures
	hash        string // of the photograph
	on          bool
	stop        func() // ends the wait
}

func newSights(by Sights) *sights {
	s := &sights{by: by, photo: &canvas.Image{FillMode: canvas.ImageFillContain}, plan: &canvas.Image{FillMode: canvas.ImageFillContain}}
	s.plans.OnWhite, s.stop = true, func() {}
	return s
}

// of takes the pictures of a lot.
func (s *sights) of(o desk.Open, come func()) {
	s.plan.Image = nil
	if len(o.Case.Damage) > 0 {
		s.plan.Image = s.plans.Of(o.Case.Damage, planPixels)
	}
	hash := ""
	if len(o.Photos) > 0 {
		hash = o.Photos[0].Hash
	}
	if hash == s.hash {
		return
	}
	s.hash, s.photo.Image = hash, nil
	if hash == "" || s.by.Photo == nil {
		return
	}
	s.by.Photo(o.Photos[0], func(img image.Image, err error) {
		if err == nil && s.hash == hash {
			s.photo.Image = img
			come()
		}
	})
}

// shown returns the pictures that there are.
func (s *sights) shown() []fyne.CanvasObject {
	var all []fyne.CanvasObject
	for _, img := range []*canvas.Image{s.photo, s.plan} {
		if img.Image != nil {
			all = append(all, img)
		}
	}
	return all
}

// moved hides the sights, for the bidding moves, and shows them when it stands still again.
func (p *Page) moved() {
	s := p.sights
	s.stop()
	s.stop = func() {}
	s.on = false
	p.lay()
	if s.by.Runner != nil && p.pad.typed == "" {
		s.stop = s.by.Runner.After(quiet, p.still)
	}
}

// still shows the sights, unless a price is being typed.
func (p *Page) still() {
	p.sights.on = p.sights.by.Runner != nil && p.pad.typed == ""
	p.lay()
}

// lay lays the page out, with the sights in its middle while they are on. Past the walk-away bid there are none: STOP stands large.
func (p *Page) lay() {
	all := p.sights.shown()
	parts, rows := []float32{0.08, 0.56, 0.25, 0.11}, []fyne.CanvasObject{p.title, p.figures, p.odds, p.caps}
	if p.sights.on && !p.seen.Stop && !p.seen.Doubt && len(all) > 0 {
		rows[1] = beside([]float32{0.36, 0.64}, p.narrow(), beside(alike(len(all)), all...))
	} else if len(p.rows.Objects) > 0 && p.rows.Objects[1] == p.figures {
		return
	}
	p.rows.Layout, p.rows.Objects = &shared{parts, true}, rows
	p.rows.Refresh()
}

// narrow stacks the figures, so that the sights have their room beside them. Many words of what sets the limit take more of it.
func (p *Page) narrow() fyne.CanvasObject {
	parts := []float32{0.09, 0.20, 0.09, 0.20, 0.20, 0.22}
	if len(p.seen.Binds) > manyWords {
		parts = []float32{0.09, 0.14, 0.09, 0.14, 0.14, 0.40}
	}
	return under(parts, p.currentName, p.current, p.limitName, p.limit, p.steps, p.binds)
}
