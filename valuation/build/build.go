package build

import (
	"slices"

	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Build is what came of one lot. The zero value is a lot of which nothing is known yet.
type Build struct {
	Outcome   Outcome       `json:"outcome"`
	Hammer    *money.Amount `json:"hammer"` // what the lot went for, whoever bought it; nil: not known
	Dates     Dates         `json:"dates"`
	Sale      Sale          `json:"sale"`
	Otherwise Otherwise     `json:"otherwise"`
	Note      string        `json:"note"`
	Charges   []Charge      `json:"charges"` // the lines of the sale's invoice beside the hammer price
	Receipts  []Receipt     `json:"receipts"`
	Hours     []Work        `json:"hours"`
	Risks     []Seen        `json:"risks"`
	Unlisted  []Unlisted    `json:"unlisted"`
	Done      []string      `json:"done"` // ids of the lines and risks whose work is finished
	Imported  Imported      `json:"imported"`

	Closing     Closing `json:"closing"`
	NoMoreBills bool    `json:"no_more_bills"` // what has no bill cost nothing

	Unbilled []Unbilled `json:"unbilled"` // kinds of cost without a bill of which that was said

	SoldAhead lot.Date `json:"sold_ahead"` // a day of the sale that was still to come and was said to be right; empty: none
}

// Unbilled says what it means that a kind of cost has no bill.
type Unbilled struct {
	Kind  string `json:"kind"`  // one of Kinds
	Means string `json:"means"` // Nothing | AsForecast
}

// What a missing bill can mean. Of a kind without either the bill may still come, and it counts as its forecast until then.
const (
	Nothing    = "nothing"     // it cost nothing
	AsForecast = "as forecast" // it cost what was forecast: no bill will say more
)

// Closing says what an ended build's open questions mean for what it teaches; empty: it has none.
type Closing string

// The states of closing.
const (
	Asking Closing = "asking" // it teaches nothing until they are answered
	Partly Closing = "partly" // closed all the same: what was not entered is not known
)

// Teaches reports whether the build has ended and its questions are answered or left open knowingly.
func (b Build) Teaches() bool { return b.Outcome.Ended() && b.Closing != Asking }

// Imported says where in a table of past buys a build comes from; empty: it was bought with this program.
type Imported struct {
	As  string `json:"as"`  // what the table calls it
	Row string `json:"row"` // fingerprint of the row as it was last imported
}

// Outcome is how a build ended.
type Outcome string

// The outcomes. The empty one is an open build, too.
const (
	Open      Outcome = "open"
	Sold      Outcome = "sold"
	PartedOut Outcome = "parted out"
	AsIs      Outcome = "resold as is"
	Cancelled Outcome = "cancelled" // the purchase came to nothing: paid back, or given up
)

// Outcomes lists every outcome in order.
var Outcomes = []Outcome{Open, Sold, PartedOut, AsIs, Cancelled}

// Ended reports whether nothing more is to come.
func (o Outcome) Ended() bool { return o != Open && o != "" }

// Gone reports whether the vehicle is no longer the shop's: the build has ended, or a price or a day of its sale is entered.
func (b Build) Gone() bool { return b.Outcome.Ended() || b.Sale.Price != nil || b.Dates.Sold != "" }

// Dates are the days on which something happened; empty: not yet, or not known.
type Dates struct {
	Bought    lot.Date `json:"bought"`
	Home      lot.Date `json:"home"`
	Started   lot.Date `json:"started"`
	Finished  lot.Date `json:"finished"`
	Inspected lot.Date `json:"inspected"`
	Listed    lot.Date `json:"listed"`
	Sold      lot.Date `json:"sold"`
}

// WorkEnded returns the day from which nothing is worked on the vehicle any more: that of its sale where the end of the work is missing;
// empty: neither is entered.
func (d Dates) WorkEnded() lot.Date {
	if d.Finished.Known() {
		return d.Finished
	}
	return d.Sold
}

// Sale is what the vehicle brought, whole or in parts.
type Sale struct {
	Price      *money.Amount `json:"price"`       // nil: not sold, or not known
	FirstAsked *money.Amount `json:"first_asked"` // the price it was first listed at
	Days       *int          `json:"days"`        // on the market, where no dates say it
	Brand      string        `json:"brand"`       // on the title at the sale
}

// Otherwise is what the user judges the two other ways out to bring, in major units; nil: not judged.
type Otherwise struct {
	AsIs         *prob.Three `json:"as_is" unit:"money"`    // for the vehicle as it stands
	PartOut      *prob.Three `json:"part_out" unit:"money"` // for its parts, what is paid to be rid of the rest taken off
	PartOutHours *prob.Three `json:"part_out_hours"`
	AsIsDays     *prob.Three `json:"as_is_days"` // until it is sold so
	PartOutDays  *prob.Three `json:"part_out_days"`
}

// Charge is one line of the sale's invoice.
type Charge struct {
	Name   string       `json:"name"`
	Amount money.Amount `json:"amount"`
}

// Receipt is one bill.
type Receipt struct {
	Date   lot.Date     `json:"date"`
	What   string       `json:"what"` // for a part: its name, as the line of work has it
	Amount money.Amount `json:"amount"`
	Kind   string       `json:"kind"`   // one of Kinds
	Line   string       `json:"line"`   // id of the repair line or of the hidden risk that it is for; empty: none
	Source string       `json:"source"` // of a part: as in the case file; free words else
	Trade  string       `json:"trade"`  // of work bought in; empty: none
	Donor  string       `json:"donor"`  // VIN of the vehicle that a used part came from
	File   string       `json:"file"`   // name of the first photo or PDF
	Hash   string       `json:"hash"`   // its SHA-256 in hexadecimal; empty: no file
	More   []File       `json:"more"`   // the files after the first
	Seller string       `json:"seller"` // who was paid
	Number string       `json:"number"` // of the receipt, as the seller has it
}

// File is a photo or PDF that is kept of a bill.
type File struct {
	Name string `json:"name"`
	Hash string `json:"hash"` // SHA-256 in hexadecimal
}

// Files returns every file of the bill in the order in which they came.
func (r Receipt) Files() []File {
	if r.Hash == "" {
		return nil
	}
	return append([]File{{r.File, r.Hash}}, r.More...)
}

// SetFiles replaces the files of the bill; one that is there twice is kept once.
func (r *Receipt) SetFiles(files []File) {
	var kept []File
	for _, f := range files {
		if !slices.ContainsFunc(kept, func(k File) bool { return k.Hash == f.Hash }) {
			kept = append(kept, f)
		}
	}
	if r.File, r.Hash, r.More = "", "", nil; len(kept) > 0 {
		r.File, r.Hash, r.More = kept[0].Name, kept[0].Hash, slices.Clone(kept[1:])
	}
}

// Kinds are what a bill can be for.
var Kinds = []string{"part", "materials", "outside", "freight", "storage", "holding", "selling", "other"}

// Work is some own hours.
type Work struct {
	Date  lot.Date `json:"date"`
	Trade string   `json:"trade"`
	Line  string   `json:"line"` // as in a receipt
	Hours float64  `json:"hours"`
	What  string   `json:"what"`
}

// Seen is what opening the vehicle up has shown of a hidden risk. A risk without one is not known yet.
type Seen struct {
	Risk  string `json:"risk"`
	State string `json:"state"` // Found | NotThere
}

// Unlisted is damage that stripping the vehicle has shown and that no risk on the list covers: known work from then on.
type Unlisted struct {
	ID    string     `json:"id"` // that bills and hours name as their line
	Name  string     `json:"name"`
	Cost  prob.Three `json:"cost" unit:"money"` // to put it right, own labour not included; major units
	Trade string     `json:"trade"`
	Hours prob.Three `json:"hours"` // own hours of that trade
}

// What can be seen of a hidden risk.
const (
	Found    = "found"
	NotThere = "not there"
)
