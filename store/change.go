package store

import (
	"cmp"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"walkline/store/book"
)

// change is all that a step alters, both ways: what the history holds.
type change struct {
	Lots     []lotChange     `json:"lots,omitempty"`
	Settings []field         `json:"settings,omitempty"` // the path begins with the name of the setting
	Shelf    []field         `json:"shelf,omitempty"`    // the path begins with the place on the shelf
	Decision *decisionChange `json:"decision,omitempty"`
}

// lotChange is what differs between two states of a lot.
type lotChange struct {
	Lot    int64             `json:"lot"`
	Fields []field           `json:"fields,omitempty"`
	Lists  map[string]splice `json:"lists,omitempty"` // by the name of the list
	New    string            `json:"new,omitempty"`   // the state that a lot was made with; empty: it was there, or not said
}

func (c change) empty() bool {
	return len(c.Lots) == 0 && len(c.Settings) == 0 && len(c.Shelf) == 0 && c.Decision == nil
}

func (c lotChange) empty() bool { return len(c.Fields) == 0 && len(c.Lists) == 0 }

// hollow reports whether c only makes an empty list or object of none, or none of it, of which nobody sees anything.
func (c lotChange) hollow() bool {
	for _, s := range c.Lists {
		if !listless(s.Out) || !listless(s.In) {
			return false
		}
	}
	return !slices.ContainsFunc(c.Fields, func(f field) bool { return !listless(f.Before) || !listless(f.After) })
}

// listless reports whether a document is a list or an object without anything in it, or null.
func listless(text json.RawMessage) bool {
	return slices.Contains([]string{"null", "[]", "{}"}, string(text))
}

// inverse returns the change that takes c back.
func (c change) inverse() change {
	back := change{Settings: inverse(c.Settings), Shelf: inverse(c.Shelf)}
	for _, l := range slices.Backward(c.Lots) {
		back.Lots = append(back.Lots, l.inverse())
	}
	if c.Decision != nil {
		d := *c.Decision
		d.Fields = inverse(d.Fields)
		back.Decision = &d
	}
	return back
}

func (c lotChange) inverse() lotChange {
	back := lotChange{Lot: c.Lot, Fields: inverse(c.Fields), Lists: map[string]splice{}, New: c.New}
	for name, s := range c.Lists {
		back.Lists[name] = s.inverse()
	}
	return back
}

// parts returns the names of the documents that c touches; "status" stands for what a lot is marked with.
func (c lotChange) parts() map[string]bool {
	touched := map[string]bool{}
	for _, f := range c.Fields {
		touched[partOf(f.Path[0])] = true
	}
	for name := range c.Lists {
		touched[partOf(name)] = true
	}
	return touched
}

// partOf returns the document that a name belongs to: build.charges lies in build.
func partOf(name string) string {
	part, _, _ := strings.Cut(name, ".")
	return part
}

// object is a part of a lot that is compared field by field.
type object struct {
	name string
	at   any // a pointer into the lot
}

// objects returns where in l each object lies. What a case holds is not named here: a key that is added to it is kept.
func objects(l *book.Lot) []object {
	all := []object{{"status.state", &l.State}, {"status.archived", &l.Archived}, {"status.removed", &l.Removed}, {"build", &l.Build}}
	c := reflect.ValueOf(&l.Case).Elem()
	for i := range c.NumField() {
		name, _, _ := strings.Cut(c.Type().Field(i).Tag.Get("json"), ",")
		if !slices.ContainsFunc(lists, func(of list) bool { return of.name == name }) {
			all = append(all, object{name, c.Field(i).Addr().Interface()})
		}
	}
	return all
}

// bare returns a copy of l without its lists.
func bare(l book.Lot) book.Lot {
	for _, of := range lists {
		reflect.ValueOf(of.of(&l)).Elem().SetZero()
	}
	return l
}

// difference returns what turns a into b. What is the same value is found the same without a look at its JSON.
// Errors: [ErrRefused] when b holds a number that is not finite.
func difference(a, b book.Lot) (lotChange, error) {
	c := lotChange{Lot: b.ID, Lists: map[string]splice{}}
	for _, of := range lists {
		s, err := of.difference(&a, &b)
		if err != nil {
			return c, fmt.Errorf("%s: %w", of.name, err)
		}
		if s != nil {
			c.Lists[of.name] = *s
		}
	}
	a, b = bare(a), bare(b)
	from, to := objects(&a), objects(&b)
	for i, o := range from {
		if reflect.DeepEqual(o.at, to[i].at) {
			continue
		}
		x, err1 := treeOf(o.at)
		y, err2 := treeOf(to[i].at)
		if err := cmp.Or(err1, err2); err != nil {
			return c, fmt.Errorf("%s: %w", o.name, err)
		}
		c.Fields = append(c.Fields, compareDocuments(o.name, x, y)...)
	}
	return c, nil
}

// apply returns l with c done to it, c as it was done, and the paths of what clashes. Where anyway is not nil nothing
// clashes: what does not fit is taken from there. l is left alone.
func (c lotChange) apply(l book.Lot, anyway *book.Lot) (after book.Lot, made lotChange, left [][]string, err error) {
	made = lotChange{Lot: c.Lot, Lists: map[string]splice{}, New: c.New}
	for _, of := range lists {
		s, ok := c.Lists[of.name]
		if !ok {
			continue
		}
		was := l
		done, came, err := of.put(&l, s)
		if err != nil {
			return l, made, nil, err
		}
		if came == clashed && anyway != nil {
			given := anyway.Clone()
			reflect.ValueOf(of.of(&l)).Elem().Set(reflect.ValueOf(of.of(&given)).Elem())
			forced, err := of.difference(&was, &l)
			if err != nil || forced == nil {
				return l, made, nil, err
			}
			done, came = *forced, wrote
		}
		switch came {
		case wrote:
			made.Lists[of.name] = done
		case clashed:
			left = append(left, []string{of.name})
		}
	}
	after, fields, more, err := c.applyFields(l, anyway != nil)
	made.Fields = fields
	return after, made, append(left, more...), err
}

// applyFields returns l with the fields of c put into its objects.
func (c lotChange) applyFields(l book.Lot, forced bool) (after book.Lot, made []field, left [][]string, err error) {
	plain := bare(l)
	after = l
	into := objects(&after)
	for i, o := range objects(&plain) {
		var own []field
		for _, f := range c.Fields {
			if f.Path[0] == o.name {
				own = append(own, f)
			}
		}
		if len(own) == 0 {
			continue
		}
		tree, err := treeOf(o.at)
		if err != nil {
			return l, nil, nil, err
		}
		tree, done, clash, err := putAll(tree, own, forced)
		if err != nil {
			return l, nil, nil, err
		}
		made, left = append(made, done...), append(left, clash...)
		if len(done) > 0 {
			if err := decode(o.name, raw(tree), into[i].at); err != nil {
				return l, nil, nil, err
			}
		}
	}
	for _, of := range lists { // an object was read anew without its lists
		reflect.ValueOf(of.of(&after)).Elem().Set(reflect.ValueOf(of.of(&l)).Elem())
	}
	return after, made, left, nil
}

// decode reads a document into the place that it fills, which keeps nothing of what it held.
func decode(part string, text json.RawMessage, place any) error {
	reflect.ValueOf(place).Elem().SetZero()
	return decodeOver(part, text, place)
}

// decodeOver reads a document into a place that keeps what it held under keys that the document, from an older version, lacks.
func decodeOver(part string, text json.RawMessage, place any) error {
	if err := json.Unmarshal(text, place); err != nil {
		return fmt.Errorf("%w: %s can't be read (%w)", ErrDamaged, part, err)
	}
	return nil
}

// ofCase reports whether a part is one of the case, to which an answer is an answer.
func ofCase(part string) bool { return !slices.Contains([]string{"status", "build", "photos"}, part) }
