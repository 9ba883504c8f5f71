package desk

import "context"

// Place is a page of the window.
type Place string

// The places. The first shows all lots, those from Worksheet to Live one lot; the rest the shop.
const (
	Board     Place = ""
	Worksheet Place = "worksheet"
	Why       Place = "why"
	Live      Place = "live"
	Builds    Place = "builds"
	Record    Place = "record"
	Bench     Place = "bench"
)

// ofALot says whether the place shows one lot.
func (p Place) ofALot() bool { return p == Worksheet || p == Why || p == Live }

// Go shows a place. Places of one lot need a lot; the Board takes it off the desk, the others leave it open.
func (d *Desk) Go(ctx context.Context, s State, to Place) State {
	if to == Board {
		return d.CloseLot(ctx, s)
	}
	if to.ofALot() && s.Open == nil {
		return s.said("Open a lot first: select it on the Board and press Enter.")
	}
	s.Place, s.Notice, s.Trouble = to, "", ""
	if to == Live {
		return d.wentFor(ctx, s)
	}
	if to == Builds {
		return d.readBuilds(ctx, s)
	}
	if to == Record {
		return d.readBuilds(ctx, s.stale())
	}
	return s
}
