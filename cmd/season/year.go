package main

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// A season of sales, and what a shop has. Invented.
const (
	salesAYear, between, lotsASale = 17, 21, 40
	startCash                      = 15000
	credit                         = 5000 // that bills may run up before the shop is ruined
	shopBays                       = 2
	hoursAWeek                     = 30.0
	hoursAhead                     = 8 * hoursAWeek // that may be waiting to be done
	months, monthDays              = 12, 30.5
)

// met is one lot of a sale day: what the rivals bid, and what will come of it.
type met struct {
	*entry
	price money.Amount
	lives map[string]life
}

// season is the sales that every buyer meets.
type season [salesAYear][]met

// season draws the sales.
func (w *world) season(seed, n uint64) season {
	rng := rand.New(rand.NewPCG(seed, n))
	var s season
	for i := range s {
		for range lotsASale {
			e := &w.lots[rng.IntN(len(w.lots))]
			price := invoice.After(e.at.Buying.BidSteps, usd.FromMajor(w.asked(e, rng))-1)
			s[i] = append(s[i], met{e, price, w.lives(e, rng)})
		}
	}
	return s
}

// year is what a buyer's season came to.
type year struct {
	profit, worst float64
	foretold      float64 // profit of the lots that were bought, as the buyer thought of them
	ruined        bool
	lots, lost    int
}

// shop is a buyer on the way through a season.
type shop struct {
	buyer
	day     int
	cash    float64
	waiting float64      // hours to do
	owed    [][2]float64 // day and money that comes in
	busy    []float64    // days on which the bays in use are free again
	month   [months]float64
	year
}

// play takes a buyer through a season.
func (b buyer) play(s season) (year, error) {
	h := shop{buyer: b, cash: startCash}
	for i, day := range s {
		h.day = i * between
		h.wake()
		if h.ruined || len(h.busy) >= shopBays {
			continue
		}
		if h.clairvoyant {
			h.foresee(day)
		} else if err := h.attend(day); err != nil {
			return h.year, err
		}
	}
	h.worst = slices.Min(h.month[:])
	return h.year, nil
}

// wake brings the shop to the day of the sale.
func (h *shop) wake() {
	at := float64(h.day)
	h.waiting = max(0, h.waiting-hoursAWeek*between/7)
	h.busy = slices.DeleteFunc(h.busy, func(free float64) bool { return free <= at })
	h.owed = slices.DeleteFunc(h.owed, func(x [2]float64) bool {
		if x[0] <= at {
			h.cash += x[1]
		}
		return x[0] <= at
	})
	h.ruined = h.ruined || h.cash < -credit
}

func (h *shop) purse() sale.Purse {
	return sale.Purse{Cash: max(0, usd.FromMajor(h.cash)), Hours: hoursAhead - h.waiting, Bays: shopBays - len(h.busy)}
}

// attend bids through a sale.
func (h *shop) attend(day []met) error {
	entries := make([]*entry, len(day))
	for i, m := range day {
		entries[i] = m.entry
	}
	all := h.opinions(entries)
	s, at := h.sale(entries, all, h.purse())
	for i := range s.Lots {
		s.Lots[i].ID = fmt.Sprint(at[i])
	}
	if faults := s.Check(); len(faults) > 0 {
		return fmt.Errorf("%s is %s, want %s", faults[0].Path, faults[0].Value, faults[0].Want)
	}
	if len(at) == 0 {
		return nil
	}
	policy, left := h.bids(s), s.Purse
	for k, i := range at {
		l := s.Lots[k]
		bid, ok := policy.Stop(k, left)
		if !ok || day[i].price > bid {
			continue
		}
		total := l.Terms.Total(day[i].price, usd).Total
		left = sale.Purse{Cash: left.Cash - total - l.Beside, Hours: left.Hours - l.Hours, Bays: left.Bays - 1}
		h.foretold += usd.Major(all[i].worth - total)
		h.take(bought{total, day[i].follow(all[i], day[i].lives)})
	}
	return nil
}

// take books a lot that was won.
func (h *shop) take(b bought) {
	delay := h.waiting / hoursAWeek * 7
	h.cash -= usd.Major(b.total) + b.spent
	h.ruined = h.ruined || h.cash < -credit
	h.waiting += b.hours
	sold := float64(h.day) + b.days + delay
	h.owed = append(h.owed, [2]float64{sold, b.back})
	h.busy = append(h.busy, float64(h.day)+b.bays+delay)
	made := b.worth() - usd.Major(b.total)
	h.profit += made
	h.month[min(months-1, int(sold/monthDays))] += made
	h.lots++
	if made < 0 {
		h.lost++
	}
}

// foresee buys the best one or two lots that the day and the purse have, of those that bring enough for their days in a bay.
func (h *shop) foresee(day []met) {
	var best []bought
	most := 0.0
	var all []bought
	for _, m := range day {
		total := m.at.Buying.Total(m.price, usd).Total
		for _, name := range valuation.Plans {
			if l, known := m.lives[name]; known && h.net(bought{total, l}) > 0 {
				all = append(all, bought{total, l})
				break
			}
		}
	}
	left := h.purse()
	for i, a := range all {
		for k := i; k < len(all); k++ {
			set := []bought{a}
			if k > i {
				set = append(set, all[k])
			}
			if sum, fits := h.fits(set, left); fits && sum > most {
				best, most = set, sum
			}
		}
	}
	for _, b := range best {
		h.take(b)
	}
}

// net is what a lot brings beyond the price of its days.
func (h *shop) net(b bought) float64 { return b.worth() - usd.Major(b.total) - h.price*b.bays }

// fits reports whether lots fit the purse, and what they bring.
func (h *shop) fits(set []bought, left sale.Purse) (sum float64, ok bool) {
	for _, b := range set {
		sum += h.net(b)
		left.Cash -= b.total + usd.FromMajor(b.spent)
		left.Hours -= b.hours
		left.Bays--
	}
	return sum, left.Cash >= 0 && left.Hours >= 0 && left.Bays >= 0
}
