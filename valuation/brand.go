package valuation

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// The causes of a title brand that buyers pay differently for.
const (
	CauseFlood     = "flood"
	CauseSaltFlood = "salt_flood"
	CauseFire      = "fire"
	CauseStructure = "structure"
	CauseCollision = "collision"
	CauseTheft     = "theft_recovery"
	CauseHail      = "hail"
	CauseBuyBack   = "buy_back"
	CauseOdometer  = "odometer"
)

// Causes lists them.
var Causes = []string{CauseFlood, CauseSaltFlood, CauseFire, CauseStructure, CauseCollision, CauseTheft, CauseHail, CauseBuyBack,
	CauseOdometer}

// starterDiscounts are the fractions that a branded title takes off by its cause; that of the odometer stands beside another's. A collision
// has the case's own. Starter values, from memory: replace them with yours.
var starterDiscounts = map[string]prob.Three{
	CauseFlood: {Low: .3, Likely: .42, High: .6}, CauseSaltFlood: {Low: .4, Likely: .55, High: .75}, CauseFire: {Low: .3, Likely: .42,
		High: .6},
	CauseStructure: {Low: .22, Likely: .33, High: .48}, CauseTheft: {Low: .08, Likely: .18, High: .32}, CauseHail: {Low: .05, Likely: .14,
		High: .25},
	CauseBuyBack: {Low: .08, Likely: .17, High: .3}, CauseOdometer: {Low: .05, Likely: .12, High: .25},
}

// brandCauses are the causes by the code of a brand; brandStems by how a word of a title begins, where it is no standard brand.
var (
	brandCauses = map[string]string{"01": CauseFlood, "02": CauseFire, "03": CauseHail, "04": CauseSaltFlood, "14": CauseCollision,
		"23": CauseBuyBack, "36": CauseTheft,
		"39": CauseBuyBack, "40": CauseBuyBack, "69": CauseOdometer, "70": CauseOdometer, "72": CauseOdometer, "73": CauseOdometer,
		"74": CauseOdometer, "76": CauseOdometer}
	brandStems = [][2]string{{"salt", CauseSaltFlood}, {"flood", CauseFlood}, {"water", CauseFlood}, {"fire", CauseFire}, {"burn",
		CauseFire}, {"hail", CauseHail}, {"theft", CauseTheft},
		{"stolen", CauseTheft}, {"lemon", CauseBuyBack}, {"buyback", CauseBuyBack}, {"buy back", CauseBuyBack},
		{"repurchase", CauseBuyBack}, {"collision", CauseCollision}, {"structur", CauseStructure}, {"frame", CauseStructure},
		{"unibody", CauseStructure}, {"not actual", CauseOdometer}, {"odometer disc", CauseOdometer}, {"odometer roll", CauseOdometer},
		{"odometer tamp", CauseOdometer}, {"odometer alter", CauseOdometer}, {"rollback", CauseOdometer}, {"mileage unknown", CauseOdometer},
		{"mileage disc", CauseOdometer}, {"tmu", CauseOdometer}}
	lossCauses = map[string]string{"collision": CauseCollision, "vandalism": CauseCollision, "flood": CauseFlood, "fire": CauseFire,
		"theft": CauseTheft, "hail": CauseHail}
)

// causes returns why buyers take something off: by the brands and the document, the cause of loss and the survey, each once, in the
// order of [Causes].
func (c Case) causes() []string {
	is := map[string]bool{}
	for _, word := range append([]string{c.Lot.Title.Document}, c.Lot.Title.Brands...) {
		for _, cause := range worded(word) {
			is[cause] = true
		}
	}
	for _, loss := range c.Lot.Loss {
		is[lossCauses[loss]] = true
	}
	for _, d := range c.Damage {
		is[CauseFlood] = is[CauseFlood] || d.Area == "water"
		is[CauseStructure] = is[CauseStructure] || d.Depth == "structure"
	}
	if c.Survey != nil && c.Survey.Water != nil {
		is[CauseFlood], is[CauseSaltFlood] = true, is[CauseSaltFlood] || c.Survey.Water.Kind == "salt"
	}
	is[CauseOdometer] = is[CauseOdometer] || c.Lot.Misread()
	return slices.DeleteFunc(slices.Clone(Causes), func(cause string) bool { return !is[cause] })
}

// worded returns the causes that a word of a title names, none that nobody knows.
func worded(word string) []string {
	if b, known := lot.BrandOf(word); known {
		return []string{brandCauses[b.Code]}
	}
	var out []string
	plain := " " + strings.Join(strings.Fields(strings.NewReplacer("-", " ", "_", " ", ",", " ", "/", " ").Replace(strings.ToLower(word))),
		" ")
	for _, stem := range brandStems {
		if strings.Contains(plain, " "+stem[0]) {
			out = append(out, stem[1])
		}
	}
	return out
}

// unheard names the brands that are no words of the list: nothing is known of what buyers take off for them.
func (c Case) unheard() []string {
	var out []string
	for _, word := range c.Lot.Title.Brands {
		if _, known := lot.BrandOf(word); !known && len(worded(word)) == 0 && lot.ReadPaper(word) == lot.Unheard {
			out = append(out, fmt.Sprintf("The brand %q is no word of the list: only what any branded title takes off is counted. Ask the agency "+
				"what it means.", word))
		}
	}
	return out
}

// told returns the lot with what its title says of its loss: water and fire raise their risks whatever the cause of loss says.
func (c Case) told() lot.Lot {
	l := c.Lot
	for _, cause := range c.causes() {
		loss := map[string]string{CauseFlood: "flood", CauseSaltFlood: "flood", CauseFire: "fire"}[cause]
		if loss != "" && !slices.Contains(l.Loss, loss) {
			l.Loss = append(slices.Clone(l.Loss), loss)
		}
	}
	return l
}

// discountOf returns what a cause takes off: the case's own figure, or else the starter's. A case that has a figure of its own for branded
// titles is never taken below that.
func (c Case) discountOf(cause string) prob.Three {
	own, given := c.Resale.Discounts[cause]
	general, starter := c.Resale.BrandDiscount, starterDiscounts[cause]
	switch {
	case given:
		return own
	case cause == CauseCollision, starter.Mean() < general.Mean() && general != Defaults().Resale.BrandDiscount && cause != CauseOdometer:
		return general
	}
	return starter
}

// leading returns the cause whose discount is the worst, the odometer's aside, and that discount; no cause where none is known.
func (c Case) leading() (string, prob.Three) {
	lead, off := "", c.Resale.BrandDiscount
	for _, cause := range c.causes() {
		if d := c.discountOf(cause); cause != CauseOdometer && (lead == "" || d.Mean() > off.Mean()) {
			lead, off = cause, d
		}
	}
	return lead, off
}

// discounted says what the title and the odometer take off the price, and what of it a guess has to hold already.
func (w *work) discounted() []string {
	var out []string
	c := w.c
	cause, off := c.leading()
	may, d := c.mileage(), c.doubt()
	if w.market.price.RowsUsed == 0 {
		return c.ignored(cause, off, may != nil || !d.Off.Zero())
	}
	if d.Brand != d.General && brandWords(c) {
		out = append(out, fmt.Sprintf("Cause of the title brand, %s: %s off a clear title's price, not the %s of branded titles (starter "+
			"value where you gave none).",
			strings.ReplaceAll(cause, "_", " "), percents(d.Brand), percents(d.General)))
	}
	if may != nil {
		out = append(out, fmt.Sprintf("The odometer reading is a floor: %.0f to %.0f %s are counted, %.0f most likely (starter value where "+
			"you gave none).", may.Low, may.High, c.Lot.OdometerUnit, may.Likely))
	}
	if !d.Off.Zero() {
		out = append(out, "Buyers take "+percents(d.Off)+" off for an odometer that is not actual, beside the title (starter value where "+
			"you gave none).")
	}
	return out
}

// ignored names what a price that is a guess alone leaves out: it is of this vehicle as it stands, and nothing is taken off it.
func (c Case) ignored(cause string, off prob.Three, odometer bool) []string {
	var out []string
	if cause != "" && off != c.Resale.BrandDiscount {
		out = append(out, "The price is your guess and ignores the title's cause, "+strings.ReplaceAll(cause, "_", " ")+
			": what buyers take off for that has to be in it.")
	}
	if odometer {
		out = append(out, "Your guess is taken as one for a vehicle with this odometer statement, "+
			strings.ReplaceAll(c.Lot.OdometerStatus, "_", " ")+": nothing more comes off for it.")
	}
	return out
}

// brandWords reports whether the finished vehicle is sold with a branded title.
func brandWords(c Case) bool {
	b := strings.ToLower(c.subject().Brand)
	return b != "clear" && b != "clean" && b != "none"
}

func percents(t prob.Three) string { return fmt.Sprintf("%.0f to %.0f %%", 100*t.Low, 100*t.High) }
