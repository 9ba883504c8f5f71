package csvfile

import (
	"cmp"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/table"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// Comparable is a row of a table of comparables.
type Comparable struct {
	resale.Row
	Currency string // of the price
	Status   string // what the odometer cell says of its reading; empty: nothing
	unitSaid string // by a column of units
	unitOver string // by the heading or the whole column of the odometer
	unsure   error  // why the year of a vehicle's cell may be none; nil: it is one, or a column says it
}

// Comparables are tables of vehicles for sale or sold.
var Comparables = &table.Kind[Comparable]{
	Columns: columns, Need: []string{"price"}, Ask: askKind, Whole: whole, Split: split,
	Keep: func(c *Comparable, key, text string) {
		if c.More == nil {
			c.More = map[string]string{}
		}
		c.More[key] = text
	},
}

type column = table.Column[Comparable]

// columns are the fields of a comparable, each with the plain words that name it. Common practice, no source.
var columns = []column{
	table.InText("id", "id|row id|no|nr|ref|reference|number|nummer|numero|numer", func(c *Comparable) *string { return &c.ID }),
	{Name: "price", Words: "price|asking price|asked price|sold price|sale price|selling price|list price|listed price|asking|ask|sold " +
		"for|sold at|amount|preis|verkaufspreis|angebotspreis|" +
		"kaufpreis|vb|betrag|prix|prix de vente|prix demande|montant|precio|precio de venta|importe|cena|cena sprzedazy|kwota|prijs|" +
		"vraagprijs|verkoopprijs|bedrag|prezzo|prezzo richiesto|" +
		"prezzo di vendita|importo", Form: table.Money, Must: "no price: a comparable needs one",
		Put: func(c *Comparable, v table.Value) error {
			if c.Price = v.Amount; v.Number <= 1 {
				return fmt.Errorf("no price: one is above 1")
			}
			return nil
		},
		Get:  func(c *Comparable) any { return moneyText(c.Price, c.Currency) },
		Join: func(old, newer *Comparable) { table.Overlay(&old.Price, newer.Price) }},
	{Name: "currency", Words: table.CurrencyWords, Form: table.Currency,
		Get: func(c *Comparable) any { return c.Currency }},
	{Name: "kind", Words: "kind|asked or sold|price kind|price type|art|type de prix|tipo|rodzaj ceny|soort", Put: putKind, Cells: askedOrSold,
		Get: func(c *Comparable) any { return orNil(c.Kind) }, Join: func(old, newer *Comparable) { table.Overlay(&old.Kind, newer.Kind) }},
	table.InDay("date", "date|sold date|date sold|sale date|date of sale|sold on|sold|listed|date listed|list date|listed on|"+
		"advertised|seen|date seen|day|when|posted|datum|verkauft am|verkauft|inseriert|"+
		"inseriert am|gesehen|tag|jour|date de vente|vendu|vendu le|annonce|date de l annonce|fecha del anuncio|vu|vu le|vue|fecha|fecha de "+
		"venta|vendido|visto|anunciado|data|data "+
		"sprzedazy|sprzedano|sprzedany|dodano|dzien|verkocht|verkocht op|geplaatst|dag|"+
		"venduto|venduto il|data di vendita|visto il|giorno", func(c *Comparable) *lot.Date { return &c.Date }),
	table.InYear("model_year", table.YearWords, func(c *Comparable) *int { c.unsure = nil; return &c.ModelYear }),
	{Name: "first_registration", Words: table.FirstRegistrationWords,
		Form: table.Year,
		Put: func(c *Comparable, v table.Value) error {
			if c.ModelYear == 0 {
				c.ModelYear = v.Year
			}
			return nil
		}},
	table.InText("make", table.MakeWords, func(c *Comparable) *string { return &c.Make }),
	table.InText("model", table.ModelWords, func(c *Comparable) *string { return &c.Model }),
	table.InText("trim", table.TrimWords+"|grade", func(c *Comparable) *string { return &c.Trim }),
	{Name: "vehicle", Words: table.VehicleWords,
		Form: table.Vehicle},
	{Name: "mileage", Words: table.OdometerWords, Form: table.Odometer,
		Put: putMileage, Get: mileageText, Join: joinMileage},
	{Name: "unit", Words: table.UnitWords, Form: table.Unit,
		Put: func(c *Comparable, v table.Value) error { c.unitSaid = v.Unit; return nil },
		Get: func(c *Comparable) any { return orNil(c.Unit) }},
	{Name: "title", Words: "title|title status|title brand|brand|branding|title type|titel|titre|titulo|tytul|titolo|papers|fahrzeugbrief|" +
		"fahrzeugpapiere|papiere|papiers|carte grise",
		Form: table.Title,
		Put:  func(c *Comparable, v table.Value) error { c.Title = v.Text; return nil },
		Get:  func(c *Comparable) any { return orNil(c.Title) },
		Join: func(old, newer *Comparable) { table.Overlay(&old.Title, newer.Title) }},
	{Name: "distance", Words: "distance|distance away|away|how far|far|entfernung|distanz|eloignement|distancia|odleglosc|afstand|" +
		"distanza", Form: table.Distance,
		Put: putDistance, Get: func(c *Comparable) any { return numberOrNil(c.DistanceMi) }, Join: func(old,
			newer *Comparable) {
			table.Overlay(&old.DistanceMi, newer.DistanceMi)
		}},
	{Name: "upkeep", Words: "upkeep|condition|zustand|etat|estado|stan|staat|condizioni|condizione", Put: putCondition,
		Get: func(c *Comparable) any { return upkeepOf(c.Condition) }, Join: func(old,
			newer *Comparable) {
			table.Overlay(&old.Condition, newer.Condition)
		}},
	{Name: "note", Words: "note|notes|comment|comments|remarks|remark|description|text|notiz|notizen|bemerkung|bemerkungen|" +
		"beschreibung|anmerkung|remarque|remarques|commentaire|observaciones|comentario|nota|notas|uwagi|opis|" +
		"notatka|komentarz|opmerking|opmerkingen|omschrijving|note aggiuntive|osservazioni|descrizione|commento", Many: true,
		Put: func(c *Comparable, v table.Value) error { c.noted(v.Text); return nil },
		Get: func(c *Comparable) any { return orNil(c.Note) },
		Join: func(old, newer *Comparable) {
			if newer.Note != table.Tidy(old.Note) {
				table.Overlay(&old.Note, newer.Note)
			}
		}},
	table.InText("source", "source|site|where|seller|market|found at|quelle|fundort|anbieter|verkaufer|vendeur|fuente|vendedor|zrodlo|"+
		"sprzedawca|bron|verkoper|fonte|venditore", func(c *Comparable) *string { return &c.Source }),
	{Name: "excluded", Words: "excluded|left out", Put: func(c *Comparable, v table.Value) error {
		says, known := cell.YesNo(v.Text)
		if c.Excluded = says; !known {
			return fmt.Errorf("neither yes nor no")
		}
		return nil
	}},
}

func orNil(text string) any {
	if text == "" {
		return nil
	}
	return text
}

func numberOrNil(x *float64) any {
	if x == nil {
		return nil
	}
	return *x
}

// moneyText returns an amount as plain decimal text without idle zeros, nil for none.
func moneyText(a money.Amount, code string) any {
	currency, known := money.Lookup(code)
	if a == 0 || !known {
		return nil
	}
	return plainText(currency.Decimal(a).String())
}

func plainText(text string) string {
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// noted adds to the note of a row.
func (c *Comparable) noted(text string) {
	if c.Note != "" {
		text = c.Note + "; " + text
	}
	c.Note = text
}

// Words for a price that is asked or was paid, of headings and cells.
var (
	asked = cell.SetOf("asked|asking|ask|listed|for sale|advertised|offered|angeboten|inseriert|angebot|vraagprijs|angebotspreis|" +
		"demande|a vendre|annonce|anuncio|pedido|en venta|ofertowa|oferta|do sprzedania|gevraagd|te " +
		"koop|trattabile|negotiable|negociable|debattre|negocjacji|richiesto|in " +
		"vendita|vb|vhb|posted|geplaatst|dodano|ogloszenia|ogloszenie|annuncio|advertentie|inserat|anzeige|advert|advertisement|ad|listing")
	sold = cell.SetOf("sold|paid|sale|verkauft|bezahlt|vendu|paye|vendido|pagado|sprzedany|sprzedane|sprzedano|zaplacone|verkocht|" +
		"betaald|venduto|pagato")
)

// askedOrSold are all of them.
var askedOrSold = union(asked, sold)

func union(a, b cell.Set) cell.Set {
	all := maps.Clone(a)
	maps.Copy(all, b)
	return all
}

func putKind(c *Comparable, v table.Value) error {
	switch {
	case asked.Has(v.Text):
		c.Kind = "asked"
	case sold.Has(v.Text):
		c.Kind = "sold"
	default:
		return fmt.Errorf("neither asked nor sold")
	}
	return nil
}

// askKind settles whether prices are asked or sold by the headings of the price, of the day and of the vehicle, and asks where they don't
// say.
func askKind(headings map[string]string, s *table.Stated) []table.Question {
	price, there := headings["price"]
	if _, column := headings["kind"]; s.Kind != "" || column || !there {
		return nil
	}
	for _, heading := range []string{price, headings["date"], headings["vehicle"]} {
		words := cell.Words(heading)
		has := func(set cell.Set) bool { return slices.ContainsFunc(words, func(w string) bool { return set[w] }) }
		switch {
		case has(sold) && !has(asked) && !slices.Contains(words, "sale"):
			s.Kind = "sold"
			return nil
		case has(asked) && !has(sold):
			s.Kind = "asked"
			return nil
		}
	}
	return []table.Question{{Key: "kind", Text: fmt.Sprintf("Are the prices in %q asked or sold?", price), Options: []string{"asked",
		"sold"}}}
}

func putMileage(c *Comparable, v table.Value) error {
	c.Status = v.Length.Status
	if !v.Length.Known {
		return nil
	}
	x := v.Length.Float()
	if x > lot.MostMileage {
		return fmt.Errorf("an odometer reads 0 to %d", lot.MostMileage)
	}
	c.Mileage, c.Unit, c.unitOver = &x, v.Length.Unit, v.Unit
	return nil
}

func mileageText(c *Comparable) any {
	if c.Mileage == nil {
		return nil
	}
	return plainText(fmt.Sprintf("%.3f", *c.Mileage))
}

func joinMileage(old, newer *Comparable) {
	if newer.Mileage != nil && (old.Mileage == nil || *old.Mileage != *newer.Mileage || unitOf(old.Row) != unitOf(newer.Row)) {
		old.Mileage, old.Unit = newer.Mileage, newer.Unit
	}
}

func putDistance(c *Comparable, v table.Value) error {
	if !v.Length.Known {
		return nil
	}
	x := v.Length.Float()
	if v.Unit == "km" {
		x /= lot.KilometresPerMile
	}
	if x > lot.MostDistance {
		return fmt.Errorf("a distance is 0 to %d miles", lot.MostDistance)
	}
	c.DistanceMi = &x
	return nil
}

// upkeepOf returns the word for a place on the scale, the number where none is whole enough, nil where nothing is known.
func upkeepOf(x *float64) any {
	if x == nil || *x != math.Trunc(*x) {
		return numberOrNil(x)
	}
	return strings.ReplaceAll(resale.UpkeepOf(*x), "_", " ")
}

// upkeep are words for how a vehicle was kept, from 1 (rough) to 5 (as new). Common practice, no source.
var upkeep = map[string]float64{"rough": 1, "poor": 1, "worn": 2, "fair": 2, "usual": 3, "average": 3, "ok": 3, "good": 4,
	"very good": 4.5, "as new": 5, "like new": 5, "excellent": 5, "new": 5,
	"schlecht": 1, "gebraucht": 3, "gut": 4, "sehr gut": 4.5, "neuwertig": 5, "mauvais": 1, "moyen": 3, "bon": 4, "tres bon": 4.5,
	"malo": 1, "normal": 3, "bueno": 4, "muy bueno": 4.5,
	"zly": 1, "dobry": 4, "bardzo dobry": 4.5, "slecht": 1, "redelijk": 3, "goed": 4, "cattivo": 1, "discreto": 3, "buono": 4, "ottimo": 5}

// putCondition takes a number from 1 to 5 or a word of it; any other word goes to the note.
func putCondition(c *Comparable, v table.Value) error {
	x, known := upkeep[strings.Join(cell.Words(v.Text), " ")]
	if n, err := cell.ReadNumber(v.Text, 0); !known && err == nil {
		if x = n.Float(); x < 1 || x > 5 {
			return fmt.Errorf("upkeep is rough, worn, usual, good or as new, or a number from 1 to 5")
		}
		known = true
	}
	if title, says := cell.Title(v.Text); !known && says && title != "clear" && len(v.Text) > 1 {
		if c.Title == "" {
			c.Title = title // "rebuilt" in a column of upkeep is what the title says
			return nil
		}
	}
	if !known {
		c.noted("upkeep: " + v.Text)
		return nil
	}
	c.Condition = &x
	return nil
}

// whole settles what cells leave to the table.
func whole(c *Comparable, _ int, s *table.Stated) (err error) {
	c.Currency = s.Currency
	if c.Kind == "" {
		c.Kind = s.Kind
	}
	setIf(&c.Source, s.Source)
	setIf(&c.Title, s.Title)
	if s.On.Known() && c.Date > s.On && !s.Later {
		return fmt.Errorf("%s is still to come", c.Date)
	}
	if c.unsure != nil {
		return c.unsure
	}
	if c.Mileage != nil {
		says := cell.Length{Unit: c.Unit, Status: c.Status}
		switch {
		case c.Unit != "" && c.unitSaid != "" && c.Unit != c.unitSaid:
			return fmt.Errorf("the odometer cell is in %s and the unit column says %s", c.Unit, c.unitSaid)
		case c.Unit == "" && c.unitSaid != "":
			c.Unit = c.unitSaid
		case c.Unit == "" && c.unitOver != "":
			c.Unit = c.unitOver
		case c.Unit == "":
			c.Unit = s.Unit
		}
		if c.Unit == "" {
			return fmt.Errorf("nothing says whether %v is miles or kilometers", *c.Mileage)
		}
		if c.unitSaid == "" {
			err = table.Doubt(*c.Mileage, says, c.ModelYear, cmp.Or(c.Date, s.On))
		}
	}
	parted(c, s)
	return err
}

// Known returns the row as the valuation takes it: a reading that is not the mileage counts as unknown and stands in the note.
func (c Comparable) Known() resale.Row {
	if (lot.Lot{OdometerStatus: c.Status}).Misread() {
		says := "odometer " + strings.ReplaceAll(c.Status, "_", " ")
		if text, ok := mileageText(&c).(string); ok {
			says += ": " + text + " " + unitOf(c.Row)
		}
		c.noted(says)
		c.Mileage, c.Unit = nil, ""
	}
	return c.Row
}
