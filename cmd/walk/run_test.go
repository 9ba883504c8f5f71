package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// ran runs the program and returns its exit code and what it wrote.
func ran(args ...string) (code int, out, errs string) {
	var o, e bytes.Buffer
	code = run(args, &o, &e)
	return code, o.String(), e.String()
}

func demo(name string) string { return "../../assets/demo/" + name }

// kept writes a file into a folder of the test's own and returns its path.
func kept(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestCallsAndExitCodes(t *testing.T) {
	missing := filepath.Join(t.TempDir(), "nowhere.json")
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{nil, faulty, "walk value case.json"},
		{[]string{"apprise"}, faulty, `no command "apprise"`},
		{[]string{"value"}, faulty, "which case?"},
		{[]string{"value", "--fast", "a.json"}, faulty, "no option --fast; there are --json and --brief"},
		{[]string{"value", "a.json", "b.json"}, faulty, "one case at a time, got a.json and b.json"},
		{[]string{"value", missing}, failed, "reading the case: open " + missing},
		{[]string{"comps"}, faulty, "check, rows, price and prices"},
		{[]string{"comps", "guess"}, faulty, "check, rows, price and prices"},
		{[]string{"comps", "check"}, faulty, "one file"},
		{[]string{"comps", "check", "a.csv", "b.csv"}, faulty, "one file"},
		{[]string{"comps", "check", missing}, failed, "reading the table: open " + missing},
		{[]string{"comps", "price", "a.csv"}, faulty, "a table and a subject"},
		{[]string{"comps", "price", "a.csv", "--subject", missing}, failed, "reading the subject: open " + missing},
		{[]string{"comps", "prices", "--dir", "a"}, faulty, "subjects and a folder"},
		{[]string{"comps", "prices", "--dir", "a", "--subjects", missing}, failed, "reading the subjects: open " + missing},
		{[]string{"comps", "fit", "a.csv"}, faulty, "walk comps price now"},
		{[]string{"comps", "predict"}, faulty, "walk comps prices now, and the column task is called vehicle"},
		{[]string{"lots"}, faulty, "there is rows"},
		{[]string{"lots", "rows"}, faulty, "one file"},
		{[]string{"comps", "rows", "a.csv", "--title", "scrap"}, faulty, "write name=value"},
		{[]string{"comps", "rows", "a.csv", "--on", "soon"}, faulty, "no day of the calendar"},
		{[]string{"comps", "check", demo("comps_front.csv"), "--unit"}, faulty, "--unit wants a value behind it"},
	} {
		code, out, errs := ran(c.args...)
		if code != c.code || !strings.Contains(errs, c.says) || out != "" {
			t.Errorf("walk %v: exit %d, want %d; wrote %q and %q, want %q", c.args, code, c.code, out, errs, c.says)
		}
	}
	if code, out, errs := ran("help"); code != done || errs != "" || out != usage {
		t.Errorf("help: exit %d, %q", code, errs)
	}
}

func TestDemoDecisions(t *testing.T) {
	for name, decision := range map[string]string{"front.json": "bid", "side.json": "bid", "flood.json": "do_not_bid"} {
		a := valued(t, demo(name))
		if a.Decision != decision || (a.WalkAway != nil) != (decision == "bid") {
			t.Errorf("%s: %s with walk-away bid %v, want %s", name, a.Decision, a.WalkAway, decision)
		}
		code, out, errs := ran("value", demo(name))
		says := fmt.Sprintf("  %-32s %s", "Walk-away bid", map[string]string{"bid": "USD", "do_not_bid": "Do not bid"}[decision])
		if code != done || errs != "" || !strings.Contains(out, says) {
			t.Errorf("%s: exit %d, %q, %.80q", name, code, errs, out)
		}
		if money, looks := strings.Index(out, "Invoice at"), strings.Index(out, "To check"); money < 0 || looks < money {
			t.Errorf("%s: the checks stand at %d, the invoice at %d", name, looks, money)
		}
		code, out, errs = ran("value", "--brief", demo(name))
		lines := strings.Split(strings.TrimSuffix(out, "\n"), "\n")
		if code != done || errs != "" || !strings.Contains(out, says) || !strings.Contains(out, "Look at: ") || len(lines) > 23 {
			t.Errorf("%s: exit %d, %q, %d lines: %s", name, code, errs, len(lines), out)
		}
		for _, l := range lines {
			if n := utf8.RuneCountInString(l); n > 80 {
				t.Errorf("%s: %d letters in %q", name, n, l)
			}
		}
	}
}

// What a list of a place asks for says what it rests on, and what its rule of total loss would call the vehicle: Alabama's is from
// 75 % of the value on (Code of Ala. 32-8-87), from a page that was read.
func TestTextSaysWhatItRestsOn(t *testing.T) {
	path := kept(t, "case.json", altered(t, `"register_in": "US-XX"`, `"register_in": "US-AL"`))
	table, err := os.ReadFile(demo("comps_front.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(filepath.Dir(path), "comps_front.csv"), table, 0o600); err != nil {
		t.Fatal(err)
	}
	code, out, errs := ran("value", path)
	if code != done || errs != "" {
		t.Fatalf("exit %d, %q", code, errs)
	}
	for _, says := range []string{"From memory: ask the agency.", "49 CFR 580.5(c), read ",
		"Alabama, total loss: does not apply. The rule is: repair at 75 % of the value or more.",
		"Code of Ala. 32-8-87, read ", ": check with the agency."} {
		if !strings.Contains(out, says) {
			t.Errorf("the text does not say %q", says)
		}
	}
}

func TestSameCaseSameAnswer(t *testing.T) {
	_, first, _ := ran("value", demo("front.json"), "--json")
	_, second, _ := ran("value", "--json", demo("front.json"))
	if first != second || first == "" {
		t.Error("--json before and after the path, or two runs, differ")
	}
	_, text, _ := ran("value", demo("front.json"))
	if _, again, _ := ran("value", demo("front.json")); text != again {
		t.Error("two runs differ in text")
	}
}

// The keys of the answer as the description of the case file lists them.
var answerKeys = map[string][]string{
	"": {"format", "currency", "decision", "walk_away", "binding_rule", "reasons", "warnings", "ceilings", "resale", "repair", "hidden",
		"days", "hours", "acquisition", "profit", "ladder", "waterfall", "drivers", "checklist"},
	"ceilings":          {"min_profit", "min_margin", "max_loss_chance", "max_worst_tenth_loss", "min_per_hour", "max_cash", "max_days"},
	"resale":            {"mean", "p10", "p50", "p90", "rows_used", "adjusted"},
	"repair":            {"mean", "p10", "p90", "lines"},
	"repair.lines":      {"id", "mean", "hours"},
	"hidden":            {"mean", "p10", "p90", "risks"},
	"hidden.risks":      {"id", "chance", "mean_if_present"},
	"days":              {"mean", "p90"},
	"hours":             {"mean", "p90"},
	"acquisition":       {"bid", "lines", "total"},
	"acquisition.lines": {"name", "amount"},
	"profit":            {"mean", "p05", "p10", "p50", "p90", "loss_chance", "worst_tenth_mean", "margin", "per_hour"},
	"ladder":            {"bid", "acquisition", "mean_profit", "loss_chance", "worst_tenth_mean", "margin", "per_hour", "holds"},
	"waterfall":         {"name", "amount"},
	"drivers":           {"name", "share"},
	"checklist":         {"id", "kind", "text", "why", "minutes", "worth", "state"},
}

func TestAnswerHasEveryKey(t *testing.T) {
	_, out, _ := ran("value", demo("side.json"), "--json")
	var root map[string]any
	if err := json.Unmarshal([]byte(out), &root); err != nil {
		t.Fatal(err)
	}
	if root["format"] != "walkline-answer/1" {
		t.Errorf("format %v", root["format"])
	}
	for path, keys := range answerKeys {
		var at any = root
		for _, step := range strings.FieldsFunc(path, func(r rune) bool { return r == '.' }) {
			at = at.(map[string]any)[step]
		}
		if list, ok := at.([]any); ok && len(list) > 0 {
			at = list[0]
		}
		object, _ := at.(map[string]any)
		for _, key := range keys {
			if _, ok := object[key]; !ok {
				t.Errorf("no key %s in %q", key, path)
			}
		}
	}
}

// The shopping list of two lots names each lot, every source and what the part is for.
func TestPartsOfTwoLots(t *testing.T) {
	var out, errs bytes.Buffer
	front, rear := "../../testdata/wrecks/01_light_front.json", "../../testdata/wrecks/06b_rear_bumper_bolted.json"
	if code := run([]string{"parts", front, rear}, &out, &errs); code != done || errs.Len() > 0 {
		t.Fatalf("code %d: %s", code, errs.String())
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) < 40 || rows[0][2] != "part" {
		t.Fatalf("%d rows, %v", len(rows), err)
	}
	for args, want := range map[string]int{"": faulty, "--all": faulty, "-o": faulty, "nowhere.json": failed} {
		if code := run(append([]string{"parts"}, strings.Fields(args)...), io.Discard, io.Discard); code != want {
			t.Errorf("parts %s ends with %d, want %d", args, code, want)
		}
	}
}
