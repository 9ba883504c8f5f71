package desk_test

import (
	"context"
	"encoding/json"
	"errors"
	"maps"
	"slices"

	"walkline/ui/desk"
)

// shot is the Board and the settings at one moment.
type shot struct {
	entries  []desk.Entry
	settings map[string][]byte
}

// steps is the history of one place.
type steps struct {
	labels []string
	shots  [][2]shot // before and after each step
	done   int
}

func (b *book) shoot() shot { return shot{slices.Clone(b.entries), maps.Clone(b.settings)} }

// step does something as a step of a place.
func (b *book) step(at desk.Place, label string, do func()) {
	before := b.shoot()
	do()
	h := b.shop[at]
	h.labels, h.shots = append(h.labels[:h.done], label), append(h.shots[:h.done], [2]shot{before, b.shoot()})
	h.done++
}

// put makes the book look as it did, as far as the place reaches.
func (b *book) put(at desk.Place, s shot) {
	if at == desk.Board {
		b.entries = slices.Clone(s.entries)
		return
	}
	b.settings = maps.Clone(s.settings)
}

func (b *book) Keep(_ context.Context, label, name string, value any) error {
	data, err := json.Marshal(value)
	if err := errors.Join(err, b.broken); err != nil {
		return err
	}
	b.step(desk.Bench, label, func() { b.settings[name] = data })
	return nil
}

func (b *book) UndoAt(_ context.Context, at desk.Place) (string, bool, error) {
	h := b.shop[at]
	if h.done == 0 || b.broken != nil {
		return "", false, b.broken
	}
	h.done--
	b.put(at, h.shots[h.done][0])
	return h.labels[h.done], true, nil
}

func (b *book) RedoAt(_ context.Context, at desk.Place) (string, bool, error) {
	h := b.shop[at]
	if h.done == len(h.labels) || b.broken != nil {
		return "", false, b.broken
	}
	b.put(at, h.shots[h.done][1])
	h.done++
	return h.labels[h.done-1], true, nil
}

func (b *book) ReachAt(_ context.Context, at desk.Place) (desk.Reach, error) {
	h := b.shop[at]
	var r desk.Reach
	if h.done > 0 {
		r.Undo = h.labels[h.done-1]
	}
	if h.done < len(h.labels) {
		r.Redo = h.labels[h.done]
	}
	return r, b.broken
}
