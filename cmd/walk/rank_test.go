package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"runtime"
	"strings"
	"testing"
	"time"
)

const rankedList = `Lot,Sale date,Year,Make,Model,Odometer (mi),Title,Loss,Damage,Keys,Runs,Value before,Repair estimate,Currency
14,2026-11-28,2019,Ostrane,Pell,61200,salvage,collision,front left,yes,starts,16500,3000,USD
16,2026-11-28,2020,Ostrane,Pell,41200,salvage,,,,,19000,,USD
17,2026-11-28,2020,Ostrane,Pell,many,salvage,,,,,19000,,USD
18,2026-11-28,2021,Ostrane,Pell,31200,salvage,hail,,yes,drives,21000,,USD
19,2026-11-28,2021,Ostrane,Pell,31200,salvage,hail,,yes,drives,,,USD
`

// listFile writes a list and returns its path.
func listFile(t testing.TB, text string) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "list.csv")
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func rankOf(t testing.TB, path string) ranking {
	t.Helper()
	var out, errs bytes.Buffer
	if code := run([]string{"rank", path, "--json"}, &out, &errs); code != done {
		t.Fatalf("exit %d: %s", code, errs.String())
	}
	var doc ranking
	if err := json.Unmarshal(out.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	return doc
}

// Lots that nobody has looked at are ranked by what looking brings; each says that it is a first guess, what is not known is null, and a
// lot without a price says what it needs.
func TestRankPutsWhatToLookAtFirst(t *testing.T) {
	doc := rankOf(t, listFile(t, rankedList))
	if len(doc.Lots) != 4 || len(doc.Refused) != 1 || doc.Format != "walkline-rank/1" {
		t.Fatalf("%d lots, refused %v", len(doc.Lots), doc.Refused)
	}
	last := doc.Lots[0]
	for _, l := range doc.Lots {
		if l.Number == "19" {
			if l.Trouble == "" && len(l.Needs) == 0 || l.WalkAway != nil || l.WinChance != nil && *l.WinChance > 0 {
				t.Errorf("a lot without a price: %+v", l)
			}
			continue
		}
		if !l.FirstGuess || l.LookWorth == nil || *l.LookWorth < 0 || *l.LookWorth > *last.LookWorth || l.WinBasis != "results" {
			t.Errorf("%+v", l)
		}
		last = l
	}
	var out, errs bytes.Buffer
	if code := run([]string{"rank", listFile(t, rankedList)}, &out, &errs); code != done || !strings.Contains(out.String(), "first guess") {
		t.Errorf("%d, %s%s", code, out.String(), errs.String())
	}
	if code := run([]string{"rank", "none.csv", "--book", "none.db"}, &out, &errs); code != failed {
		t.Errorf("a list that is not there: %d", code)
	}
}

// The answers are the same whatever the number of workers. Each row stands where it stood.
func TestRankIsTheSameOnEveryNumberOfWorkers(t *testing.T) {
	path := listFile(t, thousand(50))
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	alone := rankOf(t, path)
	if len(alone.Lots) != 50 {
		t.Fatal(len(alone.Lots))
	}
	for _, workers := range []int{2, 5} {
		runtime.GOMAXPROCS(workers)
		if got := rankOf(t, path); !reflect.DeepEqual(alone, got) {
			t.Errorf("%d workers answer otherwise than one", workers)
		}
	}
}

// thousand is a list of a thousand invented lots of all kinds.
func thousand(n int) string {
	var b strings.Builder
	b.WriteString("Lot,Sale date,Year,Make,Model,Odometer (mi),Title,Loss,Damage,Keys,Runs,Value before,Currency\n")
	for i := range n {
		fmt.Fprintf(&b, "%d,2026-11-28,%d,Ostrane,Pell,%d,salvage,%s,%s,%s,%s,%d,USD\n", i+1, 2008+i%15, 20000+137*i,
			[]string{"collision", "collision", "", "flood", "theft", "hail", "collision"}[i%7], []string{"front", "rear", "", "left"}[i%4],
			[]string{"yes", "", "no"}[i%3], []string{"drives", "starts", "", "dead"}[i%4], 5000+13*i)
	}
	return b.String()
}

// BenchmarkRank ranks a thousand lots; the aim is ten seconds on two cores. Beside it stands a plain read of the same list.
func BenchmarkRank(b *testing.B) {
	const lots = 1000
	path := listFile(b, thousand(lots))
	start := time.Now()
	var out, errs bytes.Buffer
	if code := run([]string{"lots", "rows", path, "--json"}, &out, &errs); code != done {
		b.Fatal(errs.String())
	}
	read := time.Since(start)
	for b.Loop() {
		if doc := rankOf(b, path); len(doc.Lots) != lots {
			b.Fatal(len(doc.Lots))
		}
	}
	took := b.Elapsed().Seconds() / float64(b.N)
	b.ReportMetric(took, "s/thousand")
	b.ReportMetric(took/read.Seconds(), "times-reading-it")
}
