package csvfile

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/runlist"
	"walkline/store/table"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// Past is one buy from before the program. What the table leaves empty is not known.
type Past struct {
	Line     int // of the file
	Lot      lot.Lot
	Damage   []lot.Damage // as bought, of the extent that is usual where only areas are named
	Build    build.Build
	Currency string // of its money

	said []byte // every cell that is read, with its field: the fingerprint of the row
}

// PastBuys are tables of buys from before the program. Two rows of one table never have the same id or, without one, count as two buys.
func PastBuys() *table.Kind[Past] {
	seen := map[string]int{}
	return &table.Kind[Past]{Columns: pastColumns, Split: splitPast,
		Said: func(p *Past, field, text string) { p.said = append(p.said, field+"\x00"+text+"\x00"...) },
		Whole: func(p *Past, line int, s *table.Stated) error {
			p.Line, p.Currency = line, s.Currency
			return settlePast(p, seen)
		}}
}

type pastColumn = table.Column[Past]

// pastColumns are the columns in the order of the template.
var pastColumns = slices.Concat([]pastColumn{
	table.InText("id", "id|number|lot number|nummer|numero|numer", func(p *Past) *string { return &p.Lot.Number }),
	table.InText("sale", "sale|yard|auction|verkauf|vente|venta|aukcja|veiling|asta", func(p *Past) *string { return &p.Lot.Sale }),
	table.InText("vin", table.VINWords, func(p *Past) *string { return &p.Lot.VIN }),
	table.InYear("model_year", table.YearWords,
		func(p *Past) *int { return &p.Lot.ModelYear }),
	table.InText("make", table.MakeWords, func(p *Past) *string { return &p.Lot.Make }),
	table.InText("model", table.ModelWords, func(p *Past) *string { return &p.Lot.Model }),
	table.InText("trim", table.TrimWords, func(p *Past) *string { return &p.Lot.Trim }),
	{Name: "odometer", Words: table.OdometerWords, Form: table.Odometer, Put: putReading},
	{Name: "loss", Words: "loss|loss type|cause", Put: func(p *Past, v table.Value) error {
		p.Lot.Loss = runlist.Losses(v.Text)
		return nil
	}},
	{Name: "damage", Words: "damage|damaged|damaged area|damaged areas|schaden|dommages|danos|uszkodzenia|schade|danni", Put: putDamage},
	pastDay("bought", "bought|bought on|sale date|date bought|purchase date|date|gekauft|gekauft am|kaufdatum|achete|achete le|date d "+
		"achat|comprado|fecha de compra|kupiony|kupiono|data zakupu|gekocht|aankoopdatum|comprato|data acquisto|data di acquisto",
		func(d *build.Dates) *lot.Date { return &d.Bought }),
	pastDay("home", "home|brought home", func(d *build.Dates) *lot.Date { return &d.Home }),
	pastDay("started", "started|begun|begonnen|commence|empezado|rozpoczeto|begonnen op|iniziato",
		func(d *build.Dates) *lot.Date { return &d.Started }),
	pastDay("finished", "finished|done|fertig|termine|terminado|zakonczono|klaar|finito",
		func(d *build.Dates) *lot.Date { return &d.Finished }),
	pastDay("inspected", "inspected|inspection", func(d *build.Dates) *lot.Date { return &d.Inspected }),
	pastDay("listed", "listed|advertised|inseriert|annonce|anunciado|wystawiono|geplaatst|pubblicato",
		func(d *build.Dates) *lot.Date { return &d.Listed }),
	pastDay("sold", "sold|sold on|date sold|verkauft|verkauft am|verkaufsdatum|vendu|vendu le|date de vente|vendido|fecha de venta|"+
		"sprzedano|sprzedany|data sprzedazy|verkocht|verkocht op|verkoopdatum|venduto|data vendita|data di vendita",
		func(d *build.Dates) *lot.Date { return &d.Sold }),
	pastMoney("price_paid", "price paid|paid|bought for|purchase price|kaufpreis|einkaufspreis|einkauf|prix d achat|achat|precio "+
		"de compra|compra|cena zakupu|zakup|aankoopprijs|aankoop|prezzo di acquisto|acquisto|hammer price|hammer|winning bid|"+
		table.HammerWords,
		func(p *Past, a money.Amount) { p.Build.Hammer = &a }),
	pastMoney("fees", "fees|fee|buyer fees|auction fees|fees and tax|gebuhren|frais|tasas|comisiones|oplaty|kosten veiling|"+
		"veilingkosten|commissioni", func(p *Past, a money.Amount) {
		p.Build.Charges = append(p.Build.Charges, build.Charge{Name: "Fees and tax", Amount: a})
	}),
}, billColumns(), hourColumns(), []pastColumn{
	{Name: "outcome", Words: "outcome|how it ended|ended", Put: func(p *Past, v table.Value) error {
		o := build.Outcome(strings.ToLower(v.Text))
		if p.Build.Outcome = o; !slices.Contains(build.Outcomes, o) {
			return fmt.Errorf("one of open, sold, parted out, resold as is, cancelled")
		}
		return nil
	}},
	{Name: wonColumn, Words: "won|we won|i won|did we win|gewonnen|ersteigert|gagne|remporte|ganado|wygrana|wygrane|vinto", Put: putWon},
	pastMoney("first_asked", "first asked|asked|asking price|angebotspreis|prix demande|cena wywolawcza|vraagprijs", func(p *Past,
		a money.Amount) {
		p.Build.Sale.FirstAsked = &a
	}),
	pastMoney("sold_for", "sold for|sold at|sale price|sold price|selling price|verkaufspreis|prix de vente|precio de venta|cena sprzedazy|"+
		"sprzedaz|verkoopprijs|verkoop|prezzo di vendita|vendita", func(p *Past, a money.Amount) { p.Build.Sale.Price = &a }),
	{Name: "days_on_market", Words: "days on market|days to sell", Form: table.Number, Put: func(p *Past, v table.Value) error {
		days := int(v.Number)
		if p.Build.Sale.Days = &days; v.Number != float64(days) || days < 0 || days > 3650 {
			return fmt.Errorf("whole days, 0 to 3650")
		}
		return nil
	}},
	table.InText("brand", "brand|title|title brand", func(p *Past) *string { return &p.Build.Sale.Brand }),
	seenColumn("found", "found|hidden damage found", build.Found), seenColumn("not_there", "not there|hidden damage not there",
		build.NotThere),
	table.InText("note", "note|notes|remarks|bemerkung|remarque|nota|uwagi|opmerking", func(p *Past) *string { return &p.Build.Note }),
	{Name: "currency", Words: table.CurrencyWords, Form: table.Currency},
	{Name: "vehicle", Words: table.VehicleWords, Form: table.Vehicle},
})

// wonColumn is the column of a list of bids that says which were won.
const wonColumn = "won"

// lost are words for a bid that was not won. Common practice, no source.
var lost = cell.SetOf("lost|outbid|l|verloren|perdu|perdido|przegrana|verloren|perso")

// putWon refuses a bid that was not won. Errors: so it is, or the cell does not say.
func putWon(_ *Past, v table.Value) error {
	switch won, known := cell.YesNo(v.Text); {
	case lost.Has(v.Text), known && !won:
		return fmt.Errorf("not won: it is no buy")
	case known, cell.SetOf("won|w|gewonnen|gagne|ganado|wygrana|vinto").Has(v.Text):
		return nil
	}
	return fmt.Errorf("neither won nor lost")
}

// billColumns are the columns of money by kind; each makes one bill.
func billColumns() (out []pastColumn) {
	names := map[string]string{"part": "parts", "outside": "bought_in_work", "other": "other_costs", "selling": "selling_costs",
		"holding": "holding_costs"}
	words := map[string]string{"part": "parts|teile|ersatzteile|pieces|piezas|czesci|onderdelen|ricambi",
		"outside": "sublet work|sublet|fremdleistung"}
	for _, kind := range build.Kinds {
		name := names[kind]
		if name == "" {
			name = kind
		}
		out = append(out, pastMoney(name, words[kind], func(p *Past, a money.Amount) {
			p.Build.Receipts = append(p.Build.Receipts, build.Receipt{What: "all, from a table of past buys", Kind: kind, Amount: a})
		}))
	}
	return out
}

// hourColumns are the columns of own hours by trade.
func hourColumns() (out []pastColumn) {
	for _, trade := range lot.Trades {
		out = append(out, pastColumn{Name: "hours_" + trade, Form: table.Number, Put: func(p *Past, v table.Value) error {
			if v.Number < 0 || v.Number > 5000 {
				return fmt.Errorf("hours, 0 to 5000")
			}
			p.Build.Hours = append(p.Build.Hours, build.Work{Trade: trade, Hours: v.Number, What: "all, from a table of past buys"})
			return nil
		}})
	}
	return out
}

func pastDay(name, words string, at func(d *build.Dates) *lot.Date) pastColumn {
	return table.InDay(name, words, func(p *Past) *lot.Date { return at(&p.Build.Dates) })
}

func pastMoney(name, words string, put func(p *Past, a money.Amount)) pastColumn {
	return pastColumn{Name: name, Words: words, Form: table.Money, Put: func(p *Past, v table.Value) error { put(p, v.Amount); return nil }}
}

// seenColumn takes risks by id or name, parted by semicolons.
func seenColumn(name, words, state string) pastColumn {
	return pastColumn{Name: name, Words: words, Put: func(p *Past, v table.Value) error {
		for _, risk := range strings.Split(v.Text, ";") {
			risk = strings.TrimSpace(risk)
			switch was := p.Build.Saw(risk); {
			case risk == "":
			case was != "" && was != state:
				return fmt.Errorf("%s is said to be found and not to be there", risk)
			default:
				p.Build.See(risk, state)
			}
		}
		return nil
	}}
}

// putDamage takes the damaged areas, each as functional damage to bolted parts: what a list of areas says at least. Errors: words that
// name no area.
func putDamage(p *Past, v table.Value) error {
	areas := runlist.Areas(v.Text)
	if len(areas) == 0 {
		return fmt.Errorf("no area of a vehicle: for example front, left rear, top, interior")
	}
	for _, a := range areas {
		p.Damage = append(p.Damage, lot.Damage{Area: a, Extent: "functional", Depth: "bolted"})
	}
	return nil
}

// putReading takes the odometer when it was sold. A plain number is the mileage; what is not says so.
func putReading(p *Past, v table.Value) error {
	if !v.Length.Known {
		return nil
	}
	whole, err := v.Reading()
	p.Lot.Odometer, p.Lot.OdometerUnit, p.Lot.OdometerStatus = &whole, v.Length.Unit, cmp.Or(v.Length.Status, "actual")
	return err
}

func splitPast(p *Past, text string, s *table.Stated) error {
	v := cell.Vehicle(text, s.Make, s.Model)
	setIf(&p.Lot.Make, v.Make)
	setIf(&p.Lot.Model, v.Model)
	setIf(&p.Lot.Trim, v.Trim)
	if p.Lot.ModelYear == 0 {
		p.Lot.ModelYear = v.Year
	}
	return nil
}

// settlePast gives a row its identity. Errors: it can't be a buy.
func settlePast(p *Past, seen map[string]int) error {
	b, l := &p.Build, &p.Lot
	if strings.HasPrefix(strings.ToLower(l.Number), exampleID) {
		return fmt.Errorf("an example of the template: it is no buy")
	}
	if b.Outcome == "" {
		b.Outcome = build.Open
		if b.Sale.Price != nil {
			b.Outcome = build.Sold
		}
	}
	if brand, known := cell.Title(b.Sale.Brand); known {
		b.Sale.Brand = brand
	}
	l.SaleDate = b.Dates.Bought
	key := "id " + l.Number
	if l.Number == "" {
		key = strings.Join([]string{string(b.Dates.Bought), l.VIN, fmt.Sprint(l.ModelYear), l.Make, l.Model, amountWords(b.Hammer)}, "|")
	}
	if l.Number == "" && (b.Dates.Bought == "" && b.Hammer == nil || l.VIN == "" && l.Make == "" && l.Model == "") {
		return fmt.Errorf("nothing tells this buy from others: an id, or the day or price with a vehicle")
	}
	if seen[key]++; seen[key] > 1 && l.Number != "" {
		return fmt.Errorf("another row above has the id %q", l.Number)
	} else if seen[key] > 1 {
		key = fmt.Sprintf("%s|%d", key, seen[key])
	}
	if faults := b.Check(); len(faults) > 0 {
		return fmt.Errorf("%s", strings.Join(faults, "; "))
	}
	row := sha256.Sum256(p.said)
	b.Imported = build.Imported{As: key, Row: hex.EncodeToString(row[:])}
	return nil
}

func amountWords(a *money.Amount) string {
	if a == nil {
		return ""
	}
	return fmt.Sprint(int64(*a))
}
