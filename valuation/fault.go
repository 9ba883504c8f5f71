package valuation

import (
	"fmt"
	"slices"
	"strings"

	"walkline/valuation/lot"
	"walkline/valuation/prob"
)

// Fault is one thing wrong with a case: the key it stands under, the value as written, and what would be right.
type Fault struct {
	Key, Value, Want string
}

// Error returns the fault as one line.
func (f Fault) Error() string {
	if f.Value == "" {
		return f.Key + ": " + f.Want
	}
	return f.Key + ": " + f.Value + ": want " + f.Want
}

// faults collects what is wrong.
type faults struct {
	all []Fault
}

func (f *faults) add(key string, value any, want string) {
	if x, ok := value.(float64); ok {
		value = prob.Plain(x)
	}
	f.all = append(f.all, Fault{key, fmt.Sprint(value), want})
}

// unless adds a fault where ok is false.
func (f *faults) unless(ok bool, key string, value any, want string) {
	if !ok {
		f.add(key, value, want)
	}
}

// word adds a fault where s is none of the words.
func (f *faults) word(key, s string, words []string) {
	if !slices.Contains(words, s) {
		f.add(key, fmt.Sprintf("%q", s), "one of "+strings.Join(words, ", "))
	}
}

// between adds a fault where x lies outside lo..hi.
func (f *faults) between(key string, x, lo, hi float64) {
	if !(x >= lo && x <= hi) { // what is no number lies outside, too
		f.add(key, x, "a number from "+prob.Plain(lo)+" to "+prob.Plain(hi))
	}
}

// chance adds a fault where an optional chance lies outside 0..1.
func (f *faults) chance(key string, x *float64) {
	if x != nil {
		f.between(key, *x, 0, 1)
	}
}

// The greatest money, and the greatest hours and days, that one judgement may name: beyond any vehicle in any currency, and
// small enough that what a lot adds up to is still held to the minor unit.
const (
	mostMoney = 1e12
	mostTime  = 1e5
)

// three adds a fault where a judgement of money is out of order, below zero or past all sense.
func (f *faults) three(key string, t prob.Three) { f.judgement(key, t, mostMoney) }

// spell adds a fault where a judgement of hours or days is out of order, below zero or past all sense.
func (f *faults) spell(key string, t prob.Three) { f.judgement(key, t, mostTime) }

func (f *faults) judgement(key string, t prob.Three, most float64) {
	f.unless(t.Ordered(), key, t.Text(),
		"low no more than likely, likely no more than high")
	f.unless(t.Low >= 0, key+".low", t.Low, "no less than 0")
	f.unless(t.High <= most, key+".high", t.High, "no more than "+prob.Plain(most))
}

// hours adds a fault for each trade that is none and each judgement that is out of order.
func (f *faults) hours(key string, h map[string]prob.Three) {
	for _, trade := range sortedKeys(h) {
		f.word(key, trade, lot.Trades)
		f.spell(key+"."+trade, h[trade])
	}
}

// id adds a fault where an id is empty or has been used before in seen.
func (f *faults) id(key, id string, seen map[string]bool) {
	f.unless(id != "" && !seen[id], key, fmt.Sprintf("%q", id), "an id of its own")
	seen[id] = true
}

func sortedKeys[T any](m map[string]T) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
