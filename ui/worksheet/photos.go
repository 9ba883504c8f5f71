package worksheet

import (
	"image"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/desk"
	"walkline/ui/form"
	"walkline/ui/theme"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// Thumbnails brings the small picture of a photograph, at once or later; show is called on the window's goroutine.
type Thumbnails func(p lot.Photo, show func(image.Image, error))

// photos is the strip of the photographs that are pinned to the selected area.
type photos struct {
	page      *Page
	area      string
	heading   *widgets.Words
	strip     *fyne.Container
	elsewhere *widget.RichText
	body      fyne.CanvasObject
	cards     []view.PhotoCard // what the strip shows
}

func newPhotos(p *Page) *photos {
	s := &photos{page: p, heading: widgets.NewCaption(""), strip: container.NewHBox(), elsewhere: form.Small("")}
	add := widgets.NewButton("Add photos…", func() { p.do(desk.WantOf(desk.NewPhotos, s.area)) })
	s.body = container.NewVBox(s.heading, container.NewHScroll(container.New(layout.NewCustomPaddedLayout(0, theme.Space, 0, 0), s.strip)),
		s.elsewhere, container.NewHBox(add), widget.NewSeparator())
	return s
}

// show goes to an area of the open lot, and reports whether it may need another height.
func (s *photos) show(area string) (grown bool) {
	here, elsewhere := view.PhotosOf(s.page.open, area)
	s.heading.SetText("Photos: " + view.PhotoArea(area))
	if len(here) == 0 && elsewhere == "" {
		elsewhere = "None yet. Photos can also be dropped on the window."
	}
	words := s.elsewhere.Segments[0].(*widget.TextSegment)
	if words.Text != elsewhere {
		grown = true
		words.Text = elsewhere
		s.elsewhere.Refresh()
	}
	s.elsewhere.Hide()
	if elsewhere != "" {
		s.elsewhere.Show()
	}
	if area == s.area && slices.Equal(here, s.cards) {
		return grown
	}
	s.area, s.cards = area, here
	s.strip.Objects = nil
	for i, card := range here {
		s.strip.Add(s.card(i, card))
	}
	s.strip.Refresh()
	return true
}

// card returns the small picture of a photograph; it opens the large view.
func (s *photos) card(i int, card view.PhotoCard) fyne.CanvasObject {
	t := widgets.NewThumbnail(card.Words, func() { s.page.do(desk.WantOf(desk.LargePhoto, card.Hash)) })
	s.page.thumbnail(card.Photo, func(img image.Image, err error) {
		if err != nil {
			t.SetTrouble()
			return
		}
		t.SetImage(img)
	})
	return t
}
