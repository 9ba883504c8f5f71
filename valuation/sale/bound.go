package sale

import "walkline/valuation/money"

// Bound names what keeps a bid below the walk-away bid.
type Bound string

// What may bind. Of cash, hours and bays it is the one of which more would raise the bid most.
const (
	Unbound   Bound = ""           // the bid is the walk-away bid, or there is none to fall below
	NoBay     Bound = "no bay"     // none is left
	NoHours   Bound = "no hours"   // the hours left don't cover the lot
	NoCash    Bound = "no cash"    // the cash left pays no more
	KeepCash  Bound = "keep cash"  // it brings more on later lots
	KeepHours Bound = "keep hours" // they bring more on later lots
	KeepBay   Bound = "keep bay"   // it brings more with a later lot
	KeepAll   Bound = "keep all"   // no single one of the three: later lots bring more
	NextSale  Bound = "next sale"  // what is kept is worth more there, by Later
	Loss      Bound = "loss"       // a win at more would bring a loss on average
)

// bound says what keeps the bid at the first count legal bids.
func (p *Plan) bound(i, count int, s state) Bound {
	o := &p.offers[i]
	switch {
	case count == len(o.bids):
		return Unbound
	case count == o.affordable(s):
		return o.lacks(s)
	}
	most, by := count, KeepAll
	for k, more := range extras(p.sale.Currency) {
		if n := p.stop(i, s.plus(more)); n > most {
			most, by = n, [...]Bound{KeepCash, KeepHours, KeepBay}[k]
		}
	}
	if by != KeepAll || o.gain[count] > 0 {
		return by
	}
	if l := p.sale.Later; o.gain[count]+l.Cash*p.sale.Currency.Major(money.Amount(o.need[count]))+l.Hour*fromTicks(o.hours)+l.Bay > 0 {
		return NextSale
	}
	return Loss
}

// lacks says what the state has too little of for more than the bids that it allows.
func (o *offer) lacks(s state) Bound {
	const plenty = 1 << 50
	switch {
	case o.affordable(state{plenty, plenty, s.bays}) == 0:
		return NoBay
	case o.affordable(state{plenty, s.hours, s.bays}) == 0:
		return NoHours
	}
	return NoCash
}
