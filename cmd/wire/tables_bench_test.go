package wire_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"walkline/cmd/wire"
	"walkline/ui/desk"
)

// BenchmarkOpenPast opens a table of 5,000 past buys and shows it; its baseline is a tenth of the rows, so that the ratio says whether the
// cost is that of the rows alone.
func BenchmarkOpenPast(b *testing.B) {
	table := func(n int) []byte {
		var out strings.Builder
		out.WriteString("id,make,model,bought,sold,price_paid,sold_for,hours_body\n")
		for i := range n {
			fmt.Fprintf(&out, "%d,Kettrick,Dunlin,2025-03-%02d,2025-06-10,\"%d,200\",11900,22.5\n", i, 1+i%28, 1+i%9)
		}
		return []byte(out.String())
	}
	open := func(data []byte) {
		sheet, err := wire.PastTables{}.OpenPast(data, desk.Opening{Currency: "USD"})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := (wire.PastTables{}).Preview(sheet); err != nil {
			b.Fatal(err)
		}
	}
	many, few := table(5000), table(500)
	var long, short float64
	for b.Loop() {
		long += seconds(func() { open(many) })
		short += seconds(func() { open(few) })
	}
	b.ReportMetric(long/float64(b.N), "s-5000-buys")
	b.ReportMetric(long/short, "5000/500-buys")
}

func seconds(do func()) float64 {
	start := time.Now()
	do()
	return time.Since(start).Seconds()
}
