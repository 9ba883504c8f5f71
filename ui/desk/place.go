package desk

import "context"

// Place is a page of the window.
type Place string

// The places. The first shows all lots, those from Listing to Live one lot; the rest the shop.
const (
	Board     Place = ""
	Listing   Place = "listing"
	Worksheet Place = "worksheet"
	Why       Place = "why"
	Live      Place = "live"
	SalePlan  Place = "sale plan"
	Builds    Place = "builds"
	Record    Place = "record"
	Bench     Place = "bench"
)

// ofALot says whether the place shows one lot.
func (p Place) ofALot() bool { return p == Listing || p == Worksheet || p == Why || p == Live }

// Go shows a place. Places of one lot need a lot; the Board takes it off the desk, the others leave it open.
func Go(to Place) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		if to.ofALot() && s.Open == nil {
			return s.said("Open a lot first: select it on the Board and press Enter.")
		}
		if s.Place = to; to == Board {
			s.Open = nil
			return d.refresh(ctx, s)
		}
		if to == SalePlan {
			s.Day.of = "" // builds may have moved on
			return d.loadDay(ctx, d.refresh(ctx, s), s.Day.Date)
		}
		if to == Live {
			s = d.dayOfOpen(ctx, s)
		}
		if to == Record {
			s = s.outdated()
		}
		return d.lists(ctx, s)
	})
}

// ShowSection says which section of the Bench is in sight, so that undo is about that one.
func ShowSection(name string) Action {
	return shows(func(ctx context.Context, d *Desk, s State) State {
		if s.Section = name; name == ShelfSection {
			return d.loadShelf(ctx, s)
		}
		return s
	})
}
