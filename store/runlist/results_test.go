package runlist

import (
	"testing"

	"walkline/store/table"
	"walkline/valuation/lot"
)

// Result lists as they come in seven languages, by what a reader of each makes of them. The words for a hammer price and the manners of
// numbers are common in each trade (from memory).
func TestResultListsInOtherLanguages(t *testing.T) {
	for language, c := range map[string]struct{ text, currency string }{
		"English": {"Lot,Year,Make,Model,Odometer (km),Sale date,Sold for\n14,2019,Ostrane,Pell,\"61,200\",2026-11-28,\"USD 3,900\"\n", "USD"},
		"German": {"Los;Baujahr;Marke;Modell;Kilometerstand (km);Auktionsdatum;Zuschlagspreis\n" +
			"14;2019;Ostrane;Pell;61.200;28.11.2026;3.900,00 €\n", "EUR"},
		"French": {"Lot;Année;Marque;Modèle;Kilométrage (km);Date de vente;Adjugé à\n" +
			"14;2019;Ostrane;Pell;61 200;28/11/2026;3 900,00 €\n", "EUR"},
		"Spanish": {"Lote;Año;Marca;Modelo;Kilometraje (km);Fecha de subasta;Precio de adjudicación\n" +
			"14;2019;Ostrane;Pell;61.200;28/11/2026;3.900,00 €\n", "EUR"},
		"Polish": {"Numer;Rok;Marka;Model;Przebieg (km);Data aukcji;Cena wylicytowana\n" +
			"14;2019;Ostrane;Pell;61 200;28.11.2026;3 900,00 zł\n", "PLN"},
		"Dutch": {"Kavel;Bouwjaar;Merk;Model;Kilometerstand (km);Veilingdatum;Hamerprijs\n" +
			"14;2019;Ostrane;Pell;61.200;28-11-2026;€ 3.900,00\n", "EUR"},
		"Italian": {"Lotto;Anno;Marca;Modello;Chilometraggio (km);Data asta;Prezzo di aggiudicazione\n" +
			"14;2019;Ostrane;Pell;61.200;28/11/2026;3.900,00 €\n", "EUR"},
	} {
		res, err := read(c.text, table.Stated{})
		if err != nil || len(res.Open) > 0 || len(res.Refused) > 0 || len(res.Rows) != 1 {
			t.Errorf("%s: %v, open %+v, refused %+v, %d rows", language, err, res.Open, res.Refused, len(res.Rows))
			continue
		}
		r := res.Rows[0]
		if r.Hammer != 390_000 || r.Currency != c.currency || r.Lot.Number != "14" || r.Lot.ModelYear != 2019 || r.Lot.Make != "Ostrane" ||
			r.Lot.Model != "Pell" || r.Lot.SaleDate != lot.Date("2026-11-28") || r.Lot.Odometer == nil || *r.Lot.Odometer != 61_200 {
			t.Errorf("%s is read as %+v, columns %+v", language, r, res.Columns)
		}
	}
}
