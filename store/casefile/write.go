package casefile

import (
	"bytes"
	"encoding/json"
	"math"
	"reflect"
	"sort"
	"strconv"

	"github.com/shopspring/decimal"

	"walkline/valuation"
	"walkline/valuation/bid"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// Write returns the case as a document that Read gives back unchanged. What is empty is left out.
func Write(c valuation.Case) []byte { return document(c, c.Currency, false) }

// WriteAnswer returns the answer as a document; every key stands in it.
func WriteAnswer(a valuation.Answer) []byte { return document(a, a.Currency, true) }

// Encode returns a document that [Decode] gives back unchanged, with money in the currency of the code. What is empty is
// left out. Limits: the currency is known, and v has a key for it.
func Encode(v any, code string) []byte { return document(v, code, false) }

// EncodeWhole returns a document in which every key stands, as an answer's does; figures have six decimals.
func EncodeWhole(v any, code string) []byte { return document(v, code, true) }

// document writes v as indented JSON. Limits: the currency is known, as Read and Check see to.
func document(v any, code string, whole bool) []byte {
	cur, _ := money.Lookup(code)
	w := writer{currency: cur, whole: whole}
	w.value(reflect.ValueOf(v), false)
	var out bytes.Buffer
	if err := json.Indent(&out, w.buf.Bytes(), "", "  "); err != nil {
		panic("casefile: wrote no JSON: " + err.Error())
	}
	out.WriteByte('\n')
	return out.Bytes()
}

// writer writes values; whole says that empty ones are written too.
type writer struct {
	buf      bytes.Buffer
	currency money.Currency
	whole    bool
}

func (w *writer) quote(s string) {
	b, _ := json.Marshal(s) // a string always has a JSON form
	w.buf.Write(b)
}

func (w *writer) value(v reflect.Value, isMoney bool) {
	switch x := v.Interface().(type) {
	case money.Amount:
		w.quote(w.currency.Text(x))
		return
	case decimal.Decimal:
		w.buf.WriteString(x.String())
		return
	case prob.Three:
		w.three(x, isMoney)
		return
	case []bid.Ceiling:
		w.ceilings(x)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			w.buf.WriteString("null")
			return
		}
		w.value(v.Elem(), isMoney)
	case reflect.Struct:
		w.object(v)
	case reflect.Slice:
		w.list(v, isMoney)
	case reflect.Map:
		w.mapping(v, isMoney)
	default:
		w.scalar(v, isMoney)
	}
}

func (w *writer) object(v reflect.Value) {
	w.buf.WriteByte('{')
	first := true
	for _, f := range fields(v.Type()) {
		x := v.FieldByIndex(f.index)
		if !w.whole && empty(x) {
			continue
		}
		if !first {
			w.buf.WriteByte(',')
		}
		first = false
		w.quote(f.key)
		w.buf.WriteByte(':')
		w.value(x, f.money)
	}
	w.buf.WriteByte('}')
}

// empty reports whether a value may be left out: reading gives it back.
func empty(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Pointer:
		return v.IsNil()
	case reflect.String, reflect.Slice, reflect.Map:
		return v.Len() == 0
	}
	return false
}

func (w *writer) list(v reflect.Value, isMoney bool) {
	w.buf.WriteByte('[')
	for i := range v.Len() {
		if i > 0 {
			w.buf.WriteByte(',')
		}
		w.value(v.Index(i), isMoney)
	}
	w.buf.WriteByte(']')
}

func (w *writer) mapping(v reflect.Value, isMoney bool) {
	var keys []string
	for _, k := range v.MapKeys() {
		keys = append(keys, k.String())
	}
	sort.Strings(keys)
	w.buf.WriteByte('{')
	for i, k := range keys {
		if i > 0 {
			w.buf.WriteByte(',')
		}
		w.quote(k)
		w.buf.WriteByte(':')
		w.value(v.MapIndex(reflect.ValueOf(k).Convert(v.Type().Key())), isMoney)
	}
	w.buf.WriteByte('}')
}

func (w *writer) scalar(v reflect.Value, isMoney bool) {
	switch v.Kind() {
	case reflect.String:
		w.quote(v.String())
	case reflect.Bool:
		w.buf.WriteString(strconv.FormatBool(v.Bool()))
	case reflect.Int, reflect.Int64:
		w.buf.WriteString(strconv.FormatInt(v.Int(), 10))
	case reflect.Float64:
		w.number(v.Float(), isMoney)
	default:
		panic("casefile: no writing for " + v.Type().String())
	}
}

// number writes a figure: money of a case with its currency's decimals, figures of an answer to six decimals.
func (w *writer) number(f float64, isMoney bool) {
	switch {
	case math.IsNaN(f) || math.IsInf(f, 0):
		w.buf.WriteString("null")
	case isMoney:
		w.buf.WriteString(w.currency.Text(w.currency.FromMajor(f)))
	case w.whole:
		w.buf.WriteString(strconv.FormatFloat(math.Round(f*1e6)/1e6, 'f', -1, 64))
	default:
		w.buf.WriteString(strconv.FormatFloat(f, 'f', -1, 64))
	}
}

func (w *writer) three(t prob.Three, isMoney bool) {
	if t.Low == t.Likely && t.Likely == t.High {
		w.number(t.Low, isMoney)
		return
	}
	w.buf.WriteString(`{"low":`)
	w.number(t.Low, isMoney)
	w.buf.WriteString(`,"likely":`)
	w.number(t.Likely, isMoney)
	w.buf.WriteString(`,"high":`)
	w.number(t.High, isMoney)
	w.buf.WriteByte('}')
}

// ceilings writes one key a rule, null where it can hold at no bid.
func (w *writer) ceilings(cs []bid.Ceiling) {
	w.buf.WriteByte('{')
	for i, c := range cs {
		if i > 0 {
			w.buf.WriteByte(',')
		}
		w.quote(c.Rule)
		w.buf.WriteByte(':')
		w.value(reflect.ValueOf(c.Bid), false)
	}
	w.buf.WriteByte('}')
}
