package valuation_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"testing"
	"time"

	"walkline/valuation"
	"walkline/valuation/invoice"
	"walkline/valuation/money"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// batches is by how many times its scenarios the vectorised model is played for the agreement.
const batches = 12

// vectors is what testdata/bench/model.py says.
type vectors struct {
	Seconds   float64            `json:"seconds"`
	Figures   map[string]float64 `json:"figures"`
	WalkAway  *float64           `json:"walk_away"`
	Scenarios int                `json:"scenarios"`
	Plain     [][4]float64       `json:"plain"` // by seed: profit's mean, tenth percentile and worst tenth at the bid, walk-away bid
}

// python is the interpreter that has NumPy and SciPy, empty where there is none: the system's own, which the packaged
// libraries belong to, before any other.
func python() string {
	for _, name := range []string{"/usr/bin/python3", "python3"} {
		if exec.Command(name, "-c", "import scipy.special, scipy.integrate").Run() == nil {
			return name
		}
	}
	return ""
}

// BenchmarkAgainstVectors values the large case, whole and after an edit, beside the same model vectorised in NumPy and SciPy,
// in one run: it prints how many times faster the engine is, and fails where the two do not agree.
func BenchmarkAgainstVectors(b *testing.B) {
	c, k := large(), shipped(b)
	a, err := valuation.Value(c, k)
	if err != nil || a.WalkAway == nil {
		b.Fatal(err, a.Reasons)
	}
	whole, edit := timed(b, c, k)
	fmt.Printf("\nOne valuation of %d lines, %d risks, %d comparables, 7 rules and %d scenarios:\n", benchLines, benchRisks, benchRows,
		benchScenarios)
	fmt.Printf("  engine, whole %7.1f ms, fit of the comparables included\n", 1000*whole)
	fmt.Printf("  engine, edit  %7.1f ms, one figure of one line changed\n", 1000*edit)
	logMemory(b, c, k)
	spreads := acrossSeeds(b, c, k, a.Acquisition.Bid)
	for b.Loop() { // the figures above are the result; a loop of nothing keeps the report short
	}
	name := python()
	if name == "" {
		fmt.Println("  no Python with NumPy and SciPy here (Debian: python3-numpy python3-scipy, or make setup-bench): nothing to compare with")
		printSpreads(c, a, spreads, nil)
		return
	}
	v := playVectors(b, name, dump(c, k, a))
	wholeAfter, editAfter := timed(b, c, k) // before and behind the other model: a busy machine slows none alone
	whole, edit = min(whole, wholeAfter), min(edit, editAfter)
	fmt.Printf("  engine again  %7.1f ms whole, %.1f ms an edit; the better of the two counts\n", 1000*wholeAfter, 1000*editAfter)
	fmt.Printf("  NumPy, whole  %7.1f ms, the scenarios and the scan of legal bids alone\n", 1000*v.Seconds)
	fmt.Printf("  ratios: whole %.1f (aim 4), edit %.1f (aim 20; the vectorised model plays everything again)\n", v.Seconds/whole,
		v.Seconds/edit)
	b.ReportMetric(v.Seconds/whole, "x_whole")
	b.ReportMetric(v.Seconds/edit, "x_edit")
	agree(b, c, a, v)
	printSpreads(c, a, spreads, v.Plain)
}

// timed returns the seconds that a whole valuation and one edit take: the best of several, as for the vectorised model.
func timed(b *testing.B, c valuation.Case, k valuation.Knowledge) (whole, edit float64) {
	best := func(n int, f func()) float64 {
		least := math.Inf(1)
		for range n {
			start := time.Now()
			f()
			least = min(least, time.Since(start).Seconds())
		}
		return least
	}
	whole = best(5, func() {
		if _, err := valuation.Value(c, k); err != nil {
			b.Fatal(err)
		}
	})
	c, m := c.Clone(), valuation.NewMemory()
	edit = best(20, func() {
		c.Repair.Lines[7].Materials.High++
		if _, err := m.Value(c, k); err != nil {
			b.Fatal(err)
		}
	})
	return whole, edit
}

// logMemory prints what one valuation takes: all that it allocates, and what a memory keeps of it afterwards.
func logMemory(b *testing.B, c valuation.Case, k valuation.Knowledge) {
	var before, after, kept runtime.MemStats
	m := valuation.NewMemory()
	runtime.GC()
	runtime.ReadMemStats(&before)
	if _, err := m.Value(c, k); err != nil {
		b.Fatal(err)
	}
	runtime.ReadMemStats(&after)
	runtime.GC()
	runtime.ReadMemStats(&kept)
	const mb = 1 << 20
	fmt.Printf("  memory: %.1f MB allocated in all, %.1f MB kept for the next edit (aim: under 64 MB)\n",
		float64(after.TotalAlloc-before.TotalAlloc)/mb, (float64(kept.HeapAlloc)-float64(before.HeapAlloc))/mb)
	b.ReportMetric(float64(after.TotalAlloc-before.TotalAlloc)/mb, "MB")
	runtime.KeepAlive(m)
}

func playVectors(b *testing.B, python string, lot map[string]any) vectors {
	text, err := json.Marshal(lot)
	if err != nil {
		b.Fatal(err)
	}
	name := filepath.Join(b.TempDir(), "lot.json")
	if err := os.WriteFile(name, text, 0o600); err != nil {
		b.Fatal(err)
	}
	run := exec.Command(python, filepath.Join("..", "testdata", "bench", "model.py"), name, strconv.Itoa(batches), strconv.Itoa(seeds))
	run.Stderr = os.Stderr
	out, err := run.Output()
	if err != nil {
		b.Fatal(err)
	}
	var v vectors
	if err := json.Unmarshal(out, &v); err != nil {
		b.Fatal(err)
	}
	return v
}

// playedBoth is a figure of the engine's beside the model's of the same name.
type playedBoth struct {
	name        string
	engine, off float64 // what may lie between
}

// figuresOf lists the engine's figures that the vectorised model plays too, of so many scenarios in all.
func figuresOf(a valuation.Answer, scenarios int) []playedBoth {
	allowance := 0.0
	for _, bar := range a.Waterfall {
		if bar.Name == "Winner's allowance" {
			allowance = -float64(bar.Amount) / 100
		}
	}
	spread := (a.Profit.P90 - a.Profit.P10) / 2.56
	far := spread / math.Sqrt(float64(scenarios))
	return []playedBoth{
		{"repair", a.Repair.Mean, .0005 * a.Repair.Mean}, {"hidden", a.Hidden.Mean, .01 * a.Hidden.Mean},
		{"hours", a.Hours.Mean, .0005 * a.Hours.Mean},
		{"your labor", a.Labour.Mean, .0005 * a.Labour.Mean}, {"days", a.Days.Mean, .3}, {"days, 90th", a.Days.P90, 1},
		{"profit", a.Profit.Mean, 5 * far}, {"profit, 10th", a.Profit.P10, 9 * far}, {"profit, worst tenth", a.Profit.WorstTenth, 9 * far},
		{"loss chance", a.Profit.LossChance, .006}, {"allowance", allowance, .03 * allowance},
		{"stops", a.StopChance, .01},
	}
}

// The vectorised model says every figure that the engine is held beside, under the same name: this needs no NumPy.
func TestTheVectorisedModelNamesTheSameFigures(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "testdata", "bench", "model.py"))
	if err != nil {
		t.Fatal(err)
	}
	_, figures, _ := strings.Cut(string(text), "def figures(")
	figures, _, _ = strings.Cut(figures, "\ndef ")
	for _, f := range figuresOf(valuation.Answer{}, 1) {
		if !strings.Contains(figures, strconv.Quote(f.name)+": ") {
			t.Errorf("model.py says no %q", f.name)
		}
	}
}

// agree prints the engine's figures beside the model's and fails where they differ by more than chance and tables explain.
func agree(b *testing.B, c valuation.Case, a valuation.Answer, v vectors) {
	for _, f := range figuresOf(a, v.Scenarios) {
		theirs, known := v.Figures[f.name]
		fmt.Printf("  %-20s engine %11.4f  NumPy %11.4f  apart %8.4f of %8.4f\n", f.name, f.engine, theirs, math.Abs(f.engine-theirs), f.off)
		if !known || !(math.Abs(f.engine-theirs) <= f.off) {
			b.Errorf("%s: the engine and the vectorised model do not agree", f.name)
		}
	}
	at := float64(*a.WalkAway) / 100
	step := float64(invoice.Next(c.Buying.BidSteps, *a.WalkAway)-*a.WalkAway) / 100
	if v.WalkAway == nil {
		b.Fatal("the vectorised model would not bid")
	}
	fmt.Printf("  %-20s engine %11.2f  NumPy %11.2f  one step is %g\n", "walk-away bid", at, *v.WalkAway, step)
	if math.Abs(at-*v.WalkAway) > step {
		b.Error("the walk-away bids lie more than one step apart")
	}
}

// dump is the case as the vectorised model reads it: every default resolved, legal bids with their invoices from the scan's own
// arithmetic, and the resale price by its quantiles.
func dump(c valuation.Case, k valuation.Knowledge, a valuation.Answer) map[string]any {
	cur, _ := money.Lookup(c.Currency)
	loading := func(l *float64) float64 { return repair.Or(l, c.Hidden.SharedLoading) }
	var lines, risks []map[string]any
	for _, l := range c.Repair.Lines {
		lines = append(lines, map[string]any{"chance": repair.Or(l.Chance, 1), "loading": loading(l.Loading), "hours": l.Hours,
			"materials": l.Materials, "outside": l.Outside, "parts": dumpParts(l.Parts)})
	}
	for _, r := range c.Hidden.Risks {
		risks = append(risks, map[string]any{"chance": r.Chance.Mean(), "loading": loading(r.Loading), "cost": r.Cost, "hours": r.Hours,
			"days": r.Days})
	}
	price := dumpPrice(c, k, cur)
	var bids [][2]float64
	for b := c.Buying.BidSteps[0].Step; b < 3_000_000; b = scanNext(c.Buying.BidSteps, b) {
		total, _ := scanInvoice(c.Buying.Terms, cents(b)).Float64()
		bids = append(bids, [2]float64{float64(b) / 100, total})
	}
	r, major := c.Rules, cur.Major
	return map[string]any{"scenarios": c.Run.Scenarios, "lines": lines, "risks": risks, "rates": c.Labour.Rates, "freight": c.Buying.Freight,
		"storage_days": c.Buying.Storage.Days, "storage_free": c.Buying.Storage.FreeDays, "storage_per_day": c.Buying.Storage.PerDay,
		"hours_per_week": c.Time.HoursPerWeek, "holding_per_day": c.Time.HoldingPerDay, "inspection_queue": c.Time.InspectionQueueDays,
		"days_to_sell": c.Time.DaysToSell, "capital_rate": c.Time.CapitalRate, "sell_percent": c.Selling.Percent, "sell_flat": c.Selling.Flat,
		"rivals": *c.Market.Rivals, "own_share": c.Market.OwnShare, "resale_chances": price.chances, "resale_values": price.values,
		"resale_level": price.level, "resale_mean": price.mean, "resale_sd": price.sd, "ageing": price.ageing,
		"way": map[string]any{"money": c.WaysOut.AsItStands.Money, "days": c.WaysOut.AsItStands.Days}, "strip": c.WaysOut.Strip,
		"bids": bids, "total": major(a.Acquisition.Total),
		"rules": map[string]any{"min_profit": major(*r.MinProfit), "min_margin": *r.MinMargin, "max_loss_chance": *r.MaxLossChance,
			"max_worst_tenth_loss": major(*r.MaxWorstTenthLoss), "min_per_hour": major(*r.MinPerHour), "max_cash": major(*r.MaxCash),
			"max_days": *r.MaxDays}}
}

func dumpParts(parts []repair.Part) []map[string]any {
	var out []map[string]any
	for _, p := range parts {
		var options []map[string]any
		for _, o := range p.Options {
			options = append(options, map[string]any{"price": o.Price, "freight": o.Freight, "lead_days": o.LeadDays,
				"chance": repair.Or(o.Chance, 1), "extra_hours": o.ExtraHours})
		}
		out = append(out, map[string]any{"options": options, "fallback": p.Fallback})
	}
	return out
}

// dumped is the resale price by its quantiles at every two-thousandth, among which all of its knots lie, and how it ages.
type dumped struct {
	chances, values []float64
	level, mean, sd float64
	ageing          map[string]float64
}

func dumpPrice(c valuation.Case, k valuation.Knowledge, cur money.Currency) dumped {
	miles := float64(*c.Lot.Odometer)
	m := resale.Fit(c.Resale.Rows, resale.Subject{Brand: "rebuilt", ModelYear: c.Lot.ModelYear, Mileage: &miles, Unit: c.Lot.OdometerUnit},
		resale.Beliefs{BrandDiscount: c.Resale.BrandDiscount, AskedToSold: c.Resale.AskedToSold, Today: c.ValuedOn, Currency: cur}, k.Prior)
	table := m.Distribution()
	ageing, _ := m.Ageing()
	d := dumped{level: m.LevelSD(), mean: table.Mean(), sd: table.SD(), ageing: map[string]float64{"mean": ageing.Mean, "sd": ageing.SD}}
	for i := range 2001 {
		u := float64(i) / 2000
		d.chances, d.values = append(d.chances, u), append(d.values, table.Quantile(u))
	}
	return d
}
