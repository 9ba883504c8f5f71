package form

import (
	"fmt"

	"github.com/shopspring/decimal"

	"walkline/ui/widgets"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Certainly binds a chance that may be left out, which then means that it is certain.
type Certainly struct{ At **float64 }

// read returns what a pointer points to as a number. Where 0 or nothing means that the figure is not known, and the field may be empty,
// it is. It panics on a pointer that no field is made for: a slip in the form.
func read(at any, spec widgets.Spec, cur money.Currency) widgets.Number {
	n := widgets.Number{}
	switch p := at.(type) {
	case *int:
		n = widgets.Known(float64(*p))
	case *float64:
		n = widgets.Known(*p)
	case *decimal.Decimal:
		return widgets.Exactly(*p)
	case *money.Amount:
		n = widgets.Exactly(cur.Decimal(*p))
	case Certainly:
		if *p.At == nil {
			return widgets.Known(1)
		}
		return widgets.Known(**p.At)
	case **int:
		if *p != nil {
			return widgets.Known(float64(**p))
		}
	case **float64:
		if *p != nil {
			return widgets.Known(**p)
		}
	case **money.Amount:
		if *p != nil {
			return widgets.Exactly(cur.Decimal(**p))
		}
	default:
		panic(fmt.Sprintf("form: no field for a number is bound to %T", at))
	}
	if spec.Optional && n.Known && n.Float() == 0 {
		return widgets.Number{}
	}
	return n
}

// write puts a number where a pointer points to.
func write(at any, n widgets.Number, cur money.Currency) {
	amount := func() money.Amount { return money.Amount(n.Minor(cur.Digits)) }
	switch p := at.(type) {
	case *int:
		*p = n.Int()
	case *float64:
		*p = n.Float()
	case *decimal.Decimal:
		*p = n.Value
	case *money.Amount:
		*p = amount()
	case Certainly:
		*p.At = known(n, n.Float)
	case **int:
		*p = known(n, n.Int)
	case **float64:
		*p = known(n, n.Float)
	case **money.Amount:
		*p = known(n, amount)
	}
}

// known returns the value of a number, nil when it is not known.
func known[V any](n widgets.Number, value func() V) *V {
	if !n.Known {
		return nil
	}
	v := value()
	return &v
}

// judged returns the three-point judgement that a pointer points to, no judgement where there is none. The pointer is a *prob.Three or a
// **prob.Three.
func judged(at any) prob.Three {
	switch p := at.(type) {
	case *prob.Three:
		return *p
	case **prob.Three:
		if *p != nil {
			return **p
		}
	default:
		panic(fmt.Sprintf("form: no three-point field is bound to %T", at))
	}
	return prob.Three{}
}

// judge puts a judgement where a pointer points to; nothing at all takes an optional one away.
func judge(at any, t prob.Three) {
	switch p := at.(type) {
	case *prob.Three:
		*p = t
	case **prob.Three:
		if *p = &t; t.Zero() {
			*p = nil
		}
	}
}
