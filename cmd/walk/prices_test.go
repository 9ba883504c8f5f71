package main

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
)

// records returns the rows of a published set by the names of their columns, read without the project's own readers.
func records(t *testing.T, name string) (header []string, rows []map[string]string) {
	t.Helper()
	f, err := os.Open("../../testdata/prices/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	all, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range all[1:] {
		row := map[string]string{}
		for i, cell := range r {
			row[all[0][i]] = cell
		}
		rows = append(rows, row)
	}
	return all[0], rows
}

// line returns a row as CSV.
func line(row map[string]string, header []string) string {
	cells := make([]string, len(header))
	for i, name := range header {
		cells[i] = row[name]
	}
	return strings.Join(cells, ",") + "\n"
}

// laidOut writes the narrow tasks of the hatchback set with 20 comparables each, as predict wants them, and returns the
// folder, the true prices and the errors of the plain median of each task's comparables.
func laidOut(t *testing.T) (dir string, truth map[string]float64, plain []float64) {
	header, rows := records(t, "hatch2004_public.csv")
	byID := map[string]map[string]string{}
	for _, r := range rows {
		byID[r["row_id"]] = r
	}
	_, tasks := records(t, "hatch2004_public_tasks.csv")
	seen := slices.DeleteFunc(slices.Clone(header), func(name string) bool { return name == "price" })
	subjects := "vehicle," + strings.Join(seen, ",") + "\n"
	dir, truth = t.TempDir(), map[string]float64{}
	for _, task := range tasks {
		if task["regime"] != "narrow" {
			continue
		}
		subject := byID[task["subject"]]
		price, _ := strconv.ParseFloat(subject["price"], 64)
		truth[task["task"]] = price
		subjects += task["task"] + "," + line(subject, seen)
		table := strings.Join(header, ",") + ",sold_date,title_status,distance\n"
		var prices []float64
		for _, id := range strings.Fields(task["comps"])[:20] {
			table += strings.TrimSuffix(line(byID[id], header), "\n") + ",2004-07-01,clear,10\n"
			p, _ := strconv.ParseFloat(byID[id]["price"], 64)
			prices = append(prices, p)
		}
		slices.Sort(prices)
		plain = append(plain, math.Abs((prices[9]+prices[10])/2/price-1))
		save(t, filepath.Join(dir, task["task"]+".csv"), table)
	}
	save(t, filepath.Join(dir, "subjects.csv"), subjects)
	return dir, truth, plain
}

func save(t *testing.T, path, text string) {
	t.Helper()
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
}

// The published set (Shmueli et al., package dmba, MIT) is one of those that the prior was fitted to, so the errors flatter;
// the plain median of the comparables is the outside measure.
func TestPredictOnPublishedPrices(t *testing.T) {
	dir, truth, plain := laidOut(t)
	code, out, errs := ran("comps", "prices", "--subjects", filepath.Join(dir, "subjects.csv"), "--dir", dir)
	if code != done || errs != "" {
		t.Fatalf("exit %d: %.500s", code, errs)
	}
	lines, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || len(lines) != len(truth)+1 || strings.Join(lines[0], ",") != "vehicle,point,low,high" {
		t.Fatalf("%d lines for %d tasks, %v: %.200s", len(lines), len(truth), err, out)
	}
	var wrong []float64
	inside := 0
	for _, l := range lines[1:] {
		var x [3]float64
		for i := range x {
			if x[i], err = strconv.ParseFloat(l[i+1], 64); err != nil {
				t.Fatal(err)
			}
		}
		price := truth[l[0]]
		if !(x[1] < x[0] && x[0] < x[2]) || price == 0 {
			t.Errorf("%v", l)
		}
		wrong = append(wrong, math.Abs(x[0]/price-1))
		if x[1] <= price && price <= x[2] {
			inside++
		}
	}
	slices.Sort(wrong)
	slices.Sort(plain)
	middle, reference := wrong[len(wrong)/2], plain[len(plain)/2]
	t.Logf("%d tasks: median error %.1f %%, plain median %.1f %%, inside %.0f %%", len(wrong), 100*middle, 100*reference,
		100*float64(inside)/float64(len(wrong)))
	if middle > 0.9*reference {
		t.Errorf("median error %.3f, the plain median of the comparables has %.3f", middle, reference)
	}
	if share := float64(inside) / float64(len(wrong)); share < 0.72 || share > 0.9 {
		t.Errorf("%.2f of the prices are inside the 80 %% intervals", share)
	}
}

func TestPredictNamesWhatItCannotValue(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "s.csv")
	const head = "vehicle,year,mileage,mileage_unit,currency\n"
	save(t, filepath.Join(dir, "good.csv"),
		"price,year,mileage,mileage_unit,currency\n9500,2018,50000,mi,USD\n9900,2018,5O000,mi,USD\n9700,2018,48000,mi,USD\n")
	save(t, filepath.Join(dir, "pounds.csv"), "price,year,mileage,mileage_unit,currency\n9500,2018,50000,mi,GBP\n")
	save(t, path, head+"good,2018,50000,mi,USD\npounds,2018,50000,mi,USD\n")
	code, out, errs := ran("comps", "prices", "--dir", dir, "--subjects", path)
	if code != faulty || strings.Count(out, "\n") != 2 || !strings.Contains(out, "\ngood,") {
		t.Errorf("exit %d, %q", code, out)
	}
	for _, says := range []string{`vehicle good: note: left out: line 3: mileage "5O000"`,
		"the comparables are in GBP and the subject in USD"} {
		if !strings.Contains(errs, says) {
			t.Errorf("no %q in %q", says, errs)
		}
	}
	save(t, path, head+"absent,2018,50000,mi,USD\n")
	if code, _, errs := ran("comps", "prices", "--dir", dir, "--subjects", path); code != failed || !strings.Contains(errs,
		"vehicle absent: open ") {
		t.Errorf("exit %d, %q", code, errs)
	}
	save(t, path, head+"../good,2018,50000,mi,USD\ngood,2018,x,mi,USD\ngood,,50000,mi,USD\n,2018,1,mi,USD\n")
	code, out, errs = ran("comps", "prices", "--dir", dir, "--subjects", path)
	if code != faulty || out != "" || strings.Count(errs, "\n") != 4 {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
	save(t, path, "job,year\na,2018\n")
	if code, _, errs := ran("comps", "prices", "--dir", dir, "--subjects", path); code != faulty || !strings.Contains(errs,
		"no column is named vehicle") {
		t.Errorf("exit %d, %q", code, errs)
	}
}

const hatchSubject = `{"currency": "EUR", "valued_on": "2004-08-15", "model_year": 2000, "make": "make-01", "model": "model-01", ` +
	`"trim": "trim-002",
	"mileage": 58000, "mileage_unit": "km", "brand": "clear", "asked_to_sold": 1, "more": {"fuel": "petrol"}}`

func TestFitPrintsPointIntervalAndGrid(t *testing.T) {
	subject := kept(t, "subject.json", []byte(hatchSubject))
	code, out, errs := ran("comps", "price", "../../testdata/prices/hatch2004_public.csv", "--subject", subject)
	var f struct {
		Point, Low, High float64
		RowsUsed         int `json:"rows_used"`
		Grid             []map[string]any
	}
	if err := json.Unmarshal([]byte(out), &f); err != nil || code != done {
		t.Fatalf("exit %d, %q, %v", code, errs, err)
	}
	near := nearPrices(t, "2000", 58000, 20000)
	middle := near[len(near)/2]
	if math.Abs(f.Point/middle-1) > 0.12 || !(f.Low < f.Point && f.Point < f.High) || len(f.Grid) != 713 {
		t.Errorf("%.0f in %.0f to %.0f, near vehicles %.0f, %d rows in the grid", f.Point, f.Low, f.High, middle, len(f.Grid))
	}
	for _, row := range f.Grid {
		sum := decimal.Zero
		for _, key := range []string{"price", "asked_to_sold", "date", "mileage", "age", "trim", "brand", "other"} {
			sum = sum.Add(decimal.RequireFromString(row[key].(string)))
		}
		if row["adjusted"] != sum.StringFixed(2) {
			t.Fatalf("row %v: adjustments add up to %s, not %v", row["row"], sum, row["adjusted"])
		}
	}
}

func TestFitNamesEveryFaultOfTheSubject(t *testing.T) {
	for text, says := range map[string][]string{
		`{"currency": "EUR", "model_year": 20, "mileage": -1, "mileage_unit": "leagues", "condition": 9, "asked_to_sold": 0, ` +
			`"brand_discount": 1}`: {
			"model_year: ", "mileage: ", "mileage_unit: ", "condition: ", "asked_to_sold: ", "brand_discount: "},
		`{"currency": "EUR", "model_yaer": 2000, "valued_on": "2004-02-30"}`: {"model_yaer: ", "valued_on: "},
		`{"model_year": 2000}`: {"currency: "},
		`{"currency": "USD", "model_year": 2000}`: {"note: Are the prices",
			`../../testdata/prices/hatch2004_public.csv: the table's prices are in EUR`},
	} {
		code, out, errs := ran("comps", "price", "--subject", kept(t, "s.json", []byte(text)), "../../testdata/prices/hatch2004_public.csv")
		if code != faulty || out != "" || strings.Count(errs, "\n") != len(says) {
			t.Errorf("%s: exit %d, %q", text, code, errs)
		}
		for _, key := range says {
			if !strings.Contains("\n"+errs, "\n"+key) {
				t.Errorf("%s: no line is led by %s: %q", text, key, errs)
			}
		}
	}
}
