package cell

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"walkline/valuation/money"
)

// Price is what a cell of money says.
type Price struct {
	Number
	Sign string // the sign or code of a currency that stands in the cell; empty: none
}

// signs are the currencies that a sign may stand for. Common practice, from memory.
var signs = map[string][]string{
	"$": {"USD", "CAD", "AUD", "NZD", "MXN"}, "us$": {"USD"}, "ca$": {"CAD"}, "c$": {"CAD"}, "au$": {"AUD"}, "a$": {"AUD"},
	"nz$": {"NZD"}, "mx$": {"MXN"}, "r$": {"BRL"},
	"€": {"EUR"}, "euro": {"EUR"}, "euros": {"EUR"}, "£": {"GBP"}, "¥": {"JPY", "CNY"}, "fr": {"CHF"}, "sfr": {"CHF"}, "₹": {"INR"},
	"₩": {"KRW"}, "zł": {"PLN"}, "zl": {"PLN"},
	"kr": {"SEK", "NOK", "DKK"}, "r": {"ZAR"}, "₺": {"TRY"}, "₴": {"UAH"}, "kč": {"CZK"}, "dollars": {"USD", "CAD", "AUD", "NZD"},
	"pounds": {"GBP"},
}

// Currencies returns the ISO 4217 codes that a sign or code may stand for, nil for none.
func Currencies(sign string) []string {
	if codes := signs[sign]; codes != nil {
		return codes
	}
	low := strings.ToLower(strings.Trim(sign, "."))
	if codes := signs[low]; codes != nil {
		return codes
	}
	if code := strings.ToUpper(low); len(code) == 3 {
		if _, known := money.Lookup(code); known {
			return []string{code}
		}
	}
	return nil
}

// Stands reports whether a sign or code may stand for a currency.
func Stands(sign, code string) bool { return slices.Contains(Currencies(sign), code) }

var haggling = SetOf("obo|ono|or best offer|or nearest offer|best|offer|nearest|or|neg|negotiable|firm|fixed|asking|ask|vb|vhb|" +
	"verhandlungsbasis|verhandelbar|fp|festpreis|fest|fixpreis|" +
	"a debattre|debattre|negociable|ferme|fixe|discutable|prix|precio|negociables|fijo|do negocjacji|negocjacji|do uzgodnienia|" +
	"uzgodnienia|uzg|do|ostateczna|cena|prijs|vraagprijs|bieden|vaste|t e a b|teab|" +
	"trattabile|trattabili|tratt|prezzo|fisso|a|o n o|o b " +
	"o|price|preis|only|nur|now|ca|circa|approx|about|around|env|environ|rund|okolo|reduced|reduziert|rebajado|verlaagd")

var errNoPrice = errors.New("no price")

// ReadMoney returns the price that a cell says; decimal is the stated mark, 0 for none. Errors: a word that is none of money, a second
// number, a negative one, or none at all.
func ReadMoney(cell string, decimal byte) (Price, error) {
	before, digits, after := parted(cell)
	if digits == "" {
		return Price{}, errNoPrice
	}
	n, err := numberOf(digits, decimal)
	if err != nil {
		return Price{}, err
	}
	p := Price{Number: n}
	if before == "" && after == "" {
		return p, nil
	}
	if strings.ContainsAny(after, "0123456789") {
		return p, errSecond
	}
	if strings.ContainsAny(before, "-−") || strings.HasPrefix(before, "(") && strings.HasSuffix(after, ")") {
		return p, errors.New("a price below zero")
	}
	if before = strings.Trim(before, " "); signs[before] != nil {
		p.Sign, before = before, ""
	}
	if err := p.beside(before); err != nil {
		return p, err
	}
	return p, p.beside(after)
}

// Words of taxes and fees beside a price: with which they are in it, and with which they come on top. Common practice, no source.
var (
	taxes = SetOf("vat|mwst|ust|tva|iva|btw|tax|taxes|fees|fee|gebuhren|frais|hst|gst")
	taxIn = SetOf("incl|including|inc|included|inclusive|inkl|inklusive|ttc|brutto|gross|inclus|incluse|comprise|incluido|inclusa|zawiera|" +
		"ausweisbar")
	taxOver = SetOf("plus|ex|excl|excluding|exclusive|zzgl|netto|net|ht|hors|sin|senza|before")
)

var errTax = errors.New("tax or fees come on top of it: write the whole price")

// taxed returns the words without those of tax. Errors: tax or fees come on top.
func taxed(words []string) ([]string, error) {
	tax, in, over := false, false, false
	rest := slices.DeleteFunc(words, func(word string) bool {
		word = strings.ToLower(word)
		isTax, isIn, isOver := taxes.Has(word), taxIn.Has(word), taxOver.Has(word)
		tax, in, over = tax || isTax, in || isIn, over || isOver
		return isTax || isIn || isOver
	})
	if over || tax && !in {
		return rest, errTax
	}
	return rest, nil
}

// beside takes what stands on one side of a price.
func (p *Price) beside(text string) error {
	if text == "" {
		return nil
	}
	words, err := taxed(strings.FieldsFunc(text, moneyParts))
	if err != nil {
		return err
	}
	for _, word := range words {
		if strings.TrimFunc(word, unicode.IsPunct) == "" {
			continue
		}
		bare := strings.ToLower(strings.Trim(word, ".-–"))
		switch codes := Currencies(bare); {
		case bare == "":
		case thousands[bare] && p.Scale < 3:
			p.Number = p.TimesThousand()
		case len(codes) > 0 && p.Sign != "" && !strings.EqualFold(p.Sign, bare) && !slices.ContainsFunc(codes,
			func(code string) bool { return Stands(p.Sign, code) }):
			return fmt.Errorf("%q and %q are two currencies", p.Sign, word)
		case len(codes) > 0:
			if p.Sign == "" || len(codes) < len(Currencies(p.Sign)) {
				p.Sign = strings.Trim(word, ".-–")
			}
		case !haggling.Has(bare):
			return fmt.Errorf("%q beside a price is not understood", word)
		}
	}
	return nil
}

// moneyParts parts what stands beside a price; signs of money stay whole with the letters before them.
func moneyParts(r rune) bool {
	return r == ' ' || r == '\u00a0' || r == '\u202f' || r == '\n' || strings.ContainsRune("*!+~:;,/|()[]<>≈'\"", r)
}

// Amount returns the price in minor units of a currency. Errors: its sign is another currency's, it is not above one, it has more
// decimals than the currency, or is too large.
func (p Price) Amount(c money.Currency) (money.Amount, error) {
	if p.Sign != "" && !Stands(p.Sign, c.Code) {
		return 0, fmt.Errorf("%q does not stand for %s, the currency of this table", p.Sign, c.Code)
	}
	minor, err := p.minor(int(c.Digits))
	return money.Amount(minor), err
}
