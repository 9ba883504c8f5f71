package main

import (
	"context"
	"errors"
	"slices"
	"sync"

	"walkline/ui/desk"
	"walkline/valuation/lot"
)

var _ desk.Album = (*book)(nil)

// files are kept in memory by hash and kind; they are read and written on any goroutine.
type files struct {
	mu   sync.Mutex
	kept map[string][]byte
}

// Photos returns the photographs of a lot.
func (b *book) Photos(_ context.Context, id int64) ([]lot.Photo, error) {
	p, err := b.find(id, false)
	if err != nil {
		return nil, err
	}
	return slices.Clone(p.photos), nil
}

// SavePhotos keeps the photographs of a lot as the next step.
func (b *book) SavePhotos(_ context.Context, id int64, label string, photos []lot.Photo) error {
	return b.mark(id, func(p *page) {
		if !slices.Equal(p.photos, photos) {
			p.past, p.future = append(p.past, p.step(label)), nil
			p.photos = slices.Clone(photos)
		}
	})
}

// KeepFile keeps a file by its hash.
func (b *book) KeepFile(hash, kind string, data []byte) error {
	b.files.mu.Lock()
	defer b.files.mu.Unlock()
	b.files.kept[hash+kind] = data
	return nil
}

// KeptFile returns a file by its hash.
func (b *book) KeptFile(hash, kind string) ([]byte, error) {
	b.files.mu.Lock()
	defer b.files.mu.Unlock()
	data, there := b.files.kept[hash+kind]
	if !there {
		return nil, errors.New("no such file")
	}
	return data, nil
}
