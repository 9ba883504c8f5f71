package lot_test

import (
	"testing"

	"walkline/valuation/lot"
)

// Source: 49 CFR 580.17 with its own examples: in 2020 model year 2010 and older are exempt; in 2031 model year 2011 is.
func TestOdometerExemptionAtBothSidesOfEachDay(t *testing.T) {
	for _, r := range []struct {
		year   int
		on     lot.Date
		exempt bool
	}{
		{2010, "2019-12-31", false}, {2010, "2020-01-01", true}, {2009, "2019-01-01", true}, {2009, "2018-12-31", false},
		{2011, "2021-01-01", false}, {2011, "2030-12-31", false}, {2011, "2031-01-01", true}, {2019, "2038-12-31", false},
		{2019, "2039-01-01", true},
	} {
		if got, known := lot.OdometerExempt(r.year, r.on); got != r.exempt || !known {
			t.Errorf("model year %d on %s: exempt %v, known %v", r.year, r.on, got, known)
		}
	}
	if _, known := lot.OdometerExempt(0, "2020-01-01"); known {
		t.Error("known without a model year")
	}
	if _, known := lot.OdometerExempt(2010, ""); known {
		t.Error("known without a day")
	}
}

// Source: niem6_aamva_d20_brand_codes.csv (AAMVA D20 as published in NIEM 6.0, CC BY 4.0).
func TestBrandsAreThoseOfD20(t *testing.T) {
	n := 0
	for _, r := range records(t, "niem6_aamva_d20_brand_codes.csv") {
		if r[0] != "BrandCodeSimpleType" {
			continue
		}
		if n >= len(lot.Brands) || lot.Brands[n] != (lot.Brand{Code: r[1], Words: r[2]}) {
			t.Errorf("brand %d is not %s %s", n, r[1], r[2])
		}
		n++
	}
	if n != len(lot.Brands) {
		t.Errorf("%d brands, the list has %d", len(lot.Brands), n)
	}
	for word, code := range map[string]string{"flood": "01", "Flood Damage": "01", "parts_only": "35", "salvage": "11", "non conformity": "",
		"clean": "", "": "", "08": "08"} {
		b, ok := lot.BrandOf(word)
		if b.Code != code || ok != (code != "") {
			t.Errorf("%q: %+v, %v", word, b, ok)
		}
	}
}

// Every brand of D20 is a word that the list knows (source: as above), and those that forbid the road are the three that say so.
func TestPaperOfTheBrands(t *testing.T) {
	for _, b := range lot.Brands {
		want := lot.Known
		if b.Code == "07" || b.Code == "08" || b.Code == "35" {
			want = lot.Dead
		}
		if got := lot.ReadPaper(b.Words); got != want {
			t.Errorf("%s %s: %d, want %d", b.Code, b.Words, got, want)
		}
	}
	for words, want := range map[string]lot.Paper{"": lot.NoPaper, " - ": lot.NoPaper, "title not yet known": lot.Unknown,
		"Bill of sale": lot.Untitled, "blue form": lot.Unheard, "non conformity": lot.Unheard} {
		if got := lot.ReadPaper(words); got != want {
			t.Errorf("%q: %d, want %d", words, got, want)
		}
	}
}
