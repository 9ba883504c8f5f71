package salefile_test

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"walkline/store/salefile"
	"walkline/valuation/prob"
	"walkline/valuation/sale"
)

// smallest is a sale of one lot with nothing but what must stand.
const smallest = `{"format":"walkline-sale/1","currency":"USD","cash":12000,"hours":160,"bays":2,"lots":[
 {"id":"14","worth":6200,"walk_away":4750,"beside":"900.50","hours":30,
  "hammer":{"low":2500,"likely":3800,"high":6000},"bid_steps":[{"from":0,"step":50}]}]}`

func TestSmallestSale(t *testing.T) {
	s, faults := salefile.Read([]byte("\xef\xbb\xbf" + smallest))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	l := s.Lots[0]
	if s.Cash != 1200000 || s.Hours != 160 || s.Bays != 2 || l.Beside != 90050 || *l.WalkAway != 475000 || l.Terms.Tax.Base != "hammer" ||
		l.Hammer != (prob.Three{Low: 2500, Likely: 3800, High: 6000}) || s.Later != (sale.Later{}) {
		t.Errorf("misread: %+v", s)
	}
	s, faults = salefile.Read([]byte(strings.Replace(smallest, `"walk_away":4750`, `"walk_away":null,"tax":{"rate":0.05},"days":50`, 1)))
	if len(faults) > 0 || s.Lots[0].WalkAway != nil || s.Lots[0].Days != 50 {
		t.Errorf("%v, %+v", faults, s)
	}
}

func TestMoneyComesInByDay(t *testing.T) {
	text := strings.NewReplacer(`"bays":2`, `"bays":2,"cash_in":[{"day":"2026-12-05","amount":"3000.50"}]`,
		`"id":"14"`, `"id":"14","day":"2026-12-06"`, `"cash":12000`, `"cash":1000`).Replace(smallest)
	s, faults := salefile.Read([]byte(text))
	if want := (sale.Income{Day: "2026-12-05", Amount: 300050}); len(faults) > 0 || len(s.In) != 1 || s.In[0] != want ||
		s.InHand().Cash != 400050 {
		t.Fatalf("%v, %+v", faults, s)
	}
	s.In[0].Day = "2026-12-07"
	if s.InHand().Cash != 100000 {
		t.Errorf("money of the day after the sale is in hand: %d", s.InHand().Cash)
	}
}

func TestBaysComeFreeByDay(t *testing.T) {
	text := strings.NewReplacer(`"bays":2`, `"bays":0,"bays_free":[{"day":"2026-12-05","bays":2}]`,
		`"id":"14"`, `"id":"14","day":"2026-12-06"`).Replace(smallest)
	s, faults := salefile.Read([]byte(text))
	if want := (sale.Freed{Day: "2026-12-05", Bays: 2}); len(faults) > 0 || len(s.Freed) != 1 || s.Freed[0] != want || s.InHand().Bays != 2 {
		t.Fatalf("%v, %+v", faults, s)
	}
	if b := sale.New(s).Answer().Lots[0]; b.Bid == nil {
		t.Error("no bid with bays that are free on the day")
	}
	if s.Freed[0].Day = "2026-12-07"; sale.New(s).Answer().Lots[0].Bid != nil {
		t.Error("a bid without a bay on the day")
	}
}

func TestLaterMayBeStringsOfAnyDecimals(t *testing.T) {
	s, faults := salefile.Read([]byte(strings.Replace(smallest, `"bays":2`, `"bays":2,"later":{"cash":0.0875,"hour":"12.125","bay":300}`, 1)))
	if len(faults) > 0 || s.Later != (sale.Later{Cash: .0875, Hour: 12.125, Bay: 300}) {
		t.Errorf("%+v, %v", s.Later, faults)
	}
}

func TestFaultsNameTheirKeys(t *testing.T) {
	with := func(old, new string) string { return strings.Replace(smallest, old, new, 1) }
	for _, c := range []struct{ text, key string }{
		{"", "file"},
		{"[]", "file"},
		{with("sale/1", "sale/2"), "format"},
		{with(`"USD"`, `"USX"`), "currency"},
		{strings.NewReplacer(`"USD"`, `"USX"`, `"hours":160,`, ``).Replace(smallest), "hours"},
		{with(`"cash":12000,`, ``), "cash"},
		{with(`"cash":12000`, `"cash":-1`), "cash"},
		{with(`"cash":12000`, `"cash":"12000.005"`), "cash"},
		{with(`"cash"`, `"cahs"`), "cahs"},
		{with(`"hours":160`, `"hours":null`), "hours"},
		{with(`"hours":160`, `"hours":160,"hours":170`), "hours"},
		{with(`"bays":2`, `"bays":2.5`), "bays"},
		{with(`"bays":2`, `"bays":-2`), "bays"},
		{with(`"bays":2`, `"bays":2,"later":{"cash":-0.1}`), "later.cash"},
		{with(`"bays":2`, `"bays":2,"cash_in":[{"day":"2026-12-05","amount":1}]`), "lots[0].day"},
		{with(`"bays":2`, `"bays":2,"cash_in":[{"day":"Dec 5","amount":1}]`), "cash_in[0].day"},
		{with(`"bays":2`, `"bays":2,"cash_in":[{"day":"2026-12-05","amount":-1}]`), "cash_in[0].amount"},
		{with(`"bays":2`, `"bays":2,"bays_free":[{"day":"2026-12-05","bays":1}]`), "lots[0].day"},
		{with(`"bays":2`, `"bays":2,"bays_free":[{"day":"Dec 5","bays":1}]`), "bays_free[0].day"},
		{with(`"bays":2`, `"bays":2,"bays_free":[{"day":"2026-12-05","bays":-1}]`), "bays_free[0].bays"},
		{with(`"id":"14"`, `"id":"14","day":"2026-13-05"`), "lots[0].day"},
		{strings.Replace(with(`"id":"14"`, `"id":"14","day":"2026-12-05"`), `}]}]}`, `}]},{"id":"15","day":"2026-12-04"}]}`, 1), "lots[1].day"},
		{with(`"id":"14",`, ``), "lots[0].id"},
		{with(`"id":"14"`, `"id":14`), "lots[0].id"},
		{with(`"walk_away":4750,`, ``), "lots[0].walk_away"},
		{with(`"beside":"900.50",`, ``), "lots[0].beside"},
		{with(`"worth":6200`, `"worth":"much"`), "lots[0].worth"},
		{with(`"low":2500`, `"low":3900`), "lots[0].hammer"},
		{with(`"low":2500,`, ``), "lots[0].hammer.low"},
		{with(`"step":50`, `"step":0`), "lots[0].bid_steps[0].step"},
		{strings.NewReplacer(`"step":50`, `"step":0.01`, `4750`, `999999`).Replace(smallest), "lots[0].bid_steps"},
		{with(`"hours":30`, `"hours":30,"fees":[{"name":"b","mode":"odd","rows":[{"from":0,"flat":1}]}]`), "lots[0].fees[0].mode"},
		{with(`"hours":30`, `"hours":30,"tax":{"rate":1.5}`), "lots[0].tax.rate"},
		{with(`}]}]}`, `}]},{"id":"14"}]}`), "lots[1].id"},
	} {
		_, faults := salefile.Read([]byte(c.text))
		if !slices.ContainsFunc(faults, func(f salefile.Fault) bool { return f.Key == c.key }) {
			t.Errorf("no fault at %s in %v of %s", c.key, faults, c.text)
		}
	}
}

func TestPlanIsWritten(t *testing.T) {
	s, _ := salefile.Read([]byte(smallest))
	var p struct {
		Format   string
		Expected float64
		Exact    bool
		Lots     []map[string]any
		More     map[string]float64
		Leave    []string
	}
	if err := json.Unmarshal(salefile.WriteAnswer(sale.New(s).Answer(), s.Currency), &p); err != nil {
		t.Fatal(err)
	}
	l := p.Lots[0]
	if p.Format != "walkline-plan/1" || !p.Exact || p.Expected <= 0 || l["id"] != "14" || l["bid"] != 4750. ||
		l["reach"] != 1. || l["expected"] != p.Expected ||
		l["after_one_win"] != nil || p.More["thousand"] != 0 || p.Leave == nil {
		t.Errorf("%+v", p)
	}
}

// FuzzRead: no document makes the reader fail otherwise than by a fault, and what it takes can be planned and written.
func FuzzRead(f *testing.F) {
	f.Add([]byte(smallest))
	f.Add([]byte(strings.NewReplacer(`"bays":2`,
		`"bays":2,"cash_in":[{"day":"2026-12-05","amount":9}],"bays_free":[{"day":"2026-12-05","bays":1}]`,
		`"id":"14"`, `"id":"14","day":"2026-12-06"`).Replace(smallest)))
	f.Add([]byte(strings.Replace(smallest, `"hours":30`, `"hours":1e9,"fixed":[{"amount":1}],"payment_surcharge":0.03`, 1)))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, faults := salefile.Read(data)
		legal := 0
		for _, l := range s.Lots {
			if l.WalkAway != nil && len(l.Steps) > 0 && l.Steps[0].Step > 0 {
				legal += int(*l.WalkAway / l.Steps[0].Step)
			}
		}
		if len(faults) > 0 || len(s.Lots) > 8 || legal > 1000 || s.Bays > 8 {
			return // a large sale is slow, not wrong
		}
		a := sale.New(s).Answer()
		if !json.Valid(salefile.WriteAnswer(a, s.Currency)) || !(a.Expected >= 0) || len(a.Lots) != len(s.Lots) {
			t.Errorf("%q is planned as %+v", data, a)
		}
	})
}
