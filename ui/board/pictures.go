package board

import (
	"image"

	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets/plan"
	"walkline/ui/widgets/table"
	"walkline/valuation/lot"
)

// pictures are what the rows show beside words.
type pictures struct {
	plans  plan.Pictures
	photos map[string]image.Image // by hash
	asked  map[string]bool        // photographs that are on their way, or cannot be read
}

// mostPhotos is how many small pictures the rows keep; more are brought again when they come into sight.
const mostPhotos = 200

// planHeight is the height of a small plan in pixels, for a screen of twice the usual density.
func planHeight() int { return int(96 * theme.Scale()) }

// row returns a row as the table shows it.
func (p *Page) row(r *view.BoardRow) table.Row {
	return table.Row{Cells: p.cells(r), Ticked: p.ticked[r.ID], Picture: func(column int) image.Image {
		look := r.Look()
		switch p.chosen[column].Title {
		case view.PhotoColumn:
			return p.photo(look.Photo)
		case view.PlanColumn:
			if len(look.Damage) > 0 {
				return p.pictures.plans.Of(look.Damage, planHeight())
			}
		}
		return nil
	}}
}

// photo returns the small picture of a photograph; where it is not at hand it is asked for, and nil is returned until it comes.
func (p *Page) photo(of *lot.Photo) image.Image {
	s := &p.pictures
	if of == nil || p.Thumbnail == nil || s.asked[of.Hash] {
		return nil
	}
	if img := s.photos[of.Hash]; img != nil {
		return img
	}
	if s.asked == nil || len(s.photos) >= mostPhotos {
		s.asked, s.photos = map[string]bool{}, map[string]image.Image{}
	}
	s.asked[of.Hash] = true
	within := true // this call: the table takes what is returned
	p.Thumbnail(*of, func(img image.Image, err error) {
		if err != nil {
			return
		}
		s.photos[of.Hash] = img
		delete(s.asked, of.Hash)
		if !within {
			p.table.Refresh()
		}
	})
	within = false
	return s.photos[of.Hash]
}
