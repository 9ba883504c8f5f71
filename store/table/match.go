package table

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"walkline/store/cell"
	"walkline/store/grid"
)

// phrase is one way to name a field.
type phrase struct {
	words []string
	field int
}

// prepare folds the phrases of a kind once.
func (k *Kind[T]) prepare() {
	if k.phrases != nil {
		return
	}
	for i, c := range k.Columns {
		for _, words := range append(strings.Split(c.Words, "|"), c.Name) {
			if w := headingWords(words); len(w) > 0 {
				k.phrases = append(k.phrases, phrase{w, i})
			}
		}
	}
}

// plain are words of a heading that do not tell what it is.
var plain = cell.SetOf("in|the|of|der|des|de|du|del|la|le|di|da|van|het|in|no|nr|und|and")

// short are the trade's short forms of heading words. Common practice, no source.
var short = map[string]string{"yr": "year", "odo": "odometer", "dmg": "damage", "cond": "condition"}

// headingWords returns the words of a heading, short forms written out, without units, currencies and little words, unless nothing else is
// left.
func headingWords(heading string) []string {
	words := strings.Fields(strings.ReplaceAll(strings.Join(cell.Words(heading), " "), "km stand", "kilometerstand"))
	if strings.Trim(heading, " .") == "#" {
		words = []string{"number"}
	}
	for i, w := range words {
		words[i] = cmp.Or(short[w], w)
	}
	kept := slices.DeleteFunc(slices.Clone(words), func(w string) bool {
		code := len(w) == 3 && len(cell.Currencies(w)) > 0
		return cell.UnitOf(w) != "" && w != "kilometerstand" && w != "kilometrage" && w != "kilometraje" && w != "chilometraggio" ||
			code || plain[w]
	})
	if len(kept) == 0 {
		return words
	}
	if last := len(kept) - 1; last > 0 && len(kept[last]) == 1 && kept[last][0] >= '0' && kept[last][0] <= '9' {
		kept = kept[:last] // the second of a name
	}
	return kept
}

// exact is the score from which on a heading names a field and nothing else.
const exact = 1000

// score says how well a heading's words name a phrase: 0 not at all, from [exact] on exactly.
func (p phrase) score(heading []string) int {
	for at := 0; at+len(p.words) <= len(heading); at++ {
		if slices.Equal(heading[at:at+len(p.words)], p.words) {
			if len(heading) == len(p.words) {
				return exact + 10*len(p.words)
			}
			if len(p.words) == 1 && len(p.words[0]) <= 2 {
				return 0 // "my" is the model year, "my max" is not
			}
			return 100*len(p.words) - 10*(len(heading)-len(p.words)) - at
		}
	}
	return 0
}

// best returns the field that a heading names best, -1 for none.
func (k *Kind[T]) best(heading string) (field, score int) {
	words := headingWords(heading)
	field = -1
	for _, p := range k.phrases {
		if s := p.score(words); s > score {
			field, score = p.field, s
		}
	}
	return field, score
}

// Why a column is what it is.
const (
	byHeading = "by its heading"
	saidSo    = "you said so"
	nameless  = "no word of its heading names a field"
)

// claim is a column that could be a field.
type claim struct{ column, field, score int }

// propose returns what the headings name, each field once but for those that several columns may be. Cells that are money are no days,
// whatever the heading: "Sold".
func (k *Kind[T]) propose(header []string, body []grid.Row) []Became {
	var claims []claim
	out := make([]Became, len(header))
	for i, heading := range header {
		out[i] = Became{Heading: heading, Field: k.left(), Why: nameless}
		if strings.HasPrefix(heading, refusedPrefix) {
			out[i].Field, out[i].Why = Ignored, "it says why the row was refused before"
			continue
		}
		if strings.HasPrefix(heading, OtherPrefix) {
			out[i].Why = byHeading
			continue
		}
		words, l := headingWords(heading), look(body, i)
		for n, p := range k.phrases {
			if k.Columns[p.field].Form == Day && l.signs >= most && l.days == 0 {
				continue
			}
			if s := p.score(words); s > 0 {
				claims = append(claims, claim{i, p.field, s*10_000 - n})
			}
		}
	}
	slices.SortStableFunc(claims, func(a, b claim) int { return b.score - a.score })
	columns, fields, lost := map[int]bool{}, map[int]int{}, map[int]bool{}
	for _, c := range claims {
		if columns[c.column] || lost[c.column] && c.score < exact*10_000 {
			continue // what its whole heading names is another column: a word of it names nothing else
		}
		if first, taken := fields[c.field]; taken && !k.Columns[c.field].Many {
			lost[c.column] = lost[c.column] || c.score >= exact*10_000
			if out[c.column].Why == nameless {
				out[c.column].Why = fmt.Sprintf("%q is read as %s", header[first], strings.ReplaceAll(k.Columns[c.field].Name, "_", " "))
			}
			continue
		}
		columns[c.column], fields[c.field] = true, c.column
		out[c.column].Field, out[c.column].Why = k.Columns[c.field].Name, byHeading
	}
	return out
}

// left is what a column is that no heading and no cell tells.
func (k *Kind[T]) left() string {
	if k.Keep != nil {
		return Other
	}
	return Ignored
}

// state puts what the user stated in place of what was proposed. Errors: a column or a field that is none, or two columns for one field.
func (k *Kind[T]) state(columns []Became, s Stated) error {
	if len(s.Match) > 0 {
		if len(s.Match) != len(columns) {
			return fmt.Errorf("%d columns are matched and the table has %d", len(s.Match), len(columns))
		}
		for i, field := range s.Match {
			if field != "" && field != columns[i].Field {
				columns[i].Field, columns[i].Why = field, saidSo
			}
		}
	}
	for name, field := range s.As {
		at := columnNamed(columns, name)
		if at < 0 {
			return fmt.Errorf("no column is called %q; there are %q", name, Result[T]{Columns: columns}.Header())
		}
		k.give(columns, at, field)
	}
	for at, field := range s.Own {
		if at < len(columns) {
			k.give(columns, at, field)
		}
	}
	return k.checkMatch(columns)
}

// give makes a column a field, which no other column is then, where only one can be.
func (k *Kind[T]) give(columns []Became, at int, field string) {
	for i := range columns {
		if f := k.at(field); columns[i].Field == field && f >= 0 && !k.Columns[f].Many {
			columns[i].Field, columns[i].Why = k.left(), "another column was stated for "+field
		}
	}
	columns[at].Field, columns[at].Why = field, saidSo
}

func (k *Kind[T]) checkMatch(columns []Became) error {
	first := map[string]string{}
	for _, c := range columns {
		if c.Field == Ignored || c.Field == Other && k.Keep != nil {
			continue
		}
		at := k.at(c.Field)
		if at < 0 {
			return fmt.Errorf("column %q is stated to be %q, which is no field; there are %s", c.Heading, c.Field,
				strings.Join(k.Fields(), ", "))
		}
		if before, twice := first[c.Field]; twice && !k.Columns[at].Many {
			return fmt.Errorf("columns %q and %q are both matched to %s: choose one", before, c.Heading, strings.ReplaceAll(c.Field,
				"_", " "))
		}
		first[c.Field] = c.Heading
	}
	return nil
}

// columnNamed returns the column of a heading, a number from 1 or a letter, -1 for none.
func columnNamed(columns []Became, name string) int {
	for i, c := range columns {
		if strings.EqualFold(c.Heading, name) {
			return i
		}
	}
	folded := strings.Join(cell.Words(name), " ")
	for i, c := range columns {
		if folded != "" && strings.Join(cell.Words(c.Heading), " ") == folded {
			return i
		}
	}
	if n, err := strconv.Atoi(name); err == nil && n >= 1 && n <= len(columns) {
		return n - 1
	}
	at := 0
	for _, r := range strings.ToUpper(name) {
		if r < 'A' || r > 'Z' || len(name) > 2 {
			return -1
		}
		at = at*26 + int(r-'A') + 1
	}
	if at > len(columns) {
		return -1
	}
	return at - 1
}

// missing returns the question for a field that the kind needs and no column is.
func (k *Kind[T]) missing(columns []Became, body []grid.Row) []Question {
	if len(k.Need) == 0 || slices.ContainsFunc(columns, func(c Became) bool { return slices.Contains(k.Need, c.Field) }) {
		return nil
	}
	if len(columns) == 1 && look(body, 0).spaced >= most {
		return []Question{{Key: "as", Options: []string{}, Text: "Every row is one cell, so which column is the " +
			strings.Join(k.Need, " or ") + "? Part them into columns first."}}
	}
	names := Result[T]{Columns: columns}.Header()
	return []Question{{Key: "as", Text: "Which column is the " + strings.Join(k.Need, " or ") + "?", Options: names}}
}
