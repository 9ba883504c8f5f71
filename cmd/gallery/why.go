package main

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"walkline/ui/widgets"
	"walkline/ui/widgets/plot"
	"walkline/ui/widgets/seen"
)

// why draws the sections of the page that explains the bid of the open lot.
func (s *stage) why() error {
	s.press(fyne.KeyE)
	for _, w := range seen.All[*plot.Waterfall](s.screen.Content()) {
		seen.Press(w, fyne.KeyHome, fyne.KeyDown, fyne.KeyDown)
	}
	if err := s.save("why-fall"); err != nil {
		return err
	}
	if err := s.button("Odds at any bid"); err != nil {
		return err
	}
	if err := s.save("why-odds"); err != nil {
		return err
	}
	for _, b := range seen.All[*plot.Chances](s.screen.Content()) {
		seen.Press(b, fyne.KeyPageUp, fyne.KeyPageUp)
	}
	if err := s.save("why-odds-past"); err != nil {
		return err
	}
	if err := s.button("What moves it most"); err != nil {
		return err
	}
	return s.save("why-drivers")
}

// button taps the visible button with these words.
func (s *stage) button(words string) error {
	for _, b := range seen.All[*widgets.Button](s.screen.Content()) {
		if b.Text == words {
			test.Tap(b)
			return nil
		}
	}
	return fmt.Errorf("no button %q", words)
}
