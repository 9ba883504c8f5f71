package main

import (
	"encoding/json"
	"math"
	"os"
	"strings"
	"testing"
)

const harrowSale = "../../testdata/sales/harrow.json"

// planned runs "walk plan" and returns what it writes.
func planned(t *testing.T, args ...string) (p struct {
	Format   string
	Expected float64
	Exact    bool
	Lots     []struct {
		ID        string
		Bid       *float64
		WinChance float64 `json:"win_chance"`
		Expected  float64
		Reach     float64
	}
	More  struct{ Thousand float64 }
	Leave []string
}) {
	t.Helper()
	code, out, errs := ran(append([]string{"plan", harrowSale, "--json"}, args...)...)
	if code != done || errs != "" {
		t.Fatalf("exit %d: %s", code, errs)
	}
	if err := json.Unmarshal([]byte(out), &p); err != nil {
		t.Fatal(err)
	}
	return p
}

// byHand is a lot of testdata/sales/harrow.json: its figures, its invoice and its steps written out once more.
type byHand struct {
	worth, walkAway, beside, hours float64
	low, likely, high              float64
	invoice                        func(p float64) float64
	step                           func(b float64) float64
}

func cents(x float64) float64 { return math.Floor(100*x+.5+1e-7) / 100 }

func harrowByHand() []byHand {
	fine := func(b float64) float64 {
		if b < 1000 {
			return 25
		}
		return 50
	}
	return []byHand{
		{6200, 4750, 900, 30, 2500, 3800, 6000, func(p float64) float64 {
			if p >= 4000 {
				return p + cents(.1*p) + 79
			}
			return p + cents(math.Max(150, .12*p)) + 79
		}, fine},
		{9100, 7000, 1500, 85, 4000, 6200, 8500, func(p float64) float64 { return p + 79 + cents(.05*p) }, fine},
		{3900, 3100, 350, 22, 1200, 2600, 4100,
			func(p float64) float64 { return p + 79 + cents(.02*(p+79)) }, func(float64) float64 { return 25 }},
	}
}

// below returns the chance of a PERT draw at or below x, by the midpoint rule on its density (Vose 2008, from memory).
func (l byHand) below(x float64) float64 {
	w := l.high - l.low
	a, b := 4*(l.likely-l.low)/w, 4*(l.high-l.likely)/w
	const parts = 4000
	var part, whole float64
	for i := range parts {
		u := (float64(i) + .5) / parts
		d := math.Pow(u, a) * math.Pow(1-u, b)
		whole += d
		if l.low+u*w <= x {
			part += d
		}
	}
	return part / whole
}

// price is one legal bid with its chance.
type price struct{ at, chance float64 }

func (l byHand) prices() []price {
	var out []price
	before := 0.0
	for b := l.step(0); b <= l.walkAway; b += l.step(b) {
		upTo := l.below(b)
		out = append(out, price{b, upTo - before})
		before = upTo
	}
	return out
}

// best is the value of the lots by trying each bid, nothing kept, with the bid of the first.
func best(lots []byHand, prices [][]price, cash, hours float64, bays int) (value, bid float64) {
	if len(lots) == 0 || bays == 0 {
		return 0, 0
	}
	lost, _ := best(lots[1:], prices[1:], cash, hours, bays)
	sum := lost
	value = lost
	l := lots[0]
	for _, p := range prices[0] {
		after := cash - l.invoice(p.at) - l.beside
		if after < -1e-9 || hours < l.hours {
			break
		}
		won := 0.0
		if p.chance > 0 {
			won, _ = best(lots[1:], prices[1:], after, hours-l.hours, bays-1)
		}
		sum += p.chance * (l.worth - l.invoice(p.at) + won - lost)
		if sum >= value {
			value, bid = sum, p.at
		}
	}
	return value, bid
}

func TestPlanOfTheHarrowSale(t *testing.T) {
	lots := harrowByHand()
	var prices [][]price
	for _, l := range lots {
		prices = append(prices, l.prices())
	}
	for _, c := range []struct {
		then        []string
		gone        int
		cash, hours float64
		bays        int
	}{
		{nil, 0, 12000, 160, 2},
		{[]string{"--then", "14=lost"}, 1, 12000, 160, 2},
		{[]string{"--then", "14=won@3900"}, 1, 12000 - 3900 - 468 - 79 - 900, 130, 1},
		{[]string{"--then", "14=won@3900", "--then=21=withdrawn"}, 2, 6653, 130, 1},
	} {
		p := planned(t, c.then...)
		want, bid := best(lots[c.gone:], prices[c.gone:], c.cash, c.hours, c.bays)
		if math.Abs(p.Expected-want) > 1e-3*want || p.Lots[0].Bid == nil || *p.Lots[0].Bid != bid {
			t.Errorf("%v: %g, by hand %g with a first bid of %g: %+v", c.then, p.Expected, want, bid, p.Lots[0])
		}
		last := p.Lots[len(p.Lots)-1]
		if p.Format != "walkline-plan/1" || !p.Exact || len(p.Lots) != 4-c.gone || last.Bid != nil || last.WinChance != 0 || p.Leave[0] != "40" {
			t.Errorf("%v: %+v", c.then, p)
		}
	}
	if p := planned(t, "--then", "14=won@13000"); p.Expected != 0 || p.Lots[0].Bid != nil || p.Lots[1].Bid != nil {
		t.Errorf("bids with no cash left: %+v", p)
	}
}

func TestPlanForAPerson(t *testing.T) {
	code, out, _ := ran("plan", harrowSale)
	for _, says := range []string{"USD 12,000 in cash", "worked out exactly", "3,700",
		"bid after a win", "1,000 of cash", "Leave these lots\n  - 40"} {
		if code != done || !strings.Contains(out, says) {
			t.Errorf("exit %d, no %q in:\n%s", code, says, out)
		}
	}
}

// A bay that comes free the day before counts as one that there is, and is said; one that comes free the day after counts for nothing.
func TestPlanKnowsBaysThatComeFree(t *testing.T) {
	text, err := os.ReadFile(harrowSale)
	if err != nil {
		t.Fatal(err)
	}
	on := func(day string) []byte {
		dated := strings.ReplaceAll(string(text), `{"id"`, `{"day": "2026-12-05", "id"`)
		return []byte(strings.Replace(dated, `"bays": 2`, `"bays": 1, "bays_free": [{"day": "`+day+`", "bays": 1}]`, 1))
	}
	expected := func(out string) string {
		_, rest, _ := strings.Cut(out, "Expected profit of the plan: ")
		line, _, _ := strings.Cut(rest, "\n")
		return line
	}
	_, two, _ := ran("plan", harrowSale)
	for day, want := range map[string]bool{"2026-12-04": true, "2026-12-06": false} {
		code, out, errs := ran("plan", kept(t, "sale.json", on(day)))
		if same := expected(out) == expected(two); code != done || same != want ||
			!strings.Contains(out, "1 more bay free from "+day+" on") {
			t.Errorf("free from %s: exit %d, as with two bays %v, want %v: %s%s", day, code, same, want, out, errs)
		}
	}
}

func TestPlanFaults(t *testing.T) {
	bad := kept(t, "sale.json", []byte(`{"format":"walkline-sale/1","currency":"USD","cash":-5,"hours":10,"lots":[]}`))
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"plan"}, faulty, "which sale?"},
		{[]string{"plan", "a", "b"}, faulty, "one sale at a time"},
		{[]string{"plan", harrowSale, "--fast"}, faulty, "no option --fast"},
		{[]string{"plan", harrowSale, "--then"}, faulty, "--then wants a result"},
		{[]string{"plan", "nowhere.json"}, failed, "reading the sale"},
		{[]string{"plan", bad}, faulty, "bays: nothing"},
		{[]string{"plan", bad}, faulty, "cash: -5.00: want no less than 0"},
		{[]string{"plan", harrowSale, "--then", "14=won"}, faulty, "then[0]: "},
		{[]string{"plan", harrowSale, "--then", "14=lost", "--then", "21=won@4010"}, faulty, "then[1]: 4010.00: want a legal bid"},
		{[]string{"plan", harrowSale, "--then", "21=lost"}, faulty, "then[0]: 21: want the result of lot 14"},
	} {
		code, out, errs := ran(c.args...)
		if code != c.code || out != "" || !strings.Contains(errs, c.says) {
			t.Errorf("walk %v: exit %d, %q and %q, want %q", c.args, code, out, errs, c.says)
		}
	}
}
