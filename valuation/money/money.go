package money

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"github.com/shopspring/decimal"
)

// Amount is a sum of money in minor units (cents) of a currency that its holder knows.
type Amount int64

// Currency is an ISO 4217 code with its number of minor digits.
type Currency struct {
	Code   string
	Digits int32
}

// Unsaid stands in where no known currency is said, so that what else is wrong is found all the same: amounts keep the most minor digits
// that any currency has.
var Unsaid = Currency{Digits: 4}

// minorDigits holds the exponents that differ from 2. Source: ISO 4217 table A.1.
var minorDigits = map[string]int32{
	"BIF": 0, "CLP": 0, "DJF": 0, "GNF": 0, "ISK": 0, "JPY": 0, "KMF": 0, "KRW": 0, "PYG": 0, "RWF": 0, "UGX": 0,
	"UYI": 0, "VND": 0, "VUV": 0, "XAF": 0, "XOF": 0, "XPF": 0,
	"BHD": 3, "IQD": 3, "JOD": 3, "KWD": 3, "LYD": 3, "OMR": 3, "TND": 3,
	"CLF": 4, "UYW": 4,
}

// twoDigits lists the codes with two minor digits. Source: ISO 4217 table A.1.
const twoDigits = " AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BGN BMD BND BOB BRL BSD BTN BWP BYN BZD CAD CDF CHF CNY COP CRC " +
	"CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS " +
	"KHR KPW KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MYR MZN NAD NGN NIO NOK NPR NZD PAB " +
	"PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD " +
	"TWD TZS UAH USD UYU UZS VES WST XCD YER ZAR ZMW "

// Lookup returns the currency of an ISO 4217 code, and whether the code is known.
func Lookup(code string) (Currency, bool) {
	if d, ok := minorDigits[code]; ok {
		return Currency{code, d}, true
	}
	if len(code) == 3 && strings.Contains(twoDigits, " "+code+" ") {
		return Currency{code, 2}, true
	}
	return Currency{}, false
}

// Codes returns every code that Lookup knows, in order.
func Codes() []string {
	codes := append(strings.Fields(twoDigits), slices.Collect(maps.Keys(minorDigits))...)
	slices.Sort(codes)
	return codes
}

// Round returns d rounded half up (ties away from zero for negative amounts) to minor units.
func (c Currency) Round(d decimal.Decimal) Amount {
	return Amount(d.Shift(c.Digits).Round(0).IntPart())
}

// Decimal returns a in major units, exactly.
func (c Currency) Decimal(a Amount) decimal.Decimal { return decimal.New(int64(a), -c.Digits) }

// Major returns a in major units.
func (c Currency) Major(a Amount) float64 { return float64(a) / math.Pow10(int(c.Digits)) }

// FromMajor returns x major units rounded half up to minor units. Limits: x beyond about 9e15 minor units loses cents.
func (c Currency) FromMajor(x float64) Amount {
	return Amount(math.Floor(x*math.Pow10(int(c.Digits)) + 0.5))
}

// Text returns a as a plain decimal number with the currency's digits: "1250.00".
func (c Currency) Text(a Amount) string { return c.Decimal(a).StringFixed(c.Digits) }

// Parse returns the amount written as a plain decimal number.
// Errors: not a plain decimal, more digits than the minor unit has, or too large to hold.
func (c Currency) Parse(s string) (Amount, error) {
	if len(s) > mostText {
		return 0, fmt.Errorf("a text of %d characters is larger than any price that can be held", len(s))
	}
	d, err := decimal.NewFromString(s)
	if err != nil || strings.ContainsAny(s, "eE") {
		return 0, fmt.Errorf("%q is not an amount like %s", s, c.Text(c.FromMajor(1250)))
	}
	m := d.Shift(c.Digits)
	if !m.IsInteger() {
		return 0, fmt.Errorf("%s has more decimals than the %d of %s", s, c.Digits, c.Code)
	}
	if m.Abs().GreaterThan(decimal.New(largest, 0)) {
		return 0, fmt.Errorf("%s is larger than any price that can be held", s)
	}
	return Amount(m.IntPart()), nil
}

// mostText is how long an amount may be written: 16 digits, signs, and noughts that somebody wrote without need. A million digits take
// seconds to be turned into a number.
const mostText = 64

// largest is the greatest amount in minor units that survives a trip through float64.
const largest = 1 << 53

// Group returns a with thousands separated by commas and without its minor digits when they are all zero:
// "1,250", "-1,250.50".
func (c Currency) Group(a Amount) string {
	sign := ""
	if a < 0 {
		sign, a = "-", -a
	}
	whole, frac, _ := strings.Cut(c.Text(a), ".")
	var b strings.Builder
	for i, r := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(r)
	}
	if strings.Trim(frac, "0") != "" {
		return sign + b.String() + "." + frac
	}
	return sign + b.String()
}

// Show returns a grouped, with its currency: "USD 1,250".
func (c Currency) Show(a Amount) string { return c.Code + " " + c.Group(a) }

// Whole returns x major units rounded to whole units and grouped, without the currency: "-1,250".
func (c Currency) Whole(x float64) string {
	return c.Group(c.Round(c.Decimal(c.FromMajor(x)).Round(0)))
}
