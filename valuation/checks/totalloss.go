package checks

import (
	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

// Damaged is what the total-loss rules compare, all in minor units of one currency.
type Damaged struct {
	Repair  money.Amount  // cost of the repair, as the rule counts it (see Calling.Note)
	Value   money.Amount  // value just before the damage
	Salvage *money.Amount // value as it stands now; nil: not known
}

// Calling is what one rule calls a vehicle. Its words are those of the source: check with the agency before relying on it.
type Calling struct {
	State    string
	Kind     string // what the rule calls the vehicle where it applies
	Applies  bool
	Unknown  bool   // the rule needs the salvage value, which is not known
	Note     string // whom the rule is for and what counts as repair
	Citation string
	Status   string // READ: read in a copy of the text; READ-2: read where another page quotes it
}

// CheckWithAgency goes with every [Calling].
const CheckWithAgency = "Thresholds change and have exceptions: check with the agency."

// TotalLoss returns what each rule of the table would call the vehicle, in the order of the table; none when there is no
// value to compare with. Limits: amounts at or above 0.
// Assumptions: the arithmetic alone is judged, not the age of the vehicle, nor which costs a rule leaves out.
// Source: the citation of each rule; comparisons are exact, so a ratio of exactly 75 % meets ">=" and not ">".
func TotalLoss(d Damaged) []Calling {
	if d.Value <= 0 {
		return nil
	}
	var out []Calling
	for _, r := range lossRules {
		c := Calling{State: r.state, Kind: r.kind, Note: r.note, Citation: r.citation, Status: r.status}
		least, known := r.threshold(d)
		c.Unknown = !known
		c.Applies = known && r.meets(d, least)
		out = append(out, c)
	}
	return out
}

// lossRule is one row of the table: the repair cost is compared with a share of the value, or with what the damage
// leaves of it.
type lossRule struct {
	state, kind      string
	from             string // share of the value from which the rule applies; empty: value less salvage value
	reached          bool   // the share itself is enough (>=); false: it must be exceeded (>)
	below            string // share at which the rule ends; empty: it does not
	salvage          string // share of the value taken for the salvage value where that is not known; empty: it must be known
	note             string
	citation, status string
}

// threshold returns the repair cost from which the rule applies, in minor units, and whether it can be known.
func (r lossRule) threshold(d Damaged) (decimal.Decimal, bool) {
	switch {
	case r.from != "":
		return part(r.from, d.Value), true
	case d.Salvage != nil:
		return whole(d.Value - *d.Salvage), true
	case r.salvage != "":
		return whole(d.Value).Sub(part(r.salvage, d.Value)), true
	}
	return decimal.Zero, false
}

// meets reports whether the repair cost lies in the rule's range.
func (r lossRule) meets(d Damaged, least decimal.Decimal) bool {
	cost := whole(d.Repair)
	if r.below != "" && cost.Cmp(part(r.below, d.Value)) >= 0 {
		return false
	}
	return cost.Cmp(least) > 0 || r.reached && cost.Equal(least)
}

func whole(a money.Amount) decimal.Decimal { return decimal.NewFromInt(int64(a)) }

// part returns a share of an amount, exactly.
func part(share string, a money.Amount) decimal.Decimal {
	return decimal.RequireFromString(share).Mul(whole(a))
}

// lossRules are the rules whose text was read, or read where another page quotes it. Rules known from memory alone are
// left out.
var lossRules = []lossRule{
	{state: "Federal (title information system)", kind: "salvage automobile",
		note:     "Also every vehicle that is salvage under the law of a state.",
		citation: "49 U.S.C. 30501", status: "READ-2"},
	{state: "Alabama", kind: "total loss", from: "0.75", reached: true,
		note:     "Of the fair retail value before the damage.",
		citation: "Code of Ala. 32-8-87", status: "READ"},
	{state: "Michigan", kind: "salvage certificate", from: "0.75", reached: true, below: "0.91",
		note:     "Late model vehicles; of the actual cash value before the damage.",
		citation: "MCL 257.217c(2)", status: "READ"},
	{state: "Michigan", kind: "scrap certificate (cannot be rebuilt for the road)", from: "0.91", reached: true,
		note:     "Late model vehicles; of the actual cash value before the damage.",
		citation: "MCL 257.217c(2)", status: "READ"},
	{state: "Iowa", kind: "salvage", from: "0.70",
		note:     "Only if the value before the damage was at least USD 500; labour, parts, materials and sales tax count.",
		citation: "Iowa Code 321.52", status: "READ"},
	{state: "North Carolina", kind: "salvage", from: "0.75",
		note:     "From an opinion of 20 May 1988; the current text was not checked.",
		citation: "G.S. 20-71.3(d)", status: "READ"},
	{state: "Oklahoma", kind: "salvage", from: "0.60",
		note:     "Only the last ten model years; structural and mechanical parts and labour only.",
		citation: "47 O.S. 1105; OAC 710:60-5-53", status: "READ-2"},
	{state: "Texas", kind: "salvage motor vehicle", from: "1",
		note:     "Repainting and sales tax do not count, nor does hail; from the bill of 2005, the current paragraph was not seen.",
		citation: "Tex. Transp. Code 501.091", status: "READ"},
	{state: "Colorado", kind: "salvage", from: "1",
		note:     "Of the retail value just before; hail does not count.",
		citation: "C.R.S. 42-6-102", status: "READ-2"},
	{state: "Virginia", kind: "salvage (late model)", salvage: "0.25",
		note:     "The 25 % stands for the salvage value where no insurer names one; late model: the last six years, or a value of USD 10,000 or more.",
		citation: "Va. Code 46.2-1600", status: "READ-2"},
	{state: "Indiana", kind: "salvage", from: "0.70",
		note:     "The last seven model years, up to fifteen.",
		citation: "IC 9-22-3-3", status: "READ-2"},
	{state: "Nevada", kind: "salvage", from: "0.65", reached: true,
		note:     "Painting does not count; the number of the section is from memory.",
		citation: "NRS 487", status: "READ-2"},
}
