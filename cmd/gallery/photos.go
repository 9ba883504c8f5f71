package main

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"os"
	"path/filepath"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
)

// samplePhoto draws the n-th invented photograph: bands of paint with a dent.
func samplePhoto(n int) ([]byte, error) {
	const w, h = 320, 240
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			dx, dy := x-w/2-20*n, y-h/2
			shade := uint8(90 + 30*n + y/4)
			if dx*dx+dy*dy < 3000 {
				shade /= 2
			}
			img.SetRGBA(x, y, color.RGBA{shade, shade + 8, shade + 16, 255})
		}
	}
	var out bytes.Buffer
	err := jpeg.Encode(&out, img, nil)
	return out.Bytes(), err
}

// photos draws the Damage section with photographs, and the large view of one.
func (s *stage) photos() error {
	folder, err := os.MkdirTemp("", "walkline-gallery")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	for n, name := range []string{"front.jpg", "left.jpg", "below.jpg"} {
		data, err := samplePhoto(n)
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o600); err != nil {
			return err
		}
	}
	s.window.Do(desk.WantOf(desk.NewPhotos, "12"))
	seen.All[*widgets.TextEntry](s.top())[0].SetText(folder)
	if err := s.save("photos-adding"); err != nil {
		return err
	}
	if err := s.picking(folder); err != nil {
		return err
	}
	if err := s.save("worksheet-photos"); err != nil {
		return err
	}
	test.Tap(seen.All[*widgets.Thumbnail](s.screen.Content())[0])
	if err := s.save("photo-large"); err != nil {
		return err
	}
	for _, b := range seen.All[*widgets.Button](s.top()) {
		if b.Text == "Close" {
			test.Tap(b)
		}
	}
	return s.pictured()
}

// pictured draws the Board with pictures of the lots, and goes back to the lot.
func (s *stage) pictured() error {
	s.press(fyne.KeyB)
	shown := []view.BoardColumn{{Title: "Lot"}, {Title: view.PhotoColumn}, {Title: view.PlanColumn}, {Title: "Vehicle"},
		{Title: "Walk-away bid"}, {Title: "Set by"}, {Title: "Loss chance"}}
	s.window.ShowColumns(shown)
	if err := s.save("board-pictures"); err != nil {
		return err
	}
	s.window.ShowColumns(nil)
	id, err := s.lot(side)
	if err == nil {
		s.window.Do(desk.OpenLot(id))
		s.press(fyne.Key2)
	}
	return err
}

// picking draws the list of a folder in which two photographs are marked, and adds them all.
func (s *stage) picking(folder string) error {
	for _, b := range seen.All[*widgets.Button](s.top()) {
		if b.Text == "Look for them…" {
			test.Tap(b)
		}
	}
	path := seen.All[*widgets.TextEntry](s.top())[0]
	path.SetText(folder)
	path.OnSubmitted(folder)
	list := s.screen.Canvas().Focused()
	seen.Press(list, fyne.KeyDown, fyne.KeySpace, fyne.KeyDown, fyne.KeySpace)
	if err := s.save("photos-picking"); err != nil {
		return err
	}
	seen.Press(list, fyne.KeyDown, fyne.KeyReturn)
	return nil
}
