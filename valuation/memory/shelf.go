package memory

import "container/list"

// Shelf keeps results by their key, within a bound on their sizes together.
type Shelf[V any] struct {
	most, size int
	turn       int
	kept       map[Key]*list.Element
	order      list.List // of *item, the latest used first
}

type item[V any] struct {
	key  Key
	v    V
	size int
	turn int // the turn in which it was used last
}

// NewShelf returns a shelf whose results together are no larger than most.
func NewShelf[V any](most int) *Shelf[V] {
	return &Shelf[V]{most: most, kept: map[Key]*list.Element{}}
}

// Turn begins a new round of use. What has been used in the present round is not given up for something new of the same
// round: a round larger than the shelf would otherwise push out each result just before it is asked for again.
func (s *Shelf[V]) Turn() { s.turn++ }

// Size returns the size of all that is kept.
func (s *Shelf[V]) Size() int { return s.size }

// Recall returns what is kept under the key, or else what work returns with its size, and keeps that where there is room
// beside what the present round has used. What was used longest ago is given up first.
func (s *Shelf[V]) Recall(key Key, work func() (v V, size int)) V {
	if e, ok := s.kept[key]; ok {
		s.order.MoveToFront(e)
		it := e.Value.(*item[V])
		it.turn = s.turn
		return it.v
	}
	v, size := work()
	if s.room(size) {
		s.kept[key] = s.order.PushFront(&item[V]{key, v, size, s.turn})
		s.size += size
	}
	return v
}

// room gives up what is old until something of that size fits, and reports whether it does.
func (s *Shelf[V]) room(size int) bool {
	if size > s.most {
		return false
	}
	for s.size+size > s.most {
		e := s.order.Back()
		it := e.Value.(*item[V])
		if it.turn == s.turn {
			return false
		}
		s.order.Remove(e)
		delete(s.kept, it.key)
		s.size -= it.size
	}
	return true
}
