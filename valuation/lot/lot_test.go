package lot_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"walkline/valuation/lot"
)

func records(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("../../testdata/reference/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

// Source: 49 CFR 565.15(c) sample table, NHTSA's worked example and other published ones, as listed in vin_examples.csv.
func TestPublishedVINs(t *testing.T) {
	for _, r := range records(t, "vin_examples.csv") {
		v := lot.ReadVIN(r[0])
		if v.Problem != "" || string(v.Check) != r[4] || !v.Digit {
			t.Errorf("%s: %+v, want check digit %s (%s)", r[0], v, r[4], r[6])
		}
	}
	if v := lot.ReadVIN("1G4AH59H45G118331"); v.Digit || v.Check != '1' {
		t.Errorf("one changed character: %+v, want the call for 1", v) // sum 408, 408 mod 11 = 1
	}
}

// Source: 49 CFR 565.15(d) table VII, as listed in vin_year_codes.csv.
func TestModelYearCodes(t *testing.T) {
	for _, r := range records(t, "vin_year_codes.csv") {
		for col, seventh := range map[int]string{1: "5", 2: "H"} {
			want, _ := strconv.Atoi(r[col])
			if v := lot.ReadVIN("1G4AH5" + seventh + "H0" + r[0] + "G118341"); v.Likely != want {
				t.Errorf("code %s, position 7 %s: %d, want %d", r[0], seventh, v.Likely, want)
			}
		}
	}
	for _, code := range []string{"U", "Z", "0"} {
		if v := lot.ReadVIN("1G4AH59H4" + code + "G118341"); v.Years != [2]int{} {
			t.Errorf("%s is no year code, got %v", code, v.Years)
		}
	}
}

func TestUnreadableVINs(t *testing.T) {
	for _, s := range []string{"", "1G4AH59H45G11834", "1G4AH59H45G1183411", "IG4AH59H45G118341", "1G4AH59H45G11834O", "1G4AH59H45G1183é1"} {
		if lot.ReadVIN(s).Problem == "" {
			t.Errorf("%q was read", s)
		}
	}
}

func TestDates(t *testing.T) {
	if _, err := lot.ParseDate("2026-02-30"); err == nil {
		t.Error("30 February passed")
	}
	if n, ok := lot.Date("2026-02-27").Days("2026-03-01"); !ok || n != 2 {
		t.Errorf("27 February to 1 March 2026: %d days", n)
	}
	if _, ok := lot.Date("").Days("2026-03-01"); ok {
		t.Error("an unknown day was counted from")
	}
}

func TestSigns(t *testing.T) {
	l := lot.Lot{Loss: []string{"collision"}, Condition: "starts", Airbags: []string{"front"}}
	survey := []lot.Damage{{Area: "12", Extent: "functional", Depth: "bolted"}, {Area: "03", Extent: "minor", Depth: "skin"}}
	for _, w := range []struct {
		sign  lot.Sign
		cells int
		ok    bool
	}{
		{lot.Sign{}, 0, false},
		{lot.Sign{Areas: []string{"12", "11"}}, 1, true},
		{lot.Sign{Areas: []string{"12"}, Depths: []string{"skin"}}, 0, false}, // one cell has to meet both
		{lot.Sign{Depths: []string{"skin", "bolted"}}, 2, true},
		{lot.Sign{Loss: []string{"flood"}}, 0, false},
		{lot.Sign{Loss: []string{"flood", "collision"}, Airbags: []string{"front"}}, 0, true},
		{lot.Sign{State: []string{"dead"}, Areas: []string{"12"}}, 0, false},
	} {
		cells, ok := w.sign.Match(&l, survey)
		if ok != w.ok || len(cells) != w.cells {
			t.Errorf("%+v: %d cells, %v", w.sign, len(cells), ok)
		}
	}
}

// Model years run ahead of the calendar: on a day in 2026 a 2028 may be for sale, a 2029 may not.
func TestLatestModelYear(t *testing.T) {
	if got := lot.LatestModelYear("2026-11-20"); got != 2028 {
		t.Errorf("latest model year in 2026: %d", got)
	}
	if got := lot.LatestModelYear(""); got != lot.LastModelYear {
		t.Errorf("latest model year on no day: %d", got)
	}
}
