package runlist

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/cell"
	"walkline/store/grid"
	"walkline/store/table"
	"walkline/valuation/lot"
)

// harrow is a run list of an invented sale: three good rows, and four that are not.
const harrow = "Lot #,Year,Make,Model,VIN,Odometer (mi),Title,Loss,Keys,Sale date,Grade of paint\n" +
	"14,2019,Ostrane,Pell,0HKDN2SB0JH000271,\"61,200\",Salvage,front,yes,28/11/2026,B\n" +
	"15,2017,Kettrick,Dunlin,,98000 km,clear,\"Water, hail\",no,28/11/2026,\n" +
	"16,20x7,Kettrick,Dunlin,,98000,clear,side,maybe,28/11/2026,\n" +
	"14,2019,Ostrane,Pell,,61200,salvage,front,yes,28/11/2026,\n" +
	",2015,Morrowby,Siskin,,,,,,,\n" +
	"17,2015,Morrowby,Siskin,,,,odd noises,,28/11/2026,\n" +
	"18,2015,Morrowby,Siskin,,,,,,31/02/2026,\n"

// listed is a list with its rows as lots.
type listed struct {
	table.Result[Row]
	Lots []lot.Lot
}

func parsed(t *testing.T, text string, s table.Stated) listed {
	t.Helper()
	res, err := read(text, s)
	if err != nil {
		t.Fatal(err)
	}
	return res
}

func read(text string, s table.Stated) (listed, error) {
	g, err := grid.Read([]byte(text), grid.Options{})
	if err != nil {
		return listed{}, err
	}
	res, err := table.Read(Lists(), g, s)
	l := listed{Result: res}
	for _, r := range res.Rows {
		l.Lots = append(l.Lots, r.Lot)
	}
	return l, err
}

func TestColumnsAreMatchedByName(t *testing.T) {
	want := []string{"number", "model_year", "make", "model", "vin", "odometer", "document", "loss", "keys", "sale_date", table.Ignored}
	res := parsed(t, harrow, table.Stated{})
	for i, c := range res.Columns {
		if c.Field != want[i] {
			t.Errorf("%q is read as %s, want %s", c.Heading, c.Field, want[i])
		}
	}
	if res.Settled.Dates != cell.DayFirst || res.Settled.Unit != "mi" || len(res.Open) > 0 {
		t.Errorf("%+v, open %v", res.Settled, res.Open)
	}
	want[1] = "number"
	if _, err := read(harrow, table.Stated{Match: want}); err == nil || !strings.Contains(err.Error(), "both matched to number") {
		t.Errorf("two numbers: %v", err)
	}
	want[0], want[1], want[4] = table.Ignored, "model_year", table.Ignored
	if res := parsed(t, harrow, table.Stated{Match: want}); len(res.Open) != 1 || !strings.Contains(res.Open[0].Text, "number or vin") {
		t.Errorf("neither number nor VIN: %v", res.Open)
	}
}

func TestRowsBecomeLotsOrAreRefusedWithReasons(t *testing.T) {
	res := parsed(t, harrow, table.Stated{Sale: "Harrow Flats yard"})
	if res.Read != 7 || len(res.Lots) != 3 || len(res.Refused) != 4 {
		t.Fatalf("%d read, %d lots, refused %+v", res.Read, len(res.Lots), res.Refused)
	}
	miles, has := 61200, true
	want := lot.Lot{Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", VIN: "0HKDN2SB0JH000271", ModelYear: 2019,
		Make: "Ostrane", Model: "Pell",
		Odometer: &miles, OdometerUnit: "mi", Loss: []string{"collision"}, Keys: &has, Title: lot.Title{Document: "salvage"}}
	if !reflect.DeepEqual(res.Lots[0], want) {
		t.Errorf("got  %+v\nwant %+v", res.Lots[0], want)
	}
	if l := res.Lots[1]; *l.Odometer != 98000 || l.OdometerUnit != "km" || !slices.Equal(l.Loss, []string{"flood", "hail"}) || *l.Keys {
		t.Errorf("the second lot is %+v", l)
	}
	if l := res.Lots[2]; l.Number != "17" || !slices.Equal(l.Loss, []string{"other"}) || l.Odometer != nil || l.Keys != nil {
		t.Errorf("the last lot is %+v", l)
	}
	for i, want := range []string{"a model year is four digits", "the same lot as line 2", "would not be known again",
		"no day of the calendar"} {
		r := res.Refused[i]
		if r.Line != []int{4, 5, 6, 8}[i] {
			t.Errorf("refusal %d is of line %d", i, r.Line)
		}
		if !strings.Contains(r.Faults[0].String(), want) {
			t.Errorf("line %d: %v, want %q", r.Line, r.Faults, want)
		}
	}
	if n := len(res.Refused[0].Faults); n != 2 {
		t.Errorf("a row with two bad cells has %d faults", n)
	}
}

// What was refused can be set right in the file that names it, and comes in beside the rest.
func TestRefusedRowsCanBeCorrected(t *testing.T) {
	res := parsed(t, harrow, table.Stated{})
	again := strings.ReplaceAll(string(table.WriteRefused(res.Header(), res.Refused[:1])), "20x7", "2017")
	again = strings.ReplaceAll(again, "maybe", "no")
	set := parsed(t, again, table.Stated{Dates: cell.DayFirst})
	if len(set.Lots) != 1 || set.Lots[0].Number != "16" || set.Lots[0].ModelYear != 2017 {
		t.Errorf("corrected: %+v", set)
	}
}

// What one cell says holds for that cell; the silent ones are asked for, unless half of all cells at least say one unit.
func TestOneCellsUnitIsNotTheColumns(t *testing.T) {
	res := parsed(t, "lot,odometer\n1,77k\n2,61200\n3,\"8,400 km\"\n", table.Stated{})
	if len(res.Open) != 1 || res.Open[0].Key != "unit" {
		t.Errorf("open: %+v", res.Open)
	}
	res = parsed(t, "lot,odometer\n1,77k\n2,61200\n3,\"8,400 km\"\n", table.Stated{Unit: "mi"})
	if len(res.Lots) != 3 || res.Lots[0].OdometerUnit != "mi" || *res.Lots[0].Odometer != 77000 || res.Lots[2].OdometerUnit != "km" ||
		len(res.Notes) != 1 {
		t.Errorf("%+v, %q", res.Lots, res.Notes)
	}
	res = parsed(t, "lot,odometer\n1,1 km\n2,2 km\n3,3 km\n4,4 km\n5,5 km\n6,6 km\n7,7 km\n8,8 km\n"+
		"9,9 km\n10,61200\n", table.Stated{})
	if len(res.Open) > 0 || len(res.Lots) != 10 || res.Lots[9].OdometerUnit != "km" {
		t.Errorf("%+v, %+v", res.Open, res.Lots)
	}
}

func TestUnitsInTheCellTheColumnAndTheOption(t *testing.T) {
	for name, c := range map[string]struct{ text, want string }{
		"the cell":   {"lot,odometer\n1,61200 km\n", "km"},
		"the column": {"lot,odometer,unit\n1,61200,Km\n", "km"},
		"the option": {"lot,odometer\n1,61200\n", "mi"},
	} {
		res := parsed(t, c.text, table.Stated{Unit: "mi"})
		if len(res.Lots) != 1 || *res.Lots[0].Odometer != 61200 || res.Lots[0].OdometerUnit != c.want {
			t.Errorf("%s: %+v %+v", name, res.Lots, res.Refused)
		}
	}
}

// The mark between thousands needs no question: an odometer has no decimals.
func TestMarksAreThoseThatReadWholeNumbers(t *testing.T) {
	for written, want := range map[string]int{"\"61,200\"": 61200, "61.200": 61200, "61 200": 61200, "61'200": 61200, "61200": 61200} {
		res := parsed(t, "lot,odometer (km)\n1,"+written+"\n", table.Stated{})
		if len(res.Open) > 0 || len(res.Lots) != 1 || *res.Lots[0].Odometer != want || res.Lots[0].OdometerUnit != "km" {
			t.Errorf("%s: %+v, open %v", written, res.Lots, res.Open)
		}
	}
}

func TestTheSameListTwiceChangesNothing(t *testing.T) {
	lots := parsed(t, harrow, table.Stated{}).Lots
	first := Meet(nil, lots)
	if len(first.New) != 3 || first.Same+len(first.Changed) != 0 {
		t.Fatalf("%+v", first)
	}
	again := Meet(kept(lots), lots)
	if again.Same != 3 || len(again.New)+len(again.Changed)+len(again.Left) != 0 {
		t.Errorf("%+v", again)
	}
}

// kept are lots as a store has them, with the words for what is not known.
func kept(lots []lot.Lot) []Known {
	var known []Known
	for i, l := range lots {
		if l.OdometerStatus == "" {
			l.OdometerStatus = "unknown"
		}
		if l.Condition == "" {
			l.Condition = "unknown"
		}
		known = append(known, Known{ID: int64(i + 1), State: lot.ToLookAt, Lot: l})
	}
	return known
}

func TestAListFillsInAndMovesAndLeavesWhatTheBuyerSaw(t *testing.T) {
	miles, fewer := 61200, 60000
	have := kept([]lot.Lot{{Number: "14", Sale: "Harrow Flats yard", SaleDate: "2026-11-28", VIN: "0HKDN2SB0JH000271",
		Odometer: &miles, OdometerUnit: "mi", Make: "Ostrane"}})
	says := lot.Lot{Number: "22", Sale: "harrow flats yard", SaleDate: "2026-12-05", VIN: "0HKDN2SB0JH000271", Odometer: &fewer,
		OdometerUnit: "mi", Model: "Pell", Condition: "starts"}
	m := Meet(have, []lot.Lot{says})
	if len(m.Changed) != 1 || m.Changed[0].ID != 1 {
		t.Fatalf("%+v", m)
	}
	l := m.Changed[0].Lot
	if l.Number != "22" || l.SaleDate != "2026-12-05" || l.Sale != "Harrow Flats yard" || l.Model != "Pell" ||
		l.Condition != "starts" || l.OdometerStatus != "unknown" || *l.Odometer != 61200 {
		t.Errorf("the lot becomes %+v", l)
	}
	if want := []string{"lot 14: odometer is 61200 mi here, 60000 mi on the list"}; !slices.Equal(m.Left, want) {
		t.Errorf("left %q", m.Left)
	}
	have[0].State = lot.Lost
	if m := Meet(have, []lot.Lot{says}); len(m.New) != 1 {
		t.Errorf("a vehicle that comes up again after its sale: %+v", m)
	}
	other := says
	other.VIN, other.Number, other.SaleDate = "0HKDN2SB0JH000999", "14", "2026-11-28"
	if m := Meet(kept([]lot.Lot{have[0].Lot}), []lot.Lot{other}); len(m.New) != 1 {
		t.Errorf("the same number with another VIN: %+v", m)
	}
}

func FuzzParse(f *testing.F) {
	f.Add(harrow)
	f.Add("lot,odometer\n1,\n")
	f.Fuzz(func(t *testing.T, text string) {
		res, err := read(text, table.Stated{Unit: "mi"})
		if err == nil && res.Read != len(res.Lots)+len(res.Refused) {
			t.Errorf("%d read, %d lots, %d refused", res.Read, len(res.Lots), len(res.Refused))
		}
		if again := Meet(kept(res.Lots), res.Lots); len(again.New)+len(again.Changed) > 0 {
			t.Errorf("the same list again: %+v", again)
		}
	})
}

// TestHowAVehicleRunsIsToldInWords reads what people write. Common practice, no source.
func TestHowAVehicleRunsIsToldInWords(t *testing.T) {
	for text, want := range map[string]string{
		"Runs and drives": "drives", "starts, does not drive": "starts", "does not drive": "", "cranks no start": "turns_over",
		"drives fine": "drives", "Driveable": "drives", "Running": "starts", "engine runs": "starts",
		"Doesn't run": "dead", "won’t start": "dead", "does not run": "dead", "turns over": "turns_over",
		"runs but does not drive": "", "starts with a boost": "", "would not crank": "", "R": "", "not tested": "unknown", "was running": "",
	} {
		if got := conditionOf(text); got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}

// TestShortHeadingsAndTwoColumnsOfDamage reads headings in the trade's short forms, and damage that stands in two columns.
func TestShortHeadingsAndTwoColumnsOfDamage(t *testing.T) {
	r := parsed(t, "Lot,Yr,Make,Model,Odo,Dmg,Other dmg,Runs\n7,2016,Tallow,Ridgeback,\"78,120 mi\",front end,left side,runs and drives\n",
		table.Stated{})
	if len(r.Lots) != 1 || r.Lots[0].ModelYear != 2016 || r.Lots[0].Odometer == nil || *r.Lots[0].Odometer != 78120 ||
		r.Lots[0].Condition != "drives" || !slices.Equal(r.Rows[0].Areas, []string{"12", "09"}) {
		t.Fatalf("%+v, %+v", r.Lots, r.Result)
	}
}

// Places as a person reads them; common practice, no source.
func TestPlacesInShortFormsAndJoinedWords(t *testing.T) {
	for text, want := range map[string][]string{"LF": {"11"}, "RR corner": {"05"}, "linksvoor": {"11"}, "rechtsachter": {"05"},
		"achterzijde": {"06"}, "laterale sx": {"09"}, "front (not rear)": {"12"}, "no damage front": nil, "latéral gauche": {"09"},
		"ant. dx": {"01"}} {
		if got, _ := areasOf(text); !slices.Equal(got, want) {
			t.Errorf("%q is %q, want %q", text, got, want)
		}
	}
}
