package casefile

import (
	"reflect"
	"slices"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/money"
)

// ReadAnswer returns the answer that a document of [WriteAnswer] holds, and every fault found in it. What the document does
// not say of an answer stays unsaid: digits beyond the sixth of a figure, and whether a rule holds at every bid where the answer is of a
// version that did not write it.
func ReadAnswer(data []byte) (valuation.Answer, []Fault) {
	var a valuation.Answer
	root, cur, faults := opened(data)
	if faults != nil {
		return a, faults
	}
	if v, ok := root.values["format"].(string); !ok || v != valuation.AnswerFormat {
		return a, []Fault{{Key: "format", Value: show(root.values["format"]),
			Want: valuation.AnswerFormat + ", the version that this program reads"}}
	}
	r := reader{currency: cur, answer: true}
	r.object(reflect.ValueOf(&a).Elem(), root, "")
	for i, c := range a.Ceilings {
		a.Ceilings[i].Any = slices.Contains(a.NoCeiling, c.Rule)
	}
	return a, r.faults
}

// opened returns the document's root object and its currency.
func opened(data []byte) (*object, money.Currency, []Fault) {
	tree, err := parse(data)
	if err != nil {
		return nil, money.Currency{}, []Fault{{Key: "file", Want: err.Error()}}
	}
	root, ok := tree.(*object)
	if !ok {
		return nil, money.Currency{}, []Fault{{Key: "file", Value: show(tree), Want: "one JSON object"}}
	}
	code, _ := root.values["currency"].(string)
	cur, ok := money.Lookup(code)
	if !ok {
		return nil, cur, []Fault{{Key: "currency", Value: show(root.values["currency"]), Want: "an ISO 4217 code such as USD"}}
	}
	return root, cur, nil
}

// ceilings reads one key a rule, null where it can hold at no bid.
func (r *reader) ceilings(v any, key string) []bid.Ceiling {
	o, ok := v.(*object)
	if !ok {
		r.fault(key, v, "an object")
		return nil
	}
	var out []bid.Ceiling
	for _, rule := range o.keys {
		c := bid.Ceiling{Rule: rule}
		if o.values[rule] != nil {
			a := r.amount(o.values[rule], key+"."+rule)
			c.Bid = &a
		}
		if valuation.RuleWords[rule] == "" {
			r.fault(key+"."+rule, rule, "a house rule")
		}
		out = append(out, c)
	}
	return out
}
