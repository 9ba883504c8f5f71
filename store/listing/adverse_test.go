package listing_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"walkline/store/listing"
)

// adverse are texts that say less than they seem to. The listings are invented; what each says was read by a person and written down by
// hand: the facts, each by its field and its words, and how many pieces are left.
var adverse = []struct {
	text  string
	facts string
	left  int
}{
	{"Odometer: 88,412 mi\nEngine replaced at 120,000 mi\nRuns and drives", "Odometer=88412 mi|Runs?=drives", 1},
	{"61,200 miles, new engine with 20,000 miles", "Odometer=61200 mi", 1},
	{"Delivery 250 miles, towed 30 miles, 2012 Tarn Siskin 61,200 miles", "Odometer=61200 mi|Model year=2012|Make=Tarn|Model=Siskin", 2},
	{"Odometer: 61,200 mi\nMileage: 98,490 km\nOdometer: NOT ACTUAL", "Odometer statement=not actual", 2},
	{"Odometer: 61,200 mi, mileage: 61,200 mi", "Odometer=61200 mi", 0},
	{"not a salvage title", "", 1},
	{"Not salvage, clean title in hand", "Title document=clear", 2},
	{"Clear title, was salvage before, rebuilt transmission, engine rebuilt", "Title document=clear", 3},
	{"Title: Salvage (OH)\nTitle: Clear", "", 3},
	{"salvage yard find, junk in trunk, parts only included", "", 3},
	{"2017 Ostrane Pell salvage, key: none, keys: 2", "Title document=salvage|Model year=2017|Make=Ostrane|Model=Pell", 2},
	{"VIN 1HKDN2SB0JH000271\nVIN 0HKDN2SB0JH000271", "", 2},
	{"Never flooded. Hail damage: none. No heavy front damage. No accident. Accident free", "", 5},
	{"no damage to the frame, rear not damaged, undercarriage damage no", "", 3},
	{"rear collision warning, front collision braking system, anti theft system, front end alignment done", "", 4},
	{"engine light on, tail light rear, left side light, light front damage", "Damage=minor, skin", 3},
	{"front wheels bent, rear wheels missing, electric windows, diesel heater, gas cap missing", "", 5},
	{"2.0L diesel, AWD, electric motor", "Engine, kept with the trim=2.0L|Driven wheels=AWD", 2},
	{"2.0L engine, diesel engine, Interior\nblack cloth", "Engine, kept with the trim=2.0L|Powertrain=diesel engine", 3},
	{"Runs and drives? No\nKeys: Yes", "Keys=yes", 1},
	{"does not run and drive", "Runs?=dead", 1},
	{"was running when parked, now dead", "", 2},
	{"front airbags deployed, side airbags deployed", "Airbags deployed=front|Airbags deployed=side", 0},
	{"Sale: Harrow Flats\nLocation: Lane B", "", 2},
	{"Marke: Kettrick\nnicht fahrbereit\nSchaden: unfallfrei", "Make=Kettrick", 2},
	{"Schaden: vorne links\nspringt nicht an\nSchlüssel: ja", "Damage=functional, bolted (a guess: look at it)|Runs?=dead|Keys=yes", 0},
	{"Marque : Ostrane\nne roule pas\nClés : non", "Make=Ostrane|Keys=no", 1},
	{"Modelo: Siskin\nno circula\nLlaves: sí", "Model=Siskin|Keys=yes", 1},
	{"Model: Siskin\nnie jezdzi\nKluczyki: brak", "Model=Siskin|Keys=no", 1},
	{"Model: Dunlin\nrijdt niet\nSleutels: geen", "Model=Dunlin|Keys=no", 1},
	{"Modello: Garnet\nnon marciante\nChiavi: sì", "Model=Garnet|Keys=yes", 1},
}

func TestATextThatSaysLessThanItSeemsIsNotBelieved(t *testing.T) {
	for _, a := range adverse {
		f, err := listing.Read(a.text)
		var facts []string
		for _, x := range f.Facts {
			facts = append(facts, x.Field+"="+x.Words)
		}
		slices.Sort(facts)
		want := strings.Split(a.facts, "|")
		if slices.Sort(want); a.facts == "" {
			want = nil
		}
		if err != nil || !slices.Equal(facts, want) || len(f.Left) != a.left {
			t.Errorf("%q:\n is   %s\n want %s\n left %d of %d: %q, %v", a.text, strings.Join(facts, "|"), fmt.Sprint(want), len(f.Left), a.left,
				f.Left, err)
		}
	}
}
