package wire_test

import (
	"context"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
)

func TestPastBuysAreImportedOnce(t *testing.T) {
	ctx := context.Background()
	d, book := open(t)
	table := "id,make,model,bought,sold,price_paid,sold_for,hours_body,found\n" +
		"1,Kettrick,Dunlin,2025-03-01,2025-06-10,\"4,200\",11900,22.5,Inner rocker and its reinforcement folded\n" +
		"2,Ostrane,Pell,2025-04-01,,3100,,,\n3,,,soon,,,,,\n"
	s := d.Do(ctx, d.Load(ctx), desk.Go(desk.Builds))
	for _, want := range []string{"3 rows read: 2 new, 0 the same, 0 changed, 1 refused.",
		"3 rows read: 0 new, 2 the same, 0 changed, 1 refused."} {
		sheet, err := d.OpenPast(ctx, []byte(table), desk.Opening{Currency: "USD"})
		if err != nil {
			t.Fatal(sheet.Stated, err)
		}
		e, err := d.TakePast(ctx, s, sheet)
		if s = d.PastArrived(ctx, s, e, err); s.Notice != want || len(e.Refused) != 1 || e.Refused[0].Line != 4 ||
			!strings.Contains(e.Refused[0].Reason, "no day of the calendar") {
			t.Errorf("%q %q %v", s.Notice, s.Trouble, e.Refused)
		}
	}
	if len(s.Bought) != 2 || !s.Bought[0].Ours() || s.Bought[0].Build.Outcome != build.Sold || s.Bought[0].Foretold != nil {
		t.Fatalf("%+v", s.Bought)
	}
	if got := s.Bought[0].Build.Risks; len(got) != 1 || strings.Contains(got[0].Risk, " ") {
		t.Errorf("a risk called by its name is %+v", got)
	}
	if list, err := book.Builds(ctx); err != nil || len(list) != 2 {
		t.Error(len(list), err)
	}
	changed := strings.Replace(table, "11900", "12000", 1)
	sheet, _ := d.OpenPast(ctx, []byte(changed), desk.Opening{Currency: "USD"})
	e, err := d.TakePast(ctx, s, sheet)
	if s = d.PastArrived(ctx, s, e, err); s.Notice != "3 rows read: 0 new, 1 the same, 1 changed, 1 refused." ||
		*s.Bought[0].Build.Sale.Price != 1200000 {
		t.Errorf("%q %+v", s.Notice, s.Bought[0].Build.Sale)
	}
}

func TestATableThatReadsTwoWaysIsADoubt(t *testing.T) {
	d, _ := open(t)
	sheet, err := d.OpenPast(context.Background(), []byte("id,bought\n1,3/4/2025\n"), desk.Opening{Currency: "USD"})
	if err != nil || len(sheet.Doubts) != 1 {
		t.Errorf("%+v %v", sheet, err)
	}
	if _, err := d.OpenPast(context.Background(), []byte("\x00\x01"), desk.Opening{Currency: "USD"}); err == nil {
		t.Error("no table was opened")
	}
	refused, err := d.Past.RefusedPast(sheet)
	if err != nil || !strings.Contains(string(refused), "id,bought,refused") {
		t.Errorf("%q %v", refused, err)
	}
}
