package listing_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"walkline/store/listing"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// The listings are invented, in the ways that people write them; what each says was read by a person and written down by hand. The VIN is
// ours and has the check digit of 49 CFR 565.15.
var listings = []struct {
	text string
	want lot.Lot
	hurt string // areas with extents
	left string // a piece that is not understood
}{
	{text: "Lot 14. 2017 Ostrane Pell S 2.0L 4-cyl FWD, 61,200 miles, salvage title, front end damage, runs and drives, no keys. " +
		"VIN 0HKDN2SB0JH000271",
		want: lot.Lot{Number: "14", ModelYear: 2017, Make: "Ostrane", Model: "Pell", Trim: "S 2.0L 4-cyl", VIN: "0HKDN2SB0JH000271",
			Odometer: new(61200), OdometerUnit: "mi", Title: lot.Title{Document: "salvage"}, Condition: "drives", Keys: new(false)},
		hurt: "12 functional"},
	{text: "Year: 2018\nMake: Kettrick\nModel: Dunlin\nTrim: Plus\nOdometer: 83,900 mi (ACTUAL)\nTitle: Salvage certificate\nLoss: " +
		"Collision\n" +
		"Damage: left side, rear\nRuns: yes\nKeys: yes\nEngine: 2.5 L hybrid\nDrive: all wheel drive\nColor: green\nSale date: Nov 30, 2026",
		want: lot.Lot{ModelYear: 2018, Make: "Kettrick", Model: "Dunlin", Trim: "Plus 2.5 L", Odometer: new(83900), OdometerUnit: "mi",
			OdometerStatus: "actual", Title: lot.Title{Document: "salvage"}, Loss: []string{"collision"}, Condition: "starts", Keys: new(true),
			SaleDate: "2026-11-30"},
		hurt: "09 functional|06 functional", left: "Color: green"},
	{text: "Vehicle\n2015 Morrowby Siskin\nOdometer\n98 000 km\nTitle\nclear\nCause of damage\nhail\nKeys\nunknown\nReserve not met",
		want: lot.Lot{ModelYear: 2015, Make: "Morrowby", Model: "Siskin", Odometer: new(98000), OdometerUnit: "km",
			Title: lot.Title{Document: "clear"}, Loss: []string{"hail"}}, left: "Reserve not met"},
	{text: "2019 Ostrane Garnet SE AWD; heavy front damage; minor scratches right rear; front and driver knee airbags deployed; " +
		"won't start; keys present; parts only title; 44k mi",
		want: lot.Lot{ModelYear: 2019, Make: "Ostrane", Model: "Garnet", Trim: "SE", Odometer: new(44000), OdometerUnit: "mi",
			Title: lot.Title{Document: "parts only"}, Condition: "dead", Keys: new(true), Airbags: []string{"front", "knee"}},
		hurt: "12 disabling|05 minor"},
	{text: "water damage, recovered theft title, front wheel drive, rear camera, automatic transmission, brand new tires, dead battery",
		want: lot.Lot{Title: lot.Title{Brands: []string{"recovered theft"}}, Loss: []string{"flood"}}, left: "dead battery"},
	{text: "61,200", left: "61,200"}, // of what, and in which unit?
	{text: "no title, bill of sale only", want: lot.Lot{Title: lot.Title{Document: "bill of sale"}}},
}

func TestAListingIsReadAsAPersonReadsIt(t *testing.T) {
	for _, l := range listings {
		f, err := listing.Read(l.text)
		if err != nil {
			t.Fatal(err)
		}
		if !reflect.DeepEqual(f.Lot, l.want) {
			t.Errorf("%q:\n is   %+v\n want %+v", l.text, f.Lot, l.want)
		}
		var marks []string
		for _, d := range f.Damage {
			marks = append(marks, d.Area+" "+d.Extent)
		}
		if got := strings.Join(marks, "|"); got != l.hurt {
			t.Errorf("%q: damage %s, want %s", l.text, got, l.hurt)
		}
		if l.left != "" && !slices.Contains(f.Left, l.left) || l.left == "" && len(f.Left) > 1 {
			t.Errorf("%q: left %q, want %q", l.text, f.Left, l.left)
		}
	}
}

// A reading that can't be taken is said, whatever is stated of it; its statement is taken all the same.
func TestAReadingWithoutAUnitIsLeftAndSaid(t *testing.T) {
	for text, status := range map[string]string{"Odometer: 88,123": "", "Odometer: 88,123 actual": "actual",
		"Odometer: 88,123 N": "not_actual", "Odometer: 9,000,000 mi TMU": "not_actual", "Mileage: 61,200.5 mi": "", "Miles: exempt": "exempt"} {
		f, err := listing.Read(text)
		said := slices.ContainsFunc(f.Left, func(s string) bool { return strings.HasPrefix(s, text+" (") })
		if err != nil || f.Lot.OdometerStatus != status || f.Lot.Odometer != nil || said == (status == "exempt") {
			t.Errorf("%q: %+v, left %q, %v", text, f.Lot, f.Left, err)
		}
	}
}

func TestWhatIsKnownStaysAndIsTold(t *testing.T) {
	c := valuation.Defaults()
	c.Lot.Make, c.Lot.Title.Document, c.Lot.Number = "Tarn", lot.NotYetKnown, "9"
	c.Damage = []lot.Damage{{Area: "12", Extent: "disabling", Depth: "structure"}}
	got, f, err := listing.Fill(c, listings[0].text)
	if err != nil {
		t.Fatal(err)
	}
	if got.Lot.Make != "Tarn" || got.Lot.Number != "9" || got.Damage[0].Extent != "disabling" || len(got.Damage) != 1 {
		t.Errorf("what was known is gone: %+v %+v", got.Lot, got.Damage)
	}
	if got.Lot.Title.Document != "salvage" || got.Lot.Model != "Pell" || *got.Lot.Odometer != 61200 || got.Survey.Driven != "front" {
		t.Errorf("what was not known is not filled: %+v", got.Lot)
	}
	if !slices.ContainsFunc(f.Left, func(s string) bool { return strings.Contains(s, "make is Tarn here, Ostrane on the list") }) {
		t.Errorf("left: %q", f.Left)
	}
	if faults := got.Check(); slices.ContainsFunc(faults, func(x valuation.Fault) bool {
		return x.Key != "resale" && x.Key != "rules" &&
			x.Key != "valued_on" && !strings.HasPrefix(x.Key, "buying") && x.Key != "currency"
	}) {
		t.Errorf("faults: %v", faults)
	}
}

// FuzzListing: whatever is pasted, nothing panics, and what is read lies within the lot's bounds.
func FuzzListing(f *testing.F) {
	for _, l := range listings {
		f.Add(l.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got, err := listing.Read(text)
		if err != nil {
			return
		}
		if o := got.Lot.Odometer; o != nil && (*o < 0 || *o > lot.MostMileage || got.Lot.OdometerUnit == "") {
			t.Fatalf("%q: odometer %d %s", text, *o, got.Lot.OdometerUnit)
		}
		if y := got.Lot.ModelYear; y != 0 && (y < lot.FirstModelYear || y > lot.LastModelYear) {
			t.Fatalf("%q: year %d", text, y)
		}
		for _, d := range got.Damage {
			if !slices.Contains(lot.Areas, d.Area) || !slices.Contains(lot.Extents, d.Extent) || !slices.Contains(lot.Depths, d.Depth) {
				t.Fatalf("%q: %+v", text, d)
			}
		}
	})
}
