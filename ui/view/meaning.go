package view

import (
	"fmt"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/learn"
)

// MeaningWords says what a proposed factor means in the shop's words and in money.
func MeaningWords(r desk.TrackRecord, p learn.Proposal) string {
	at, u, purse := p.Proposed.At, r.Usual[p.Key], NewPurse(r.Currency)
	name := strings.ToLower(strings.TrimPrefix(strings.TrimPrefix(p.Name, "Hours, "), "Parts, "))
	switch {
	case p.Unit == learn.ChanceUnit:
		return fmt.Sprintf("It is there in %.0f of 100 lots like yours; before any buy it was %.0f.", 100*at, 100*p.Starter.At)
	case p.Unit == learn.LoadUnit:
		return fmt.Sprintf("How far one bad surprise means more of them, from 0 to 0.9: %.2f. It widens the ranges of cost and leaves their "+
			"middle "+
			"alone.", at)
	case strings.HasPrefix(p.Key, "hours/") && u.Hours > 0:
		return fmt.Sprintf("My %s hours come to %.2f times the plan: on an average lot %.1f h become %.1f, which is %s of my time.", name, at,
			u.Hours, u.Hours*at, moreOrLess(purse, u.Money*(at-1)))
	case u.Money > 0:
		return fmt.Sprintf("I pay %.2f times the forecast: on an average lot %s become %s, %s.", at, purse.Whole(u.Money),
			purse.Whole(u.Money*at), moreOrLess(purse, u.Money*(at-1)))
	}
	return resaleMeaning(p, purse)
}

// resaleMeaning says what the factors on price and days mean.
func resaleMeaning(p learn.Proposal, purse Purse) string {
	at := p.Proposed.At
	const example = 10000
	switch p.Key {
	case "resale":
		return fmt.Sprintf("My finished vehicles bring %.1f %% of the forecast: %s where %s %d was forecast.", 100*at, purse.Whole(example*at),
			purse.Code, example)
	case "asked_to_sold":
		return fmt.Sprintf("My sold prices are %.1f %% of what the asking prices led to expect: %s for every %s %d.", 100*at,
			purse.Whole(example*at), purse.Code, example)
	case "brand_discount":
		return fmt.Sprintf("A branded title leaves %.1f %% of what was assumed: %s where %s %d was forecast.", 100*at, purse.Whole(example*at),
			purse.Code, example)
	case "days_to_sell":
		return fmt.Sprintf("Selling takes me %.2f times the days: 30 days become %.0f.", at, 30*at)
	}
	return fmt.Sprintf("It comes to %.2f times the forecast.", at)
}

// moreOrLess writes a difference of money.
func moreOrLess(p Purse, x float64) string {
	if x < 0 {
		return p.Code + " " + p.Whole(-x) + " less"
	}
	return p.Code + " " + p.Whole(x) + " more"
}

// NeedsWords says how many more buys a factor waits for; empty: it has enough.
func NeedsWords(p learn.Proposal) string {
	if p.Buys >= learn.EnoughBuys {
		return ""
	}
	return "needs " + Count(learn.EnoughBuys-p.Buys, "more buy")
}

// SelectionWords says what no figure of the record can show, and which builds wait for answers.
func SelectionWords(r *desk.TrackRecord) string {
	if r == nil || r.Waiting == 0 {
		return learn.Selection
	}
	return "Not counted yet: " + Count(r.Waiting, "ended build") + " with open questions. Answer them under Builds. " + learn.Selection
}
