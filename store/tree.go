package store

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"
)

// A document is compared and changed as a tree: map[string]any, []any, string, json.Number, bool and nil, or absent.

// absence stands in a tree where there is nothing, which is not the null of JSON.
type absence struct{}

var absent any = absence{}

// treeOf returns any value as a tree. Errors: [ErrRefused] when it has no JSON form.
func treeOf(v any) (any, error) {
	text, err := json.Marshal(v)
	if err != nil {
		return nil, fmt.Errorf("%w (%w)", ErrRefused, err)
	}
	return parse(text)
}

// parse returns a document as a tree; no document is absent. Errors: [ErrDamaged].
func parse(text json.RawMessage) (v any, err error) {
	if len(text) == 0 {
		return absent, nil
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		return nil, fmt.Errorf("%w: a document can't be read (%w)", ErrDamaged, err)
	}
	return v, nil
}

// raw is the inverse of [parse].
func raw(tree any) json.RawMessage {
	if tree == absent {
		return nil
	}
	text, err := json.Marshal(tree)
	if err != nil {
		panic(err) // a tree holds nothing that has no JSON form
	}
	return text
}

// at returns what stands at a path, and whether all above it is there.
func at(tree any, path []string) (any, bool) {
	for i, key := range path {
		object, ok := tree.(map[string]any)
		if !ok {
			return absent, false
		}
		if tree, ok = object[key]; !ok {
			return absent, i == len(path)-1
		}
	}
	return tree, true
}

// with returns the tree with v at a path; objects that lack above it are made.
func with(tree any, path []string, v any) any {
	if len(path) == 0 {
		return v
	}
	object, ok := tree.(map[string]any)
	if !ok {
		object = map[string]any{}
	}
	child, ok := object[path[0]]
	if !ok {
		child = absent
	}
	if child = with(child, path[1:], v); child == absent {
		delete(object, path[0])
	} else {
		object[path[0]] = child
	}
	return object
}

// same reports whether two trees say the same: no list says what an empty one says. A key that the one lacks and that is empty in
// the other is no difference: it was added to the program after the older of them was written.
func same(a, b any) bool {
	x, isX := a.(map[string]any)
	y, isY := b.(map[string]any)
	if isX && isY {
		for key := range keys(x, y) {
			if !same(under(x, key), under(y, key)) {
				return false
			}
		}
		return true
	}
	if v, ok := a.([]any); ok {
		if w, ok := b.([]any); ok {
			return slices.EqualFunc(v, w, same)
		}
	}
	if a == absent || b == absent {
		return blank(a) && blank(b)
	}
	return hollow(a) && hollow(b) || reflect.DeepEqual(a, b)
}

// hollow reports whether a tree is a list or an object with nothing in it, or none.
func hollow(tree any) bool {
	switch v := tree.(type) {
	case map[string]any:
		return len(v) == 0
	case []any:
		return len(v) == 0
	}
	return tree == nil
}

// blank reports whether a tree is what a key that lacks is read as.
func blank(tree any) bool {
	switch v := tree.(type) {
	case map[string]any:
		return !slices.ContainsFunc(slices.Collect(maps.Values(v)), func(of any) bool { return !blank(of) })
	case []any:
		return len(v) == 0
	}
	return slices.Contains([]any{absent, nil, "", json.Number("0"), false}, tree)
}

func under(object map[string]any, key string) any {
	if v, ok := object[key]; ok {
		return v
	}
	return absent
}

// keys returns the keys of both objects.
func keys(x, y map[string]any) map[string]bool {
	all := map[string]bool{}
	for _, object := range []map[string]any{x, y} {
		for key := range object {
			all[key] = true
		}
	}
	return all
}
