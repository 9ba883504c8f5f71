package csvfile

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/resale"
)

const three = "price,year,make,model,mileage,date\n12500,2019,Orlan,Tessel,61200,2026-10-01\n9900,2017,Orlan,Tessel,," +
	"2026-09-01\n12500,2019,Orlan,Tessel,61200,2026-10-01\n"

// counts is how an import came out: read = new + same + changed + refused.
type counted struct{ Read, New, Same, Changed, Refused int }

func counts(r result, m Merged) counted {
	return counted{r.Read, m.New, m.Same, m.Changed, len(r.Refused)}
}

// result is a table with its rows as the valuation takes them.
type result struct {
	table.Result[Comparable]
	Rows []resale.Row
}

// parsed reads a table in canonical notation, its prices asked unless it says otherwise.
func parsed(t *testing.T, text string) result {
	t.Helper()
	g, err := grid.Read([]byte(text), grid.Options{})
	if err != nil {
		t.Fatal(err)
	}
	r, err := table.Read(Comparables, g, Canonical("USD"))
	if err != nil {
		t.Fatal(err)
	}
	if r.Read != len(r.Rows)+len(r.Refused) || len(r.Lines) != len(r.Rows) {
		t.Fatalf("%d read, %d taken, %d refused", r.Read, len(r.Rows), len(r.Refused))
	}
	return result{r, Rows(r)}
}

func TestTheSameFileTwiceAddsNothing(t *testing.T) {
	r := parsed(t, three)
	first := Merge(nil, r.Rows)
	if got := counts(r, first); got != (counted{Read: 3, New: 3}) { // the same row twice in one file counts twice
		t.Fatalf("%+v", got)
	}
	again := Merge(first.Rows, r.Rows)
	if got := counts(r, again); got != (counted{Read: 3, Same: 3}) || !reflect.DeepEqual(again.Rows, first.Rows) {
		t.Fatalf("%+v", got)
	}
}

func TestANewPriceOfAKnownVehicleIsAChange(t *testing.T) {
	r := parsed(t, three)
	kept := Merge(nil, r.Rows).Rows
	kept[0].Excluded, kept[0].Note = true, "seen it"
	newer := parsed(t, strings.Replace(three, "12500,2019", "11900,2019", 1)+"bad,2019,,,,\n")
	m := Merge(kept, newer.Rows)
	if got := counts(newer, m); got != (counted{Read: 4, Same: 2, Changed: 1, Refused: 1}) {
		t.Fatalf("%+v", got)
	}
	c := m.Changes[0]
	if c.Before.Price != 1250000 || c.After.Price != 1190000 || m.Rows[c.At].Price != 1190000 {
		t.Fatalf("%+v", c)
	}
	if slices.IndexFunc(m.Rows, func(r resale.Row) bool { return r.Excluded && r.Note == "seen it" }) != 0 {
		t.Fatal("the user's tick or note was lost")
	}
}

func TestRowsWithIdsMeetByIdAlone(t *testing.T) {
	r := parsed(t, "id,price,trim,mileage,colour\na,100,LX,5,\nb,200,LX,5,red\na,100,LX,5,\n")
	kept := Merge(nil, r.Rows)
	if ids := []string{kept.Rows[0].ID, kept.Rows[1].ID, kept.Rows[2].ID}; !slices.Equal(ids, []string{"a", "b", "a (2)"}) {
		t.Fatalf("%q", ids)
	}
	newer := parsed(t, "id,price,trim,mileage,colour\nb,200,,,blue\nc,200,LX,5,\n")
	m := Merge(kept.Rows, newer.Rows)
	if m.New != 1 || m.Changed != 1 || m.Rows[1].Trim != "LX" || *m.Rows[1].Mileage != 5 || m.Rows[1].More["colour"] != "blue" {
		t.Fatalf("%+v", m)
	}
	if kept.Rows[1].More["colour"] != "red" {
		t.Fatal("the rows before the merge were changed")
	}
}

func TestRowsWithoutIdsGetFreeOnes(t *testing.T) {
	m := Merge([]resale.Row{{ID: "row-2", Price: 5}}, []resale.Row{{Price: 1}, {Price: 2}, {ID: "row-3", Price: 3}})
	ids := map[string]bool{}
	for _, r := range m.Rows {
		if r.ID == "" || ids[r.ID] {
			t.Fatalf("id %q", r.ID)
		}
		ids[r.ID] = true
	}
}

func TestRefusedRowsCanBeSetRightAndReadAgain(t *testing.T) {
	r := parsed(t, "price,note,colour\ncall,=cmd,red\n100,fine,\n,\"a, b\",blue\n9,2,3,4\n7,in\"ch,\n")
	if len(r.Refused) != 4 {
		t.Fatalf("%+v", r.Refused)
	}
	text := string(table.WriteRefused(r.Header(), r.Refused))
	second := parsed(t, text)
	if len(second.Refused) != 3 || len(second.Rows) != 1 { // the row of four cells now has three and can be read
		t.Fatalf("%s\n%+v", text, second)
	}
	if third := string(table.WriteRefused(second.Header(), second.Refused)); strings.Count(third, "refused: line") != 1 {
		t.Fatalf("the reasons pile up:\n%s", third)
	}
	mended := strings.NewReplacer("call", "12500", "\n,", "\n900,").Replace(text)
	r = parsed(t, mended)
	if len(r.Rows) != 3 || r.Rows[0].Price != 1250000 || r.Rows[0].Note != "=cmd" || r.Rows[1].Note != "a, b" ||
		r.Rows[0].More["colour"] != "red" || len(r.Rows[0].More) != 1 {
		t.Fatalf("%s\n%+v", mended, r)
	}
}
