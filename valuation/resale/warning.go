package resale

// Warning is one thing that the user should know about a fit.
type Warning struct {
	Code Code   `json:"code"`
	Text string `json:"text"`           // what is the case here, in words
	Rows []int  `json:"rows,omitempty"` // positions in the table of the rows that it speaks of, rising
}

// Code names a kind of warning and never changes.
type Code string

// The kinds of warnings.
const (
	WarnUnused       Code = "rows_not_used"
	WarnUnknown      Code = "price_not_known"
	WarnGuess        Code = "guess_alone"
	WarnFew          Code = "few_rows"
	WarnOlder        Code = "older_than_rows"
	WarnNewer        Code = "newer_than_rows"
	WarnNoMileage    Code = "mileage_not_known"
	WarnNoRowMileage Code = "rows_without_mileage"
	WarnMoreMiles    Code = "more_miles_than_rows"
	WarnFewerMiles   Code = "fewer_miles_than_rows"
	WarnStale        Code = "rows_old"
	WarnUndated      Code = "rows_without_date"
	WarnOtherModel   Code = "no_row_of_model"
	WarnOtherTrim    Code = "no_row_of_trim"
	WarnOtherBrand   Code = "no_row_of_brand"
	WarnDominant     Code = "one_row_carries"
	WarnOutlier      Code = "row_far_off"
)

// meanings says of each kind what it means for the price and what to do about it.
var meanings = map[Code]string{
	WarnUnused:  "These rows have no say in the price. Correct what is wrong with them, or leave them out if they should not count.",
	WarnUnknown: "There is no price to bid from. Add comparables that can be used, or state your own low, likely and high price.",
	WarnGuess: "The price is as good as your guess: nothing checks it. Look for a few sales or advertisements of the same model, even " +
		"three narrow it a good deal.",
	WarnFew: "How fast the price falls with age and mileage is taken from other models here, so the range is wide. A handful more " +
		"comparables narrows it.",
	WarnOlder: "The price is drawn out along the slope of age, further than any comparable reaches. Look for comparables of this model " +
		"year or older.",
	WarnNewer: "The price is drawn out along the slope of age, which is steepest for new vehicles. Look for comparables of this model " +
		"year or newer.",
	WarnNoMileage: "The price is that of a vehicle with the mileage usual among the comparables. Enter the odometer reading: a high one " +
		"lowers the price.",
	WarnNoRowMileage: "Mileage can not be compared, so a high or low odometer reading is not in the price. Enter the mileage of the " +
		"comparables where the source states it.",
	WarnMoreMiles: "The price is drawn out along the slope of mileage, further than any comparable reaches. Look for comparables with as " +
		"many miles.",
	WarnFewerMiles: "The price is drawn out along the slope of mileage, further than any comparable reaches. Look for comparables with as " +
		"few miles.",
	WarnStale: "Old prices count for less, and the range is wider for how far the market may have moved since. Look for newer comparables, " +
		"or leave the oldest out.",
	WarnUndated: "A price of unknown age is taken for one of today. Enter its date if you know it: in a market that moves it makes a " +
		"difference.",
	WarnOtherModel: "The level of the price is that of other models, and how far this one lies from them is not known. Add comparables of " +
		"its own model.",
	WarnOtherTrim: "What this trim is worth against the others is not known and widens the range. Add a comparable of the same trim, or " +
		"correct the trim's spelling.",
	WarnOtherBrand: "The whole discount for the title is what you believe it to be. Add sales of vehicles with this brand, or check the " +
		"discount: the price moves with it one for one.",
	WarnDominant: "If this row is wrong, so is the price. Check its figures, and look for more comparables that are as like the vehicle.",
	WarnOutlier: "Its price does not fit its age, mileage and equipment: a slip, damage that nobody mentions, or a rare version. Check it; " +
		"correct it or leave " +
		"it out if it is wrong.",
}

// Meaning returns what the kind of warning means for the price and what to do about it, in one or two sentences; empty for a kind that this
// package does not know.
func (c Code) Meaning() string { return meanings[c] }
