package wire_test

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// manyBuilds is a shop's whole life, fewBuilds a tenth of it.
const (
	manyBuilds = 2000
	fewBuilds  = manyBuilds / 10
)

// lifetime fills a store with finished builds of the demo's lots, each with its frozen prediction, bills and hours.
func lifetime(b *testing.B, builds int) (path string) {
	b.Helper()
	path = filepath.Join(b.TempDir(), "life.walk")
	ctx := context.Background()
	file, err := store.Open(ctx, path)
	if err != nil {
		b.Fatal(err)
	}
	defer file.Close()
	d, err := wire.NewDesk(file)
	if err != nil {
		b.Fatal(err)
	}
	c := d.Demo()[0]
	v, err := d.Value(ctx, c)
	if err != nil {
		b.Fatal(err)
	}
	figures, err := valuation.Foretell(c, d.Know, nil)
	if err != nil {
		b.Fatal(err)
	}
	for i := range builds {
		price := figures.Money.Resale
		came := build.Build{Outcome: build.Sold, Hammer: &figures.At, Charges: []build.Charge{{Name: "Fees", Amount: figures.Money.Fees}},
			Dates: build.Dates{Bought: "2026-01-05", Sold: lot.Date(fmt.Sprintf("2026-%02d-%02d", 4+i%4,
				1+i%28))}, Sale: build.Sale{Price: &price}}
		for k, l := range figures.Items {
			if l.Risk == "" && k < 40 {
				came.Receipts = append(came.Receipts, build.Receipt{Date: "2026-02-01", Kind: "part", Line: l.Line, What: l.Part,
					Source: "used", Amount: 12345})
				came.Hours = append(came.Hours, build.Work{Date: "2026-02-02", Trade: "body", Line: l.Line, Hours: 1.5})
			}
		}
		added, err := file.Do(ctx, book.Step{Subject: book.Buys, New: []book.New{{State: lot.Won, Case: c, Build: came}}})
		if err != nil {
			b.Fatal(err)
		}
		same := book.Lot{ID: added.Lots[0]}
		freeze := book.Change{Before: same, After: same, Freeze: &book.Prediction{Case: c, Answer: v.Answer, Figures: figures}}
		if _, err := file.Do(ctx, book.Step{Subject: book.Buys, Lots: []book.Change{freeze}}); err != nil {
			b.Fatal(err)
		}
	}
	return path
}

// BenchmarkTwoThousandBuilds opens a store with 2,000 finished builds, lists them and works the track record out. It has two baselines.
// One is the same with a tenth of them: the ratio says whether a long life costs more than its length. The other is reading what was
// listed from its own JSON, one build after another: the ratio says what the file and its sums add, and how far the cores share it.
func BenchmarkTwoThousandBuilds(b *testing.B) {
	many, few := lifetime(b, manyBuilds), lifetime(b, fewBuilds)
	var listed, learned, baseline, alone time.Duration
	for b.Loop() {
		x, y, list := openAndTune(b, many, manyBuilds)
		listed, learned = listed+x, learned+y
		x, y, _ = openAndTune(b, few, fewBuilds)
		baseline += x + y
		b.StopTimer()
		alone += readAlone(b, list)
		b.StartTimer()
	}
	n := time.Duration(b.N)
	b.ReportMetric((listed / n).Seconds(), "s-open-and-list")
	b.ReportMetric((learned / n).Seconds(), "s-tune")
	b.ReportMetric(float64(listed+learned)/float64(baseline), "2000/200-builds")
	b.ReportMetric(float64(listed)/float64(alone), "open-and-list/reading-their-JSON")
}

// readAlone returns how long the JSON of builds takes to read, one after another.
func readAlone(b *testing.B, list []book.Bought) (took time.Duration) {
	b.Helper()
	for _, l := range list {
		data, err := json.Marshal(l)
		if err != nil {
			b.Fatal(err)
		}
		start := time.Now()
		if err := json.Unmarshal(data, new(book.Bought)); err != nil {
			b.Fatal(err)
		}
		took += time.Since(start)
	}
	return took
}

// openAndTune returns how long a store takes to open and list its builds, and to work its track record out.
func openAndTune(b *testing.B, path string, builds int) (listed, learned time.Duration, list []book.Bought) {
	b.Helper()
	ctx, start := context.Background(), time.Now()
	file, err := store.Open(ctx, path)
	if err != nil {
		b.Fatal(err)
	}
	defer file.Close()
	d, err := wire.NewDesk(file)
	if err != nil {
		b.Fatal(err)
	}
	s := d.Do(ctx, d.Load(ctx), desk.Go(desk.Builds))
	listed, start = time.Since(start), time.Now()
	r, err := d.Learn(ctx, s.Bought)
	if err != nil || r.Judged.Buys != builds || len(r.Proposals) == 0 {
		b.Fatal(r.Judged.Buys, len(r.Proposals), err)
	}
	return listed, time.Since(start), s.Bought
}
