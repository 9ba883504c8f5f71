package main

import "walkline/ui/desk"

// aListing is the text of an invented listing, with two pieces that say nothing a bid needs.
const aListing = "Lot 31. 2017 Ostrane Pell S 2.0L FWD, 61,200 miles (actual), salvage title, front end damage, minor scratches left " +
	"side, runs and drives, no keys, green, one owner. VIN 0HKDN2SB0JH000271"

// listing draws the page of a new lot, and the same once its listing was read.
func (s *stage) listing() error {
	s.window.NewLot()
	if err := s.save("listing-new"); err != nil {
		return err
	}
	s.window.Do(desk.WantRead(aListing))
	return s.save("listing-read")
}
