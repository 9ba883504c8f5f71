package csvfile

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/rand/v2"
	"runtime"
	"testing"
	"time"

	"walkline/store/grid"
	"walkline/store/table"
)

// manyRows is a table of comparables as people write them.
func manyRows(n int) []byte {
	var out bytes.Buffer
	out.WriteString("Comparables of the year\n\nAsking price,Seen,Year,Make,Model,Trim,Mileage,Title,Miles away,Remarks\n")
	r := rand.New(rand.NewPCG(1, 2))
	for i := range n {
		fmt.Fprintf(&out, "\"$%d,%03d\",%02d/%02d/2026,%d,Ostrane,Pell,%s,\"%d,%03d mi\",%s,%d,row %d\n", 2+r.IntN(30), r.IntN(1000),
			1+r.IntN(28), 1+r.IntN(12), 2008+r.IntN(17),
			[]string{"S", "LX", "Tour"}[r.IntN(3)], 10+r.IntN(180), r.IntN(1000), []string{"clean", "Clean title", "rebuilt",
				"R-title"}[r.IntN(4)], r.IntN(300), i)
	}
	return out.Bytes()
}

// alone reads every row with encoding/csv and does nothing with them.
func alone(data []byte) time.Duration {
	start := time.Now()
	c := csv.NewReader(bytes.NewReader(data))
	c.FieldsPerRecord = -1
	for {
		if _, err := c.Read(); err == io.EOF {
			return time.Since(start)
		}
	}
}

// BenchmarkRead reads 100,000 rows, checks and all. Its baseline is encoding/csv alone over the same bytes in the same run: the best of
// five turns of each, taken in turn, so that a busy machine disturbs both alike.
func BenchmarkRead(b *testing.B) {
	data := manyRows(100_000)
	var before, after runtime.MemStats
	best, baseline := time.Hour, time.Hour
	for b.Loop() {
		for range 5 {
			baseline = min(baseline, alone(data))
			runtime.GC()
			runtime.ReadMemStats(&before)
			start := time.Now()
			g, err := grid.Read(data, grid.Options{})
			if err != nil {
				b.Fatal(err)
			}
			res, err := table.Read(Comparables, g, table.Stated{Currency: "USD"})
			if err != nil || len(res.Rows) != 100_000 || len(res.Refused)+len(res.Open) > 0 {
				b.Fatal(len(res.Rows), res.Refused[:min(3, len(res.Refused))], res.Open, err)
			}
			best = min(best, time.Since(start))
			runtime.ReadMemStats(&after)
			runtime.KeepAlive(res)
		}
	}
	b.ReportMetric(best.Seconds()/baseline.Seconds(), "times-encoding/csv")
	b.ReportMetric(best.Seconds(), "s-100000-rows")
	b.ReportMetric(float64(after.HeapAlloc-before.HeapAlloc)/(1<<20), "MB-grown")
	b.ReportMetric(float64(after.Sys)/(1<<20), "MB-of-the-system")
}
