package csvfile

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"walkline/valuation/money"
)

// Field is what a column of a file means.
type Field string

// The fields of a comparable, and what else a column can be.
const (
	ID        Field = "id"
	Price     Field = "price"
	Kind      Field = "kind"
	Date      Field = "date"
	ModelYear Field = "model_year"
	Make      Field = "make"
	Model     Field = "model"
	Trim      Field = "trim"
	Mileage   Field = "mileage"
	Unit      Field = "mileage_unit"
	Title     Field = "title"
	Distance  Field = "distance"
	Condition Field = "condition"
	Note      Field = "note"
	Source    Field = "source"
	Excluded  Field = "excluded"
	Other     Field = "other"  // kept under the column's own name
	Ignored   Field = "ignore" // not read
)

// Fields lists the fields of a comparable in the order in which they are written.
var Fields = []Field{ID, Price, Kind, Date, ModelYear, Make, Model, Trim, Mileage, Unit, Title, Distance, Condition, Note, Source, Excluded}

// synonyms are the names under which a field goes, the likeliest first, as [PlainName] leaves them. Common practice, no
// source.
var synonyms = map[Field][]string{
	ID:        {"id", "row id", "listing id", "listing", "listing number", "listing no", "ref", "reference", "stock", "stock number", "stock no", "vin"},
	Price:     {"price", "sold price", "sale price", "selling price", "asking price", "asked price", "ask", "asking", "list price", "listed price", "amount", "sold for", "sold at"},
	Kind:      {"kind", "asked or sold", "price kind", "price type", "status"},
	Date:      {"date", "sold date", "date sold", "sale date", "date of sale", "sold on", "sold", "listed", "date listed", "list date", "listing date", "listed on", "advertised", "seen", "date seen", "day"},
	ModelYear: {"model year", "year", "my", "year of make", "built"},
	Make:      {"make", "brand name", "manufacturer", "maker"},
	Model:     {"model", "model name"},
	Trim:      {"trim", "version", "trim level", "grade", "variant"},
	Mileage:   {"mileage", "odometer", "miles", "mi", "km", "kms", "kilometres", "kilometers", "odometer reading", "odo"},
	Unit:      {"mileage unit", "odometer unit", "unit", "units"},
	Title:     {"title", "title status", "title brand", "brand", "branding", "title type"},
	Distance:  {"distance", "distance away", "miles away", "away"},
	Condition: {"condition", "state", "rating"},
	Note:      {"note", "notes", "comment", "comments", "remarks", "remark", "description", "text"},
	Source:    {"source", "site", "where", "seller", "market", "found at"},
	Excluded:  {"excluded", "left out"},
}

// units are the words that name a unit of length in a column's name.
var units = map[string]string{
	"mi": "mi", "mile": "mi", "miles": "mi", "km": "km", "kms": "km", "kilometre": "km", "kilometres": "km", "kilometer": "km", "kilometers": "km",
}

// Column is one column of a file and what it means.
type Column struct {
	Name  string `json:"column"`
	Field Field  `json:"field"`
}

// Match says what every column of a file means.
type Match []Column

// Propose returns the match that the names of the columns suggest; every column that fits no field is Other.
func Propose(header []string) Match {
	m := make(Match, len(header))
	for i, name := range header {
		m[i] = Column{name, Other}
		if strings.HasPrefix(name, refusedPrefix) {
			m[i].Field = Ignored
		}
	}
	for _, field := range Fields {
		for _, synonym := range synonyms[field] {
			if at := slices.IndexFunc(m, func(c Column) bool { return c.Field == Other && PlainName(c.Name) == synonym }); at >= 0 {
				m[at].Field = field
				break
			}
		}
	}
	return m
}

// Set returns the match with a column given another meaning; a column that had the meaning before becomes Other.
func (m Match) Set(column string, field Field) Match {
	set := slices.Clone(m)
	for i, c := range set {
		switch {
		case c.Name == column:
			set[i].Field = field
		case c.Field == field && field != Other && field != Ignored:
			set[i].Field = Other
		}
	}
	return set
}

// Has reports whether a column has that meaning.
func (m Match) Has(field Field) bool { return m.at(field) >= 0 }

// Others returns the columns that are kept under their own names.
func (m Match) Others() []string {
	var names []string
	for _, c := range m {
		if c.Field == Other {
			names = append(names, c.Name)
		}
	}
	return names
}

// Absent returns the fields that no column has.
func (m Match) Absent() []Field {
	return slices.DeleteFunc(slices.Clone(Fields), m.Has)
}

// at returns the place of the column that has a meaning, -1 for none.
func (m Match) at(field Field) int {
	return slices.IndexFunc(m, func(c Column) bool { return c.Field == field })
}

// check returns what stands in the way of reading a table by m.
func (m Match) check(header []string) error {
	if !slices.EqualFunc(m, header, func(c Column, name string) bool { return c.Name == name }) {
		return fmt.Errorf("the columns are matched for another file")
	}
	for i, c := range m {
		if c.Field == Other || c.Field == Ignored {
			continue
		}
		if !slices.Contains(Fields, c.Field) {
			return fmt.Errorf("column %q is matched to %q, which is no field", c.Name, c.Field)
		}
		if m.at(c.Field) != i {
			return fmt.Errorf("columns %q and %q are both matched to %s: choose one", m[m.at(c.Field)].Name, c.Name, c.Field)
		}
	}
	if !m.Has(Price) {
		return fmt.Errorf("no column is matched to the price: choose one")
	}
	return nil
}

// Profile is what is remembered of an import, per source, so that the next file of its kind needs no questions.
type Profile struct {
	Source  string  `json:"source"`
	Match   Match   `json:"match"`
	Options Options `json:"options"`
}

// For returns the match of a new file's columns: as remembered where the profile knows a column, as proposed elsewhere.
func (p Profile) For(header []string) Match {
	m := Propose(header)
	for _, known := range p.Match {
		if slices.Contains(header, known.Name) {
			m = m.Set(known.Name, known.Field)
		}
	}
	return m
}

// PlainName returns a column's name as lower-case words without signs, units and currency codes, unless nothing else is left.
func PlainName(name string) string {
	words := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
	kept := slices.DeleteFunc(slices.Clone(words), func(word string) bool {
		_, unit := units[word]
		_, currency := money.Lookup(strings.ToUpper(word))
		return unit || currency || word == "in"
	})
	if len(kept) == 0 {
		kept = words
	}
	return strings.Join(kept, " ")
}

// unitIn returns the unit of length that a column's name states, empty for none.
func unitIn(name string) string {
	for _, word := range strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) }) {
		if unit := units[word]; unit != "" {
			return unit
		}
	}
	return ""
}
