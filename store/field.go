package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"
)

// field is one value of a document before and after; no text: there was, or is, none. Its path begins with the name of the
// document.
type field struct {
	Path   []string        `json:"path"`
	Before json.RawMessage `json:"before,omitempty"`
	After  json.RawMessage `json:"after,omitempty"`
}

// outcome is what came of putting a change into what is stored.
type outcome int

const (
	wrote   outcome = iota
	already         // it is there
	clashed         // what is stored is neither as before nor as after
)

// compare returns what turns the tree a into b, key by key. A three-point judgement is one value: half of one says nothing.
func compare(path []string, a, b any) (list []field) {
	x, isX := a.(map[string]any)
	y, isY := b.(map[string]any)
	if isX && isY && !(judgement(x) && judgement(y)) {
		for _, key := range slices.Sorted(maps.Keys(keys(x, y))) {
			list = append(list, compare(append(slices.Clip(path), key), under(x, key), under(y, key))...)
		}
		return list
	}
	if reflect.DeepEqual(a, b) {
		return nil
	}
	return []field{{path, raw(a), raw(b)}}
}

// compareDocuments is compare for whole documents: one that is null is compared as an object without keys, so that the first key
// of a map is one field and not the whole map.
func compareDocuments(name string, a, b any) []field {
	path, none := []string{name}, map[string]any{}
	_, isA := a.(map[string]any)
	_, isB := b.(map[string]any)
	switch {
	case a == nil && isB:
		return append([]field{{path, raw(nil), raw(none)}}, compare(path, none, b)...)
	case isA && b == nil:
		return append(compare(path, a, none), field{path, raw(none), raw(nil)})
	}
	return compare(path, a, b)
}

func judgement(object map[string]any) bool {
	for _, key := range []string{"low", "likely", "high"} {
		if _, ok := object[key]; !ok {
			return false
		}
	}
	return len(object) == 3
}

// shell reports whether f only makes an object of null, or null of an object without keys: it is done where it can be and never
// clashes.
func (f field) shell() bool {
	return len(f.Path) == 1 && (string(f.Before) == "null" && string(f.After) == "{}" || string(f.Before) == "{}" && string(f.After) == "null")
}

// whole reports whether f makes a document where there is none, or takes away all of one that is to the letter what f found: it fits
// without a look into it.
func (f field) whole(stored json.RawMessage) bool {
	return len(f.Path) == 1 && (len(f.Before) == 0) != (len(f.After) == 0) && bytes.Equal(stored, f.Before)
}

// put writes f into its document: where it stands as before, or anyway where it is forced. It returns the document after it
// and f as it was done, with what stood there before.
func (f field) put(tree any, forced bool) (any, field, outcome, error) {
	before, err := parse(f.Before)
	if err != nil {
		return tree, f, clashed, err
	}
	after, err := parse(f.After)
	if err != nil {
		return tree, f, clashed, err
	}
	stands, reached := at(tree, f.Path[1:])
	switch {
	case reached && reflect.DeepEqual(stands, after):
		return tree, f, already, nil
	case reached && same(stands, before), forced:
		f.Before = raw(stands)
		return with(tree, f.Path[1:], after), f, wrote, nil
	case reached && same(stands, after), f.shell():
		return tree, f, already, nil
	}
	return tree, f, clashed, nil
}

// inverse returns the fields that take these back, in the order in which they must.
func inverse(fields []field) []field {
	back := make([]field, len(fields))
	for i, f := range fields {
		back[len(fields)-1-i] = field{f.Path, f.After, f.Before}
	}
	return back
}

// dotted is a path as a clash has it.
func dotted(path []string) string { return strings.Join(path, ".") }

// inWords is a path as a sentence has it.
func inWords(path []string) string {
	words := strings.Split(dotted(path), ".")
	if len(words) > 1 && slices.Contains([]string{"lot", "status", "build"}, words[0]) {
		words = words[1:]
	}
	return strings.ReplaceAll(strings.Join(words, " "), "_", " ")
}

// putAll puts fields into a document, one after the other, and returns those that were done and the paths of those that clash.
func putAll(tree any, fields []field, forced bool) (after any, made []field, left [][]string, err error) {
	for _, f := range fields {
		var done field
		var came outcome
		if tree, done, came, err = f.put(tree, forced); err != nil {
			return tree, nil, nil, fmt.Errorf("%s: %w", dotted(f.Path), err)
		}
		switch came {
		case wrote:
			made = append(made, done)
		case clashed:
			left = append(left, f.Path)
		}
	}
	return tree, made, left, nil
}
