package board

import (
	"errors"
	"image"
	"testing"

	"fyne.io/fyne/v2/canvas"

	"walkline/ui/view"
	"walkline/ui/widgets/seen"
	"walkline/valuation/lot"
)

// pictured returns how many pictures the rows show.
func pictured(p *Page) (n int) {
	for _, img := range seen.All[*canvas.Image](p.table) {
		if img.Visible() && img.Image != nil {
			n++
		}
	}
	return n
}

// Rows are as high as words until a column with pictures is chosen; a photograph is asked for once and shown when it comes.
func TestRowsShowTheFirstPhotoAndTheDamage(t *testing.T) {
	s := two()
	s.Entries[0].Photo, s.Entries[1].Photo = &lot.Photo{Hash: "a", Name: "front.jpg"}, &lot.Photo{Hash: "b", Name: "left.jpg"}
	s.Entries[0].Look.Damage = []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}
	p, _ := shown(t, s)
	coming := map[string]func(image.Image, error){}
	asked := 0
	p.Thumbnail = func(of lot.Photo, show func(image.Image, error)) { asked++; coming[of.Hash] = show }
	low := p.table.CreateCell().MinSize().Height
	p.ShowColumns([]view.BoardColumn{{Title: "Lot"}, {Title: view.PhotoColumn}, {Title: view.PlanColumn}})
	if high := p.table.CreateCell().MinSize().Height; high < 1.5*low || pictured(p) != 1 || asked != 2 {
		t.Errorf("rows of %v after %v, %d pictures, %d photos asked for", high, low, pictured(p), asked)
	}
	coming["a"](image.NewGray(image.Rect(0, 0, 4, 3)), nil)
	coming["b"](nil, errors.New("gone"))
	if pictured(p) != 2 || asked != 2 || !seen.Says(p.table, "left.jpg") || seen.Says(p.table, "front.jpg") {
		t.Errorf("%d pictures, %d asked for; the rows say %q", pictured(p), asked, seen.Texts(p.table))
	}
	p.ShowColumns(nil)
	if again := p.table.CreateCell().MinSize().Height; again != low || pictured(p) != 0 {
		t.Errorf("rows of %v without pictures, %v at first", again, low)
	}
}
