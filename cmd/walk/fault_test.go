package main

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf16"
)

// altered returns the front demo case with texts replaced, old and new in turn.
func altered(t *testing.T, pairs ...string) []byte {
	t.Helper()
	data, err := os.ReadFile(demo("front.json"))
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(string(data), pairs[i]) {
			t.Fatalf("the demo case has no %q", pairs[i])
		}
	}
	return []byte(strings.NewReplacer(pairs...).Replace(string(data)))
}

func TestEveryFaultOfACaseAtOnce(t *testing.T) {
	path := kept(t, "case.json", altered(t,
		`"valued_on": "2026-11-20"`, `"valued_on": "2026-02-30"`,
		`"odometer_status"`, `"odometer_statis"`,
		`{"name": "Yard fee", "amount": 60}`, `{"name": "Yard fee", "amount": "60.125"}`,
		`"use_catalogue": true, "lines"`, `"use_catalogue": "yes", "lines"`,
		`"rivals": 4`, `"rivals": "four"`))
	code, out, errs := ran("value", path)
	keys := []string{"valued_on: ", "lot.odometer_statis: ", "repair.use_catalogue: ", "buying.fixed[0].amount: ", "market.rivals: "}
	lines := strings.Split(strings.TrimSpace(errs), "\n")
	if code != faulty || out != "" || len(lines) != len(keys) {
		t.Fatalf("exit %d, %d lines, want %d:\n%s", code, len(lines), len(keys), errs)
	}
	for i, key := range keys {
		if !strings.HasPrefix(lines[i], key) {
			t.Errorf("line %d is %q, want it led by %s", i, lines[i], key)
		}
	}
	for _, says := range []string{`"2026-02-30"`, "YYYY-MM-DD", "the nearest is odometer_status", "60.125", "true or false"} {
		if !strings.Contains(errs, says) {
			t.Errorf("no %q in:\n%s", says, errs)
		}
	}
}

func TestEveryFaultOfValuesAtOnce(t *testing.T) {
	path := kept(t, "case.json", altered(t,
		`"low": 150, "likely": 180, "high": 240`, `"low": 300, "likely": 180, "high": 240`,
		`"name": "Yard fee", "amount": 60`, `"name": "Yard fee", "amount": -60`,
		`"hours_per_week": 30`, `"hours_per_week": 0`,
		`"condition": "drives"`, `"condition": "flies"`))
	code, out, errs := ran("value", path)
	if code != faulty || out != "" || strings.Count(errs, "\n") != 4 {
		t.Errorf("exit %d, wrote %q and:\n%s", code, out, errs)
	}
	for _, key := range []string{"buying.freight", "buying.fixed[0].amount", "time.hours_per_week", "lot.condition"} {
		if !strings.Contains("\n"+errs, "\n"+key) {
			t.Errorf("no line is led by %s:\n%s", key, errs)
		}
	}
}

func TestFilesThatAreNoCase(t *testing.T) {
	for name, c := range map[string]struct{ text, says string }{
		"empty":        {"", "file: empty"},
		"broken":       {"{\n  \"format\": \"walkline-case/1\",,\n}", "file: not JSON at line 2"},
		"list":         {"[]", "file: a list: want one JSON object"},
		"next version": {`{"format": "walkline-case/2"}`, `format: "walkline-case/2": want walkline-case/1`},
		"no currency":  {`{"format": "walkline-case/1"}`, "currency: nothing: want an ISO 4217 code"},
		"not text":     {"\xff\xfe{\x00}\x00", "file: not UTF-8 text"},
		"key not known": {`{"format": "walkline-case/1", "currency": "USD", "resalle": {}}`,
			"resalle: an object: want no such key; the nearest is resale"},
	} {
		code, out, errs := ran("value", kept(t, "case.json", []byte(c.text)))
		if code != faulty || out != "" || !strings.HasPrefix(errs, c.says) {
			t.Errorf("%s: exit %d, %q, want %q", name, code, errs, c.says)
		}
	}
}

// A lot that lacks several things names all of them at once: what can't be read, what has no value, and what a bid needs besides.
func TestAllThatIsMissingIsNamedAtOnce(t *testing.T) {
	for text, keys := range map[string][]string{
		`{"format": "walkline-case/1", "lot": {"make": "Ostrane"}, "buying": {"fixed": [{"name": "Gate", "amount": "x"}]}}`: {"currency",
			"valued_on", "resale", "buying.fixed[0].amount", "rules", "lot.title.document"},
		`{"format": "walkline-case/1", "currency": "EUR", "valued_on": "2026-11-20", "repair": {"use_catalogue": true}}`: {"lot", "resale",
			"buying.bid_steps", "rules", "lot.title.document", "market.exchange_rates.USD"},
	} {
		code, out, errs := ran("value", kept(t, "case.json", []byte(text)))
		if code != faulty || out != "" {
			t.Errorf("exit %d, wrote %q", code, out)
		}
		for _, key := range keys {
			if n := strings.Count("\n"+errs, "\n"+key+": "); n != 1 {
				t.Errorf("%d lines are led by %s:\n%s", n, key, errs)
			}
		}
	}
	if _, _, errs := ran("value", kept(t, "case.json", []byte(`{"format": "walkline-case/2"}`))); strings.Count(errs, "\n") != 1 {
		t.Errorf("another format is judged:\n%s", errs)
	}
}

// wide returns text as UTF-16 with the low byte first, without a mark.
func wide(s string) []byte {
	var b []byte
	for _, u := range utf16.Encode([]rune(s)) {
		b = binary.LittleEndian.AppendUint16(b, u)
	}
	return b
}

const goodTable = "price,date,year,mileage,mileage_unit\n9500,2026-10-01,2018,50000,mi\n"

const namesOnly = "names only"

// badTables are comparables that cannot be read, and what is said of each.
var badTables = map[string]struct {
	data string
	says string
}{
	"empty":                {"", "the file is empty"},
	"spaces":               {" \n\n", "the file is empty"},
	namesOnly:              {"price,year\n", "a line of names and no rows"},
	"a quote never closed": {"price,note\n9500,\"runs\n9600,well\n", "a quote is opened and never closed: it starts in the row of line 2"},
	"a quote in a cell":    {"price,note\n9500,6\" lift\n9600,well\n", "line 2: a quote stands where none can"},
	"binary":               {"price,year\n9500\x00,2018\n", "it is no table (a zero byte in line 2)"},
	"a workbook":           {"PK\x03\x04rest", "no workbook that can be read"},
	"8-bit text":           {"price,year,note\n9500,2018,\xb3\xf3d\xbc\n", "encoding"},
	"broken UTF-16":        {"\xff\xfep\x00\x00\xd8x\x00,\x00", "its 16-bit characters are broken"},
	"huge price":           {"price,year\n99999999999999999999999999,2018\n", `line 2: price "99999999999999999999999999":`},
	"huge mileage":         {"price,year,mileage,mileage_unit\n9500,2018,8765432,mi\n", "an odometer reads 0 to 2000000"},
	"negative price":       {"price,year\n-9500,2018\n", `line 2: price "-9500"`},
	"no such day":          {"price,date\n9500,2026-02-30\n9600,2026-03-01\n", `line 2: date "2026-02-30": no day of the calendar`},
	"too many cells":       {"price,year\n9,500,2018\n", "line 2: the row has 3 cells and the headings 2"},
	"no price":             {"year,color\n2018,red\n", "Which column is the price?"},
	"numbers for names":    {"9500,2018\n9600,2019\n", "Which column is the price?"},
	"another currency":     {"price,year,currency\n9500,2018,GBP\n", "GBP"},
	"two currencies":       {"price,year,currency\n9500,2018,USD\n9600,2018,GBP\n", `line 3: currency "GBP"`},
}

func TestBadComparablesEachHaveASentence(t *testing.T) {
	for name, c := range badTables {
		path := kept(t, "table.csv", []byte(c.data))
		code, _, errs := ran("comps", "check", "--currency", "USD", path)
		if code != faulty || !strings.Contains(errs, c.says) {
			t.Errorf("%s: comps check: exit %d, %q, want %q", name, code, errs, c.says)
		}
		if name == namesOnly {
			continue // no fault of a case that has a guess, see below
		}
		code, out, errs := ran("value", beside(t, c.data))
		if code != faulty || out != "" || !strings.Contains(errs, c.says) || !strings.HasPrefix(errs, "resale.comparables: ") {
			t.Errorf("%s: value: exit %d, %q, want %q", name, code, errs, c.says)
		}
	}
}

// A table without a row is a lot without comparables: the guess stands alone, and that is said. Without a guess it is a fault.
func TestATableOfNamesLeavesTheGuess(t *testing.T) {
	empty := badTables[namesOnly]
	code, out, errs := ran("value", beside(t, empty.data))
	if code != done || !strings.Contains(errs, empty.says) || !strings.Contains(out,
		"no comparable: the price is your own guess and nothing else") {
		t.Errorf("exit %d, %q, %q", code, errs, out)
	}
	path := beside(t, empty.data)
	bare := altered(t, `    "guess": {"low": 10400, "likely": 12200, "high": 13900}`, `    "subject": {}`,
		`    "subject": {"trim": "S", "upkeep": "usual", "brand": "rebuilt"},`, "")
	if err := os.WriteFile(path, bare, 0o600); err != nil {
		t.Fatal(err)
	}
	if code, out, errs := ran("value", path); code != faulty || out != "" || !strings.Contains(errs, empty.says) {
		t.Errorf("without a guess: exit %d, %q, %q", code, errs, out)
	}
}

// beside returns the path of the front demo case with another table of comparables beside it.
func beside(t *testing.T, table string) string {
	t.Helper()
	path := kept(t, "case.json", altered(t))
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), "comps_front.csv"), []byte(table), 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestUTF16TableIsRead(t *testing.T) {
	for name, data := range map[string]string{"without a mark": string(wide(goodTable)), "with a mark": "\xff\xfe" + string(wide(goodTable)),
		"UTF-8": goodTable} {
		code, out, errs := ran("comps", "check", "--currency", "USD", "--kind", "sold", kept(t, "t.csv", []byte(data)))
		if code != done || errs != "" || !strings.Contains(out, "1 rows read: 1 usable, 0 refused") {
			t.Errorf("%s: exit %d, %q, %q", name, code, out, errs)
		}
	}
}

func TestMissingComparables(t *testing.T) {
	code, out, errs := ran("value", kept(t, "case.json", altered(t)))
	if code != failed || out != "" || !strings.HasPrefix(errs, "resale.comparables: reading the file beside the case: ") {
		t.Errorf("exit %d, %q, %q", code, out, errs)
	}
}

func TestDoubtsNameTheirOption(t *testing.T) {
	table := "price,seen,miles away,mileage\n\"1,500\",3/4/2026,12,50000\n"
	path := kept(t, "t.csv", []byte(table))
	code, _, errs := ran("comps", "check", path)
	if code != faulty || !strings.Contains(errs, "--currency USD") {
		t.Errorf("exit %d: %s", code, errs)
	}
	stated := []string{"comps", "check", path, "--currency", "USD", "--kind", "asked", "--unit", "mi", "--dates", "day first", "--decimal",
		"."}
	code, out, errs := ran(stated...)
	if code != done || errs != "" || !strings.Contains(out, "decimals after ., dates day first") {
		t.Errorf("all stated: exit %d, %q, %q", code, out, errs)
	}
}

// Bounds and values are written as people write them.
func TestNumbersInFaultsHaveNoExponent(t *testing.T) {
	path := kept(t, "case.json", altered(t,
		`"hours_per_week": 30`, `"hours_per_week": 25000000`, `"scenarios": 16384`, `"scenarios": 5`))
	_, _, errs := ran("value", path)
	if !strings.Contains(errs, "hours_per_week: 25000000: ") || !strings.Contains(errs, "5: want a number from 256 to 1048576") ||
		strings.Contains(errs, "e+") {
		t.Errorf("said %q", errs)
	}
}
