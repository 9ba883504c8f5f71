package repair

import (
	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Line is one piece of work with all that it takes. Money fields are in major units of the case's currency.
type Line struct {
	ID        string                `json:"id"`
	Job       string                `json:"job"`
	Area      string                `json:"area"`
	Operation string                `json:"operation"`
	Chance    *float64              `json:"chance"` // that the work is needed; nil: 1
	Hours     map[string]prob.Three `json:"hours"`  // by trade
	Materials prob.Three            `json:"materials" unit:"money"`
	Outside   prob.Three            `json:"outside" unit:"money"` // work bought in
	Parts     []Part                `json:"parts"`
	Currency  string                `json:"-"`       // of a catalogue's entry; empty: that of the catalogue
	Loading   *float64              `json:"loading"` // on the lot's common factor; nil: the case's shared loading
	Why       string                `json:"why"`
	Caution   string                `json:"caution"` // where the work can hurt someone
	Edited    bool                  `json:"edited"`  // the user changed it: a new survey leaves it alone
	Removed   bool                  `json:"removed"` // the user struck it out: the catalogue does not add it again
	Needs     *Need                 `json:"-"`       // why it is needed, where other work or hidden damage brings or spares it; see [Plan]
}

// Part is one thing to be had, by the first of its options that turns out to be obtainable.
type Part struct {
	Name     string    `json:"name"`
	Critical *bool     `json:"critical"` // its lead time holds the build up; nil: true
	Options  []Option  `json:"options"`
	Fallback *Fallback `json:"fallback"`
}

// Option is one source of a part.
type Option struct {
	Source     string     `json:"source"` // new_maker | new_aftermarket | used | repaired | made | in_hand | free words
	Price      prob.Three `json:"price" unit:"money"`
	Freight    prob.Three `json:"freight" unit:"money"`
	LeadDays   prob.Three `json:"lead_days"`
	Chance     *float64   `json:"chance"` // that it can be had; nil: 1
	ExtraHours prob.Three `json:"extra_hours"`
	CoreBack   prob.Three `json:"core_back" unit:"money"` // deposit that comes back with the old part
	Quoted     string     `json:"quoted"`                 // day of a quote by the user, empty for a starter value
	Quote      *Quote     `json:"quote"`                  // what a yard said, beside the judgement; nil: nobody was asked
}

// Quote is what a yard said when it was asked.
type Quote struct {
	Yard  string   `json:"yard"`
	Phone string   `json:"phone"`
	Day   lot.Date `json:"day"`
	Price float64  `json:"price" unit:"money"` // the one price that was said
}

// Given reports whether somebody offered the part: then its price is no starter value.
func (o Option) Given() bool { return o.Quoted != "" || o.Quote != nil }

// Asked returns the price to reckon with: the one that was said, or else the judgement.
func (o Option) Asked() prob.Three {
	if o.Quote != nil {
		return prob.Certain(o.Quote.Price)
	}
	return o.Price
}

// Day returns the day of the offer, empty where there is none.
func (o Option) Day() lot.Date {
	if o.Quote != nil {
		return o.Quote.Day
	}
	return lot.Date(o.Quoted)
}

// Fallback is what happens when no option can be had: make it or wait for it. It is never nothing.
type Fallback struct {
	Price    prob.Three `json:"price" unit:"money"`
	LeadDays prob.Three `json:"lead_days"`
	Hours    prob.Three `json:"hours"` // extra hours of the trade with the most hours of the line, see [Line.ChiefTrade]
}

// Job is one entry of the job catalogue: a line with what calls for it.
type Job struct {
	Line
	Calls   []lot.Sign  `json:"calls"`   // any one is enough
	Brings  []Brought   `json:"brings"`  // jobs that always come along, shared between the jobs that bring them
	Covers  []string    `json:"covers"`  // jobs that this one does with its own, as an assembly does; what those bring along goes too
	Spares  []string    `json:"spares"`  // jobs that this one makes needless; what those bring along stays
	Moves   []lot.Move  `json:"moves"`   // how the lot changes its chance, called for or brought
	Never   []lot.Sign  `json:"never"`   // any one rules it out: no such vehicle has what it works on
	Scales  []lot.Scale `json:"scales"`  // how the lot changes what it costs
	Settles []string    `json:"settles"` // hidden risks that it puts right: they are not counted beside it
}

// Brought names a job that another brings along and how likely it is to be needed then.
type Brought struct {
	ID     string   `json:"id"`
	Chance *float64 `json:"chance"` // nil: 1
}

// Catalogue is the list of jobs with a word on where its figures come from.
type Catalogue struct {
	Format   string `json:"format"` // walkline-jobs/1
	Note     string `json:"note"`   // what the figures are: starter values
	Currency string `json:"currency"`

	// Scales say how the vehicle changes what parts, bought-in work and materials cost.
	Scales []lot.Scale `json:"scales"`
	Jobs   []Job       `json:"jobs"`
}
