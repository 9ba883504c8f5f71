package runlist

import (
	"cmp"
	"fmt"
	"strings"

	"walkline/store/cell"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Row is a lot as a run list tells of it.
type Row struct {
	Lot            lot.Lot
	Areas          []string // damaged, codes of lot.Areas
	ValueBefore    money.Amount
	RepairEstimate money.Amount
	Hammer         money.Amount // what it went for; 0: the list doesn't say
	Currency       string       // of all three; empty: the list has no money
	Note           string
	unitSaid       string      // by a column of units
	unsure         error       // why the year of a vehicle's cell may be none; nil: it is one, or a column says it
	unitOver       string      // by the heading or the whole column of the odometer
	reading        cell.Length // of the odometer, as its cell says it
	lane           string      // in which its number counts
}

// Lists are run lists. No two rows of one list name the same lot.
func Lists() *table.Kind[Row] {
	seen := map[string]int{}
	return &table.Kind[Row]{Columns: columns, Need: []string{"number", "vin"}, Split: split,
		Whole: func(r *Row, line int, s *table.Stated) error { return whole(r, line, s, seen) }}
}

type column = table.Column[Row]

// columns are the facts of a lot, each with the plain words that name it. Common practice, no source.
var columns = []column{
	table.InText("number", "lot number|lot|no|nr|number|run number|run|run order|item|item number|losnummer|los|nummer|numero de "+
		"lot|lote|numero de "+
		"lote|numero|numer|numer pozycji|kavel|kavelnummer|lotto|numero lotto",
		func(r *Row) *string { return &r.Lot.Number }),
	{Name: "lane", Words: "lane|lane number|bahn|spur|voie|carril|pas|baan|corsia", Put: func(r *Row, v table.Value) error {
		r.lane = v.Text
		return nil
	}},
	table.InText("sale", "sale|sale name|auction|yard|location|site|place|auktion|standort|ort|vente|lieu|subasta|lugar|aukcja|miejsce|"+
		"veiling|locatie|asta|luogo", func(r *Row) *string { return &r.Lot.Sale }),
	table.InDay("sale_date", "sale date|sale day|date|auction date|date of sale|day|when|auktionstag|auktionsdatum|verkaufsdatum|datum|tag|"+
		"date de vente|date de la vente|date d enchere|jour|fecha|fecha de subasta|fecha de venta|data|data aukcji|data sprzedazy|dzien|"+
		"veilingdatum|dag|data asta|data di vendita|giorno",
		func(r *Row) *lot.Date { return &r.Lot.SaleDate }),
	table.InYear("model_year", table.YearWords, func(r *Row) *int { r.unsure = nil; return &r.Lot.ModelYear }),
	{Name: "first_registration", Words: table.FirstRegistrationWords,
		Form: table.Year, Put: func(r *Row, v table.Value) error {
			if r.Lot.ModelYear == 0 {
				r.Lot.ModelYear = v.Year
			}
			return nil
		}},
	table.InText("make", table.MakeWords,
		func(r *Row) *string { return &r.Lot.Make }),
	table.InText("model", table.ModelWords, func(r *Row) *string { return &r.Lot.Model }),
	table.InText("trim", table.TrimWords,
		func(r *Row) *string { return &r.Lot.Trim }),
	{Name: "vehicle", Words: table.VehicleWords, Form: table.Vehicle},
	{Name: "vin", Words: table.VINWords,
		Put: func(r *Row, v table.Value) error {
			r.Lot.VIN = strings.ToUpper(strings.ReplaceAll(v.Text, " ", ""))
			return nil
		}, Get: func(r *Row) any { return orNil(r.Lot.VIN) }},
	{Name: "odometer", Words: table.OdometerWords,
		Form: table.Odometer, Put: putOdometer, Get: func(r *Row) any {
			if r.Lot.Odometer == nil {
				return nil
			}
			return fmt.Sprint(*r.Lot.Odometer)
		}},
	{Name: "unit", Words: table.UnitWords, Form: table.Unit,
		Put: func(r *Row, v table.Value) error { r.unitSaid = v.Unit; return nil },
		Get: func(r *Row) any { return orNil(r.Lot.OdometerUnit) }},
	{Name: "odometer_status", Words: "odometer status|odometer statement|mileage status|mileage statement|reading is",
		Put: func(r *Row, v table.Value) (err error) {
			status := cmp.Or(cell.StatusOf(v.Text), cell.StatusByLetter(v.Text))
			if r.Lot.OdometerStatus = status; status == "" {
				err = fmt.Errorf("none of actual, not actual, exceeds limits, exempt, unknown")
			}
			return err
		}, Get: func(r *Row) any { return orNil(r.Lot.OdometerStatus) }},
	{Name: "document", Words: "title document|document|doc|brand|title brand|title|title type|title " +
		"status|papers|dokument|papiere|brief|titre|papiers|carte " +
		"grise|titulo|documentacion|papeles|dokumenty|papiery|papieren|kenteken|titolo|documenti|libretto",
		Form: table.Title, Put: func(r *Row, v table.Value) error { r.Lot.Title.Document = v.Text; return nil },
		Get: func(r *Row) any { return orNil(r.Lot.Title.Document) }},
	table.InText("issued_in", "title issued in|title state|issued in|state of title|issued|ausgestellt in|delivre a|expedido en|wydany "+
		"w|afgegeven in|rilasciato in", func(r *Row) *string { return &r.Lot.Title.IssuedIn }),
	{Name: "loss", Words: "loss|loss type|type of loss|cause|cause of damage|kind of damage|schadensart|schadenart|ursache|cause du " +
		"sinistre|sinistre|siniestro|causa|rodzaj szkody|przyczyna|oorzaak|soort schade|tipo di danno",
		Put: func(r *Row, v table.Value) error { r.Lot.Loss = losses(v.Text); return nil },
		Get: func(r *Row) any { return listOrNil(r.Lot.Loss) }},
	{Name: "areas", Words: "damage|damaged|damaged area|damaged areas|area|areas|damage area|where damaged|schaden|schadensbereich|" +
		"beschadigt|dommages|degats|zone endommagee|dano|danos|zona danada|uszkodzenia|uszkodzenie|schade|danni|danno",
		Many: true, Put: putAreas, Get: func(r *Row) any { return listOrNil(r.Areas) }},
	{Name: "condition", Words: "condition|runs|drives|starts|does it run|zustand|fahrbereit|startet|etat|roulant|demarre|estado|" +
		"arranca|stan|jezdzi|odpala|staat|rijdt|condizioni|marciante|parte",
		Put: putCondition, Get: func(r *Row) any { return orNil(r.Lot.Condition) }},
	{Name: "keys", Words: "keys|key|has keys|key there|schlussel|cles|cle|llaves|llave|klucze|kluczyki|kluczyk|sleutels|sleutel|chiavi|" +
		"chiave", Put: func(r *Row, v table.Value) (err error) {
		has, known := cell.YesNo(v.Text)
		if r.Lot.Keys = &has; !known {
			err = fmt.Errorf("neither yes nor no")
		}
		return err
	}, Get: func(r *Row) any {
		if r.Lot.Keys == nil {
			return nil
		}
		return *r.Lot.Keys
	}},
	moneyColumn("value_before", "value before|value before loss|pre loss value|pre accident value|actual cash value|acv|book value|zeitwert|"+
		"valeur venale|valeur de remplacement|valor venal|wartosc rynkowa|valore commerciale|value before the damage|worth before|undamaged "+
		"value|est value|"+
		"estimated value|value estimate|retail value|est retail value|estimated retail value|market value|wert vor schaden|"+
		"wiederbeschaffungswert|valeur avant|valeur avant sinistre|valor antes|valor previo|wartosc przed|wartosc przed szkoda|waarde "+
		"voor schade|dagwaarde|valore prima|valore ante",
		func(r *Row) *money.Amount { return &r.ValueBefore }),
	moneyColumn("repair_estimate", "repair estimate|repair|repairs|naprawa|estimation reparation|estimate|repair cost|cost of "+
		"repair|estimated repair|est repair|est repair cost|repair "+
		"est|est cost of repair|reparaturkosten|estimation|"+
		"cout de reparation|cout des reparations|presupuesto|coste de reparacion|koszt naprawy|wycena naprawy|reparatiekosten|"+
		"preventivo|costo di riparazione",
		func(r *Row) *money.Amount { return &r.RepairEstimate }),
	moneyColumn("hammer", "hammer price|hammer|sold for|sold at|sold price|winning bid|final bid|went for|verkauft fur|vendu|vendu a|"+
		"vendido por|cena sprzedazy|sprzedano za|verkocht voor|venduto a|"+
		table.HammerWords,
		func(r *Row) *money.Amount { return &r.Hammer }),
	{Name: "currency", Words: table.CurrencyWords, Form: table.Currency},
	{Name: "note", Words: "note|notes|comment|comments|remarks|remark|announcements|announcement|notiz|bemerkung|" +
		"bemerkungen|remarque|remarques|observaciones|" +
		"nota|notas|uwagi|opmerking|opmerkingen|osservazioni", Many: true,
		Put: func(r *Row, v table.Value) error { r.noted(v.Text); return nil }, Get: func(r *Row) any { return orNil(r.Note) }},
}

// Lots returns the lots that rows of one list tell of, in their order, each with what the list says of it beside its facts.
func Lots(rows []Row) []lot.Lot {
	lots := make([]lot.Lot, len(rows))
	for i, r := range rows {
		says := lot.Listed{Areas: r.Areas, Note: r.Note, RunOrder: i + 1, ValueBefore: r.major(r.ValueBefore),
			RepairEstimate: r.major(r.RepairEstimate)}
		if says.ValueBefore != nil || says.RepairEstimate != nil {
			says.Currency = r.Currency
		}
		lots[i] = r.Lot
		lots[i].Listed = &says
	}
	return lots
}

// major returns an amount in major units of the row's currency, nil where the list says none.
func (r Row) major(a money.Amount) *float64 {
	currency, known := money.Lookup(r.Currency)
	if !known || a == 0 {
		return nil
	}
	x := currency.Major(a)
	return &x
}

func moneyColumn(name, words string, at func(*Row) *money.Amount) column {
	return column{Name: name, Words: words, Form: table.Money, Put: func(r *Row, v table.Value) error { *at(r) = v.Amount; return nil },
		Get: func(r *Row) any {
			currency, known := money.Lookup(r.Currency)
			if !known || *at(r) == 0 {
				return nil
			}
			return currency.Decimal(*at(r)).String()
		}}
}

func orNil(text string) any {
	if text == "" {
		return nil
	}
	return text
}

func listOrNil(list []string) any {
	if len(list) == 0 {
		return nil
	}
	return list
}

func putOdometer(r *Row, v table.Value) error {
	if v.Length.Status != "" {
		r.Lot.OdometerStatus = v.Length.Status
	}
	if !v.Length.Known {
		return nil
	}
	whole, err := v.Reading()
	if err != nil {
		return err
	}
	r.Lot.Odometer, r.Lot.OdometerUnit, r.unitOver, r.reading = &whole, v.Length.Unit, v.Unit, v.Length
	return nil
}

// split takes a vehicle that stands in one cell; what has a column of its own stands above it.
func split(r *Row, text string, s *table.Stated) error {
	v := cell.Vehicle(text, s.Make, s.Model)
	for _, fact := range []struct {
		at   *string
		says string
	}{{&r.Lot.Make, v.Make}, {&r.Lot.Model, v.Model}, {&r.Lot.Trim, v.Trim}} {
		if *fact.at == "" {
			*fact.at = fact.says
		}
	}
	if r.Lot.ModelYear == 0 {
		r.Lot.ModelYear, r.unsure = v.Year, v.Unsure
	}
	if r.Lot.Odometer == nil && v.Length.Known {
		return putOdometer(r, table.Value{Length: v.Length})
	}
	return nil
}

// whole settles what cells leave to the list. Errors: the row names no lot, or one that an earlier line names.
func whole(r *Row, line int, s *table.Stated, seen map[string]int) error {
	l := &r.Lot
	r.Currency = s.Currency
	if r.lane != "" && l.Number != "" {
		l.Number = r.lane + "-" + l.Number
	}
	if l.Sale == "" {
		l.Sale = s.Sale
	}
	if l.SaleDate == "" {
		l.SaleDate = s.SaleDate
	}
	if r.unsure != nil {
		return r.unsure
	}
	if l.Odometer != nil {
		for _, unit := range []string{r.unitSaid, r.unitOver, s.Unit} {
			if l.OdometerUnit == "" {
				l.OdometerUnit = unit
			}
		}
		switch {
		case r.unitSaid != "" && l.OdometerUnit != r.unitSaid:
			return fmt.Errorf("the odometer cell is in %s and the unit column says %s", l.OdometerUnit, r.unitSaid)
		case l.OdometerUnit == "":
			return fmt.Errorf("nothing says whether %d is miles or kilometers", *l.Odometer)
		}
		if r.unitSaid == "" {
			if err := table.Doubt(float64(*l.Odometer), r.reading, l.ModelYear, s.On); err != nil {
				return err
			}
		}
	}
	if l.Number == "" && l.VIN == "" {
		return fmt.Errorf("neither a lot number nor a VIN: the lot would not be known again")
	}
	for _, name := range names(*l) {
		if first, twice := seen[name]; twice {
			return fmt.Errorf("the same lot as line %d", first)
		}
	}
	for _, name := range names(*l) {
		seen[name] = line
	}
	return nil
}
