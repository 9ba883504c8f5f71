package casefile_test

import (
	"bytes"
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
)

// smallest is a case with nothing but what must be there.
const smallest = `{"format":"walkline-case/1","currency":"USD","valued_on":"2026-11-20",
 "resale":{"guess":{"low":9000,"likely":10000,"high":"11000.50"}},
 "buying":{"bid_steps":[{"from":0,"step":25}]},"rules":{"min_profit":1500}}`

func TestSmallestCaseTakesTheDefaults(t *testing.T) {
	c, faults := casefile.Read([]byte("\xef\xbb\xbf" + smallest))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	d := valuation.Defaults()
	if c.Run != d.Run || c.Hidden.SharedLoading != 0.3 || !c.Repair.UseCatalogue || c.Lot.OdometerUnit != "mi" || c.Time.HoursPerWeek != 30 {
		t.Errorf("defaults were not taken: %+v", c)
	}
	if c.Resale.Guess.High != 11000.50 || *c.Rules.MinProfit != 150000 || c.Buying.BidSteps[0].Step != 2500 {
		t.Errorf("money was misread: %+v %v %+v", c.Resale.Guess, *c.Rules.MinProfit, c.Buying.BidSteps)
	}
}

func TestCasesRoundTrip(t *testing.T) {
	for _, name := range assets.DemoCases() {
		data, err := assets.Demo(name)
		if err != nil {
			t.Fatal(err)
		}
		c, faults := casefile.Read(data)
		if len(faults) > 0 {
			t.Fatal(name, faults)
		}
		again, faults := casefile.Read(casefile.Write(c))
		if len(faults) > 0 || !bytes.Equal(casefile.Write(c), casefile.Write(again)) {
			t.Errorf("%s does not come back as it was: %v", name, faults)
		}
	}
}

// What the demo's first case says stands in what is written, key by key.
func TestWritingLosesNothing(t *testing.T) {
	data, err := assets.Demo("front.json")
	if err != nil {
		t.Fatal(err)
	}
	c, _ := casefile.Read(data)
	for _, says := range []string{`"sale": "Harrow Flats yard"`, `"odometer": 61200`, `"keys": true`, `"percent": 0.07`,
		`"minimum": "90.00"`,
		`"coolant_under_car": "no"`, `"max_loss_chance": 0.25`, `"min_profit": "1000.00"`, `"seed": 1`, `"per_day": 30.00`} {
		if !strings.Contains(string(casefile.Write(c)), says) {
			t.Errorf("the written case does not say %s", says)
		}
	}
}

// Every bad input gets a line that names its key, and all of them come at once.
func TestFaultsNameKeyValueAndRemedy(t *testing.T) {
	with := func(extra string) string { return strings.TrimSuffix(smallest, "}") + "," + extra + "}" }
	for _, w := range []struct{ doc, key, says string }{
		{``, "file", "empty"},
		{`{"format":`, "file", "line 1, column"},
		{"\xff\xfe{", "file", "UTF-8"},
		{`[1]`, "file", "one JSON object"},
		{smallest + `{}`, "file", "more after the end"},
		{strings.Replace(smallest, "case/1", "case/2", 1), "format", "walkline-case/1"},
		{strings.Replace(smallest, "USD", "US$", 1), "currency", "ISO 4217"},
		{strings.Replace(smallest, "2026-11-20", "2026-02-30", 1), "valued_on", "YYYY-MM-DD"},
		{with(`"sellling":{}`), "sellling", "the nearest is selling"},
		{with(`"time":{"hours_a_week":3}`), "time.hours_a_week", "the nearest is hours_per_week"},
		{with(`"selling":{"flat":1},"selling":{"flat":2}`), "selling", "each key once"},
		{with(`"selling":{"flat":-250}`), "selling.flat", "from 0"},
		{with(`"selling":{"flat":1.005}`), "selling.flat", "more decimals"},
		{with(`"selling":{"percent":15}`), "selling.percent", "fraction"},
		{with(`"lot":{"model_year":"2019"}`), "lot.model_year", "a whole number"},
		{with(`"lot":{"condition":"runs"}`), "lot.condition", "starts"},
		{with(`"lot":{"sale_date":"2026-13-01"}`), "lot.sale_date", "YYYY-MM-DD"},
		{with(`"damage":[{"area":"13","extent":"minor","depth":"skin"}]`), "damage[0].area", "undercarriage"},
		{with(`"findings":{"x":"maybe"}`), "findings.x", "yes, no"},
		{with(`"time":{"days_to_sell":{"low":30,"likely":20,"high":60}}`), "time.days_to_sell", "low no more than likely"},
		{with(`"time":{"days_to_sell":{"low":3,"high":60}}`), "time.days_to_sell.likely", "a number"},
		{with(`"time":{"days_to_sell":"soon"}`), "time.days_to_sell", "a number"},
		{with(`"repair":{"lines":[{"id":"a","job":"x","parts":[{"options":[{"chance":0.7}]}]}]}`), "repair.lines[0].parts[0].fallback",
			"no source has it"},
		{with(`"repair":{"lines":[{"id":"a","job":"x","parts":[{"options":[{"price":200,"core_back":201}]}]}]}`),
			"repair.lines[0].parts[0].options[0].core_back", "deposit"},
		{with(`"repair":{"lines":[{"id":"a","job":"x","hours":{"body":1e6}}]}`), "repair.lines[0].hours.body.high", "no more than"},
		{with(`"repair":{"lines":[{"id":"a","job":"x","outside":50000000000000}]}`), "repair.lines[0].outside.high", "no more than"},
		{with(`"time":{"days_to_sell":{"low":1,"likely":2,"high":1e6}}`), "time.days_to_sell.high", "no more than"},
		{with(`"time":{"hours_per_week":1e-9}`), "time.hours_per_week", "from 0.1"},
		{with(`"repair":{"lines":[{"id":"a","job":"x"},{"id":"a","job":"y"}]}`), "repair.lines[1].id", "of its own"},
		{with(`"hidden":{"risks":[{"id":"h","name":"n","chance":{"a":0,"b":0}}]}`), "hidden.risks[0].chance", "not both 0"},
		{with(`"market":{"rivals":-1}`), "market.rivals", "from 0"},
		{with(`"run":{"scenarios":10}`), "run.scenarios", "256"},
		{strings.Replace(smallest, `"step":25`, `"step":0`, 1), "buying.bid_steps[0].step", "more than 0"},
		{strings.Replace(smallest, `"min_profit":1500`, `"max_days":9`, 1), "rules", "at least one"},
		{strings.Replace(smallest, `"low":9000`, `"low":-9000`, 1), "resale.guess.low", "no less than 0"},
	} {
		_, faults := casefile.Read([]byte(w.doc))
		found := false
		for _, f := range faults {
			found = found || f.Key == w.key && strings.Contains(f.Error(), w.says)
		}
		if !found {
			t.Errorf("want a fault at %s that says %q, got %v", w.key, w.says, faults)
		}
	}
}

func TestAllFaultsComeAtOnce(t *testing.T) {
	doc := strings.Replace(smallest, `"rules"`, `"lot":{"model_year":1200,"condition":"runs"},"selling":{"percent":2},"rules"`, 1)
	if _, faults := casefile.Read([]byte(doc)); len(faults) != 3 {
		t.Errorf("want 3 faults, got %v", faults)
	}
	doc = strings.Replace(doc, `"rules"`, `"sellling":{},"time":{"days_to_sell":{"low":3,"high":1}},"rules"`, 1)
	if _, faults := casefile.Read([]byte(doc)); len(faults) != 5 { // an unknown key, a missing likely, and the three above
		t.Errorf("want 5 faults, got %v", faults)
	}
}

// The same bad case names its faults in the same order every time, so that two runs can be compared.
func TestFaultsKeepTheirOrder(t *testing.T) {
	doc := strings.Replace(smallest, `"rules":{`,
		`"factors":{"materials":{"factor":99},"outside":{"factor":99},"hidden":{"factor":99},"days_to_sell":{"factor":99}},`+
			`"rules":{"min_per_hour":-1,"max_cash":-1,"max_worst_tenth_loss":-1,`, 1)
	_, first := casefile.Read([]byte(doc))
	if len(first) < 7 {
		t.Fatalf("want 7 faults, got %v", first)
	}
	for range 20 {
		if _, again := casefile.Read([]byte(doc)); !slices.Equal(first, again) {
			t.Fatalf("%v, then %v", first, again)
		}
	}
}

// FuzzRead: no document makes the reader fail otherwise than by a fault, and what it takes, it gives back.
func FuzzRead(f *testing.F) {
	f.Add([]byte(smallest))
	for _, name := range assets.DemoCases() {
		data, err := assets.Demo(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		c, faults := casefile.Read(data)
		if len(faults) > 0 {
			return
		}
		again, faults := casefile.Read(casefile.Write(c))
		if len(faults) > 0 || !bytes.Equal(casefile.Write(c), casefile.Write(again)) {
			t.Errorf("%q does not come back as it was: %v", data, faults)
		}
	})
}

// The survey and a yard's quote are read with their words and money, come back as they were, and an unknown key names the nearest.
func TestSurveyAndQuoteAreRead(t *testing.T) {
	const doc = `{"format": "walkline-case/1", "currency": "USD", "valued_on": "2026-11-20",
		"survey": {"kind": "pickup", "powertrain": "hybrid", "driven": "all", "parts_level": "high", "region": "salted", "paint": "pearl", ` +
		`"doors": 4,
			"missing": ["wheels"], "water": {"height": "seat", "kind": "salt", "hours": 6},
			"hail": {"count": "many", "size": "large", "panels": ["roof"], "glass": true, "left": true, "discount": {"low": 0.1, "likely": 0.2,` +
		` "high": 0.3}},
			"fire": {"where": ["engine_bay"], "reach": "smoke"}, "mechanical": ["overheated"]},
		"repair": {"lines": [{"id": "r1", "job": "Hood", "parts": [{"name": "hood", "options": [
			{"source": "used", "price": 200, "quote": {"yard": "Low Mill parts", "phone": "555", "day": "2026-11-19", "price": "180.50"}}]}]}]}}`
	read := func(doc string) (valuation.Case, []string) {
		c, faults := casefile.Read([]byte(doc))
		var said []string
		for _, f := range faults {
			if !strings.HasPrefix(f.Key, "resale") && !strings.HasPrefix(f.Key, "rules") && !strings.HasPrefix(f.Key, "buying") {
				said = append(said, f.Error())
			}
		}
		return c, said
	}
	c, said := read(doc)
	s, q := c.Survey, c.Repair.Lines[0].Parts[0].Options[0].Quote
	if s == nil || s.Kind != "pickup" || s.Paint != "pearl" || *s.Water.Hours != 6 || !s.Hail.Left || s.Hail.Discount.Likely != .2 ||
		s.Fire.Reach != "smoke" {
		t.Fatalf("%+v, %v", s, said)
	}
	if q == nil || q.Price != 180.5 || q.Day != "2026-11-19" || q.Yard != "Low Mill parts" {
		t.Fatalf("%+v", q)
	}
	again, _ := read(string(casefile.Write(c)))
	if !reflect.DeepEqual(again.Survey, c.Survey) || !reflect.DeepEqual(again.Repair, c.Repair) {
		t.Error("the survey or the quote does not come back as it was written")
	}
	_, said = read(strings.Replace(doc, `"driven"`, `"drive"`, 1))
	if !slices.ContainsFunc(said, func(x string) bool {
		return strings.Contains(x, "survey.drive") &&
			strings.Contains(x, "nearest is driven")
	}) {
		t.Errorf("an unknown key: %q", said)
	}
	_, said = read(strings.Replace(doc, `"day": "2026-11-19", "price": "180.50"`, `"price": -1`, 1))
	if all := strings.Join(said, "\n"); !strings.Contains(all, "quote.day") || !strings.Contains(all, "quote.price") {
		t.Errorf("a quote without its day: %q", said)
	}
}

// What a run list says is an optional key of the lot: it comes back as it was, and a figure of nothing, or words that are none, are faults.
func TestWhatTheListSaysIsRead(t *testing.T) {
	doc := func(listed string) string {
		return strings.TrimSuffix(smallest, "}") + `,"lot":{"listed":` + listed + "}}"
	}
	c, faults := casefile.Read([]byte(doc(`{"areas": ["11", "top"], "value_before": 12500, "repair_estimate": "4200.50", "currency": "EUR",
		"note": "keys in office", "run_order": 3}`)))
	l := c.Lot.Listed
	if len(faults) > 0 || l == nil || *l.ValueBefore != 12500 || *l.RepairEstimate != 4200.5 || l.RunOrder != 3 || !l.Said() {
		t.Fatalf("%+v, %v", l, faults)
	}
	if again, _ := casefile.Read(casefile.Write(c)); !reflect.DeepEqual(again.Lot, c.Lot) {
		t.Errorf("came back as %+v", again.Lot.Listed)
	}
	for listed, key := range map[string]string{`{"areas": ["nose"]}`: "lot.listed.areas[0]", `{"value_before": 0}`: "lot.listed.value_before",
		`{"currency": "dollars"}`: "lot.listed.currency", `{"run_order": -1}`: "lot.listed.run_order", `{"estimate": 5}`: "lot.listed.estimate"} {
		if _, faults := casefile.Read([]byte(doc(listed))); len(faults) != 1 || faults[0].Key != key {
			t.Errorf("%s: %v", listed, faults)
		}
	}
}

// A donor vehicle comes back as it was; one without a price, or that brings more than it costs, is a fault.
func TestADonorIsRead(t *testing.T) {
	doc := func(donor string) string {
		return strings.TrimSuffix(smallest, "}") + `,"repair":{"donor":` + donor + "}}"
	}
	c, faults := casefile.Read([]byte(doc(`{"vehicle": "2018 Pell, hit behind", "hit": ["06"], "feeds": ["hood_replace"], "price": 2900,
		"freight": {"low": 150, "likely": 250, "high": 450}, "lead_days": 14, "hours": {"body": 18}, "sound": 0.8, "brings": 1100}`)))
	if d := c.Repair.Donor; len(faults) > 0 || d == nil || !d.Fed("hood_replace") || d.Freight.High != 450 || *d.Sound != .8 {
		t.Fatalf("%+v, %v", d, faults)
	}
	if again, _ := casefile.Read(casefile.Write(c)); !reflect.DeepEqual(again.Repair, c.Repair) {
		t.Errorf("came back as %+v", again.Repair.Donor)
	}
	for donor, key := range map[string]string{`{}`: "repair.donor.price.low", `{"price": 100, "brings": 200}`: "repair.donor.brings",
		`{"price": 100, "hit": ["nose"]}`: "repair.donor.hit[0]", `{"price": 100, "sound": 2}`: "repair.donor.sound"} {
		if _, faults := casefile.Read([]byte(doc(donor))); len(faults) != 1 || faults[0].Key != key {
			t.Errorf("%s: %v", donor, faults)
		}
	}
}
