package wire

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"walkline/store"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/view"
)

// counted is a book that counts how often, and for how long, all lots are read.
type counted struct {
	*store.Store
	times, nanos atomic.Int64
}

func (c *counted) Entries(ctx context.Context) ([]book.Entry, error) {
	start := time.Now()
	defer func() { c.times.Add(1); c.nanos.Add(int64(time.Since(start))) }()
	return c.Store.Entries(ctx)
}

// BenchmarkGuess makes the first guesses of a list of 1,000 invented lots as the window does. What it says beside the time is how often the
// Board was shown again meanwhile, and which share of the work reading and listing it for that was.
func BenchmarkGuess(b *testing.B) {
	for b.Loop() {
		b.StopTimer()
		kept, err := store.Open(b.Context(), filepath.Join(b.TempDir(), "shop.db"))
		if err != nil {
			b.Fatal(err)
		}
		d, err := NewDesk(kept)
		if err != nil {
			b.Fatal(err)
		}
		c := &counted{Store: kept}
		d.Book = c
		s, waits := thousand(b, d)
		c.times.Store(0)
		c.nanos.Store(0)
		var listing time.Duration
		begun := time.Now()
		b.StartTimer()
		err = d.Guess(b.Context(), s.Factors, waits, func(g desk.Guesses) {
			start := time.Now()
			list := view.List(g.Entries)
			list.Rows(view.Filter{})
			listing += time.Since(start)
		})
		if err != nil {
			b.Fatal(err)
		}
		b.StopTimer()
		total := float64(time.Since(begun))
		b.ReportMetric(float64(c.times.Load()), "readings")
		b.ReportMetric(float64(c.nanos.Load())/total, "x-of-it-reading")
		b.ReportMetric(float64(listing)/total, "x-of-it-listing")
		if err := kept.Close(); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
	}
}

// thousand has the lots of a run list on the Board, and returns the state and those that wait for a guess.
func thousand(b *testing.B, d *desk.Desk) (desk.State, *desk.Waiting) {
	b.Helper()
	var list strings.Builder
	list.WriteString("Lot,Sale date,Year,Make,Model,Odometer (mi),Title,Loss,Damage,Value before,Currency\n")
	for i := range 1000 {
		fmt.Fprintf(&list, "%d,2027-01-28,%d,Ostrane,Pell,%d,salvage,%s,%s,%d,USD\n", i+1, 2008+i%15, 20000+137*i,
			[]string{"collision", "", "flood", "theft", "hail"}[i%5], []string{"front", "rear", "", "left"}[i%4], 5000+13*i)
	}
	s := d.Load(b.Context())
	sheet, err := d.OpenList(b.Context(), []byte(list.String()), desk.Opening{})
	if err != nil {
		b.Fatal(err)
	}
	got, err := d.Enlist(b.Context(), s, sheet)
	s = d.ListArrived(b.Context(), s, got, err)
	var ids []int64
	for _, e := range s.Entries {
		if desk.Unrated(e) {
			ids = append(ids, e.ID)
		}
	}
	if len(ids) != 1000 {
		b.Fatalf("%d lots wait: %s", len(ids), s.Trouble)
	}
	return s, desk.NewWaiting(ids)
}
