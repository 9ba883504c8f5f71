package casefile

import (
	"encoding/json"
	"math"

	"github.com/shopspring/decimal"

	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// amount reads exact money: a decimal string or a number.
func (r *reader) amount(v any, key string) money.Amount {
	text, ok := written(v)
	if !ok {
		r.fault(key, v, "an amount of money")
		return 0
	}
	a, err := r.currency.Parse(text)
	if err != nil {
		r.fault(key, v, "an amount with at most the minor digits of "+r.currency.Code+" ("+err.Error()+")")
	}
	return a
}

// written returns the text of a number or of a string that may hold one.
func written(v any) (string, bool) {
	switch v := v.(type) {
	case string:
		return v, true
	case json.Number:
		return v.String(), true
	}
	return "", false
}

// decimal reads an exact rate. Limits: exponents are kept short, so that no file asks for a number of a million digits.
func (r *reader) decimal(v any, key string) decimal.Decimal {
	text, ok := written(v)
	d, err := decimal.NewFromString(text)
	if !ok || err != nil || len(text) > 40 || d.Exponent() < -30 || d.Exponent() > 30 {
		r.fault(key, v, "a number")
		return decimal.Zero
	}
	return d
}

// number reads a model figure; money may be a string and has at most its currency's decimals.
func (r *reader) number(v any, key string, isMoney bool) float64 {
	if isMoney {
		return r.currency.Major(r.amount(v, key))
	}
	n, ok := v.(json.Number)
	f, err := n.Float64()
	if !ok || err != nil || math.Abs(f) > 1e15 {
		r.fault(key, v, "a number")
		return 0
	}
	return f
}

// three reads a three-point value: an object with low, likely and high, or one number for a certain value.
func (r *reader) three(v any, key string, isMoney bool) prob.Three {
	o, ok := v.(*object)
	if !ok {
		return prob.Certain(r.number(v, key, isMoney))
	}
	var t prob.Three
	at := map[string]*float64{"low": &t.Low, "likely": &t.Likely, "high": &t.High}
	for _, k := range o.keys {
		p, known := at[k]
		if !known {
			r.fault(key+"."+k, o.values[k], "no such key; a three-point value has low, likely and high")
			continue
		}
		*p = r.number(o.values[k], key+"."+k, isMoney)
	}
	for _, k := range o.twice {
		r.fault(key+"."+k, k, "each key once")
	}
	for _, k := range []string{"low", "likely", "high"} {
		if _, given := o.values[k]; !given {
			r.fault(key+"."+k, nil, "a number: a three-point value has low, likely and high")
		}
	}
	return t
}
