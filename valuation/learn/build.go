package learn

import (
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Ending is how a buy ended.
type Ending string

// The ways in which a buy can end. Another bidder's lot is kept as LostTo, with the hammer price where it is known.
const (
	Sold      Ending = "sold"
	PartedOut Ending = "parted out"
	SoldAsIs  Ending = "resold as is"
	Cancelled Ending = "cancelled"
	Open      Ending = "still open"
	LostTo    Ending = "lost to another"
)

// Endings lists every ending.
var Endings = []Ending{Sold, PartedOut, SoldAsIs, Cancelled, Open, LostTo}

// Build is one past buy, or a lot that another bought.
type Build struct {
	ID       int64         `json:"id"`
	Name     string        `json:"name"` // the lot in the buyer's words, for lists of evidence
	Currency string        `json:"currency"`
	Vehicle  Vehicle       `json:"vehicle"`
	Ending   Ending        `json:"ending"`
	Bought   lot.Date      `json:"bought"`   // day of the sale at which the lot was sold; empty: not known
	Closed   lot.Date      `json:"closed"`   // day on which the build ended; empty: still open or not known
	Hammer   *money.Amount `json:"hammer"`   // price at which the lot was sold, to us or to another; nil: not known
	Foretold *Prediction   `json:"foretold"` // nil: nothing was foretold
	Guess    *Prediction   `json:"guess"`    // today's first guess for the same facts, where nothing was foretold; nil: the facts allow none
	Came     Came          `json:"came"`

	weak bool // Foretold is a guess
}

// Vehicle is what was bought. Zero values are not known.
type Vehicle struct {
	ModelYear int    `json:"model_year"`
	Make      string `json:"make"`
	Model     string `json:"model"`
	Trim      string `json:"trim"`
}

// ours reports whether the lot was bought by us.
func (b Build) ours() bool { return b.Ending != LostTo }

// day returns the day by which the evidence ages: when it closed, else when it was bought.
func (b Build) day() lot.Date {
	if b.Closed.Known() {
		return b.Closed
	}
	return b.Bought
}

// Kind is what money or time goes into.
type Kind string

// The kinds of cost. The key of hours is a trade, that of a part its source.
const (
	HoursKind     Kind = "hours"
	PartKind      Kind = "part"
	MaterialsKind Kind = "materials"
	OutsideKind   Kind = "outside"
	HiddenKind    Kind = "hidden" // parts, materials and outside work for damage that had not been seen
)

// Came is what came of a buy. Nil, empty and absent mean not known, never zero: a build that closed with nothing spent
// on freight has a freight of 0.
type Came struct {
	Fees    *money.Amount `json:"fees"`    // invoice less the hammer price: buyer's fees, fixed fees, tax, surcharge
	Freight *money.Amount `json:"freight"` // lot to workshop
	Storage *money.Amount `json:"storage"` // charged by the yard
	Repair  *money.Amount `json:"repair"`  // all money for work that was known: parts, materials, outside work
	Hidden  *money.Amount `json:"hidden"`  // all money for damage that had not been seen
	Selling *money.Amount `json:"selling"` // cost of the sale
	Holding *money.Amount `json:"holding"` // bills for keeping it; nil: the days at the forecast's cost a day
	Hours   *float64      `json:"hours"`   // own hours, all trades

	Receipts []Receipt       `json:"receipts"` // summed by line, part and source
	Worked   []Worked        `json:"worked"`   // summed by line and trade
	Risks    map[string]Seen `json:"risks"`    // by risk; absent: not known
	Days     Days            `json:"days"`
	Sale     *Sale           `json:"sale"` // nil: not sold, or not known
}

// Receipt is money paid, refunds taken off. Line, Risk and Part may be empty where the receipt names none.
type Receipt struct {
	Line   string       `json:"line"`
	Risk   string       `json:"risk"` // hidden damage that it was paid for
	Part   string       `json:"part"`
	Kind   Kind         `json:"kind"`
	Source string       `json:"source"` // of a part, as repair.Option names it
	Paid   money.Amount `json:"paid"`
}

// Worked is own hours of one trade.
type Worked struct {
	Line  string  `json:"line"`
	Risk  string  `json:"risk"`
	Trade string  `json:"trade"`
	Hours float64 `json:"hours"`
}

// Seen is what stripping the vehicle showed of a hidden risk.
type Seen string

// What can be seen of a risk.
const (
	Found    Seen = "found"
	NotThere Seen = "not there"
	NotKnown Seen = "not known"
)

// Days are the calendar days of each stage; nil: not known.
type Days struct {
	Fetch   *float64 `json:"fetch"`   // sale to workshop
	Repair  *float64 `json:"repair"`  // workshop to finished
	Inspect *float64 `json:"inspect"` // finished to paper in hand
	Sell    *float64 `json:"sell"`    // offered to sold
	All     *float64 `json:"all"`     // bought to paid
}

// Sale is how the vehicle was sold.
type Sale struct {
	Price money.Amount  `json:"price"`
	Asked *money.Amount `json:"asked"` // price first asked; nil: not known
	Brand string        `json:"brand"` // title brand at the sale: rebuilt, clear, ...; empty: not known
}

// Major returns an amount of the build in major units; a currency that is not known is taken to have two minor digits.
func (b Build) Major(a money.Amount) float64 {
	cur, known := money.Lookup(b.Currency)
	if !known {
		cur.Digits = 2
	}
	return cur.Major(a)
}
