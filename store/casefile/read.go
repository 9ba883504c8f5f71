package casefile

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Fault is one thing wrong with a document, see [valuation.Fault].
type Fault = valuation.Fault

// Read returns the case that the document describes, and every fault found in it; with any fault the case must not be
// valued. A case whose comparables lie in a file of their own is returned without those rows.
func Read(data []byte) (valuation.Case, []Fault) {
	c := valuation.Defaults()
	tree, err := parse(data)
	if err != nil {
		return c, []Fault{{Key: "file", Want: err.Error()}}
	}
	root, ok := tree.(*object)
	if !ok {
		return c, []Fault{{Key: "file", Value: show(tree), Want: "one JSON object"}}
	}
	if v, ok := root.values["format"].(string); !ok || v != valuation.Format {
		return c, []Fault{{Key: "format", Value: show(root.values["format"]), Want: valuation.Format + ", the version that this program reads"}}
	}
	r := reader{}
	cur, known := currencyOf(root)
	if r.currency = cur; !known {
		r.currency, r.faults = money.Unsaid, []Fault{noCurrency(root)}
		delete(root.values, "currency")
		root.keys = slices.DeleteFunc(root.keys, func(k string) bool { return k == "currency" })
	}
	r.object(reflect.ValueOf(&c).Elem(), root, "")
	c.Update()
	return c, append(r.faults, Unsaid(r.faults, c.Check())...)
}

// Unsaid returns the faults of values whose key, or a part of it, has no fault of form already: what could not be read
// is not judged by its value as well.
func Unsaid(form, values []Fault) []Fault {
	return slices.DeleteFunc(values, func(f Fault) bool {
		return slices.ContainsFunc(form, func(of Fault) bool {
			return strings.HasPrefix(f.Key, of.Key) || strings.HasPrefix(of.Key, f.Key)
		})
	})
}

// Decode reads a strict document of any of the project's data formats into v, a pointer to a struct; money has the
// decimals of the currency that the document's own currency key names. It is how catalogues are read.
func Decode(data []byte, v any) []Fault {
	root, cur, faults := opened(data)
	if faults != nil {
		return faults
	}
	r := reader{currency: cur}
	r.object(reflect.ValueOf(v).Elem(), root, "")
	return r.faults
}

// reader fills values from a tree and collects faults.
type reader struct {
	currency money.Currency
	faults   []Fault
}

func (r *reader) fault(key string, v any, want string) {
	r.faults = append(r.faults, Fault{Key: key, Value: show(v), Want: want})
}

// show writes a value as it may stand in a fault, cut to a line.
func show(v any) string {
	var s string
	switch v := v.(type) {
	case nil:
		return "nothing"
	case *object:
		return "an object"
	case []any:
		return "a list"
	case string:
		s = strconv.Quote(v)
	default:
		s = fmt.Sprint(v)
	}
	if len(s) > 60 {
		s = strings.ToValidUTF8(s[:57], "") + "..."
	}
	return s
}

// object fills the struct dst from o.
func (r *reader) object(dst reflect.Value, o *object, path string) {
	known := fields(dst.Type())
	byKey := map[string]field{}
	for _, f := range known {
		byKey[f.key] = f
	}
	for _, k := range o.twice {
		r.fault(path+k, k, "each key once")
	}
	for _, k := range o.keys {
		f, ok := byKey[k]
		if !ok {
			want := "no such key"
			if near, ok := nearest(k, known); ok {
				want = "no such key; the nearest is " + near
			}
			r.faults = append(r.faults, Fault{Key: path + k, Value: show(o.values[k]), Want: want})
			continue
		}
		r.value(dst.FieldByIndex(f.index), o.values[k], path+k, f.money)
	}
}

// value fills dst from v by the kind of dst.
func (r *reader) value(dst reflect.Value, v any, key string, isMoney bool) {
	if r.special(dst, v, key, isMoney) {
		return
	}
	switch dst.Kind() {
	case reflect.Pointer:
		if v != nil {
			p := reflect.New(dst.Type().Elem())
			r.value(p.Elem(), v, key, isMoney)
			dst.Set(p)
		}
	case reflect.Struct:
		if o, ok := v.(*object); ok {
			r.object(dst, o, key+".")
		} else {
			r.fault(key, v, "an object")
		}
	case reflect.Slice:
		r.list(dst, v, key, isMoney)
	case reflect.Map:
		r.mapping(dst, v, key, isMoney)
	default:
		r.scalar(dst, v, key, isMoney)
	}
}

// special fills the types that have a reading of their own, and reports whether dst is one of them.
func (r *reader) special(dst reflect.Value, v any, key string, isMoney bool) bool {
	switch p := dst.Addr().Interface().(type) {
	case *money.Amount:
		*p = r.amount(v, key)
	case *decimal.Decimal:
		*p = r.decimal(v, key)
	case *prob.Three:
		*p = r.three(v, key, isMoney)
	case *lot.Date:
		s, ok := v.(string)
		if d, err := lot.ParseDate(s); ok && (s == "" || err == nil) {
			*p = d
		} else {
			r.fault(key, v, "a day of the calendar, YYYY-MM-DD")
		}
	default:
		return false
	}
	return true
}

func (r *reader) list(dst reflect.Value, v any, key string, isMoney bool) {
	items, ok := v.([]any)
	if !ok {
		r.fault(key, v, "a list")
		return
	}
	if len(items) == 0 {
		return
	}
	s := reflect.MakeSlice(dst.Type(), len(items), len(items))
	for i, item := range items {
		r.value(s.Index(i), item, fmt.Sprintf("%s[%d]", key, i), isMoney)
	}
	dst.Set(s)
}

func (r *reader) mapping(dst reflect.Value, v any, key string, isMoney bool) {
	o, ok := v.(*object)
	if !ok {
		r.fault(key, v, "an object")
		return
	}
	for _, k := range o.twice {
		r.fault(key+"."+k, k, "each key once")
	}
	if len(o.keys) == 0 {
		return
	}
	m := reflect.MakeMap(dst.Type())
	for _, k := range o.keys {
		item := reflect.New(dst.Type().Elem()).Elem()
		r.value(item, o.values[k], key+"."+k, isMoney)
		m.SetMapIndex(reflect.ValueOf(k), item)
	}
	dst.Set(m)
}

func (r *reader) scalar(dst reflect.Value, v any, key string, isMoney bool) {
	switch dst.Kind() {
	case reflect.String:
		if s, ok := v.(string); ok {
			dst.SetString(s)
			return
		}
		r.fault(key, v, "text in quotes")
	case reflect.Bool:
		if b, ok := v.(bool); ok {
			dst.SetBool(b)
			return
		}
		r.fault(key, v, "true or false")
	case reflect.Int, reflect.Int64:
		n, isNumber := v.(json.Number)
		if i, err := n.Int64(); isNumber && err == nil {
			dst.SetInt(i)
			return
		}
		r.fault(key, v, "a whole number")
	case reflect.Float64:
		dst.SetFloat(r.number(v, key, isMoney))
	default:
		panic("casefile: no reading for " + dst.Type().String())
	}
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
	cur, ok := currencyOf(root)
	if !ok {
		return nil, cur, []Fault{noCurrency(root)}
	}
	return root, cur, nil
}

// currencyOf returns the currency that a document names, and whether it is one.
func currencyOf(root *object) (money.Currency, bool) {
	code, _ := root.values["currency"].(string)
	return money.Lookup(code)
}

// noCurrency is the fault of a document that names none.
func noCurrency(root *object) Fault {
	return Fault{Key: "currency", Value: show(root.values["currency"]), Want: "an ISO 4217 code such as USD"}
}
