package table

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"

	"walkline/store/cell"
	"walkline/store/grid"
)

// searched is how many rows are looked at for headings.
const searched = 30

// headed is a grid with its headings found.
type headed struct {
	header   []string
	body     []grid.Row // from the headings on, skipped rows among them
	names    [][]string // the rows that name the columns, to know them again
	line     int        // of the headings, 0 for none
	skipped  []Skipped
	headless bool
}

// head finds the headings of a grid, at a stated line or where the most cells name fields.
func (k *Kind[T]) head(g grid.Grid, stated *int) (headed, error) {
	rows := g.Rows
	at := -1
	switch {
	case stated == nil:
		at = k.likeliest(rows)
	case *stated > 0:
		at = slices.IndexFunc(rows, func(r grid.Row) bool { return r.Line == *stated && len(r.Cells) > 0 })
		if at < 0 {
			return headed{}, fmt.Errorf("no row stands in line %d, so it can't hold the headings", *stated)
		}
	}
	if at < 0 {
		return k.headless(rows)
	}
	first, last := at, at
	if at+1 < len(rows) && k.continues(rows[at+1]) {
		last++
	} else if at > 0 && stated == nil && k.continues(rows[at-1]) && len(filled(rows[at-1])) > 1 {
		first--
	}
	h := headed{line: rows[first].Line, body: rows[last+1:]}
	for i, r := range rows[:first] {
		h.skip(r, k.above(rows[:first], i))
	}
	for _, r := range rows[first : last+1] {
		h.names = append(h.names, r.Cells)
	}
	h.header = named(k.joined(h.names), h.widest(g.Delimiter))
	return h, nil
}

// above says what a row above the headings is.
func (k *Kind[T]) above(rows []grid.Row, i int) string {
	if len(rows[i].Cells) == 0 {
		return "blank"
	}
	return "a caption above the headings"
}

func (h *headed) skip(r grid.Row, why string) { h.skipped = append(h.skipped, Skipped{r.Line, why}) }

// widest returns how many cells the longest of the first rows has, where cells can't be shifted by an unquoted mark (a comma between
// thousands); else 0, and a row with more cells than there are names is refused.
func (h *headed) widest(delimiter rune) int {
	n := 0
	for _, r := range h.body[:min(len(h.body), searched)] {
		if r.Fault == "" && (delimiter == 0 || delimiter == '\t') {
			n = max(n, len(r.Cells))
		}
	}
	return n
}

// likeliest returns the row whose cells name the most fields, -1 for none: a row of names has no cell that is a number.
func (k *Kind[T]) likeliest(rows []grid.Row) int {
	best, most := -1, 0
	for i, r := range rows[:min(len(rows), searched)] {
		cells := filled(r)
		if n := k.naming(cells); n > most && (n >= 2 || len(cells) <= 2) {
			best, most = i, n
		}
	}
	return best
}

// filled returns the cells of a row that are not empty.
func filled(r grid.Row) []string {
	return slices.DeleteFunc(slices.Clone(r.Cells), func(c string) bool { return c == "" })
}

// naming returns how many fields the cells of a row name, 0 when one of them is a number or a day.
func (k *Kind[T]) naming(cells []string) int {
	fields := map[int]bool{}
	for _, c := range cells {
		if len(c) > 60 || c[0] >= '0' && c[0] <= '9' && !k.ordinal(c) {
			return 0
		}
		if _, _, err := lengthOrPrice(c); err == nil {
			return 0
		}
		if field, score := k.best(c); score > 0 && (score >= exact || len(cell.Words(c)) <= 4) {
			fields[field] = true
		}
	}
	return len(fields)
}

// ordinal reports whether a cell is a heading that begins with a first: "1st registration", "1ère immat.".
func (k *Kind[T]) ordinal(c string) bool {
	_, score := k.best(c)
	return score >= exact && c[0] == '1'
}

func lengthOrPrice(c string) (cell.Length, cell.Price, error) {
	p, err := cell.ReadMoney(c, 0)
	if err == nil {
		return cell.Length{}, p, nil
	}
	l, err := cell.ReadLength(c, 0)
	if err == nil && !l.Known {
		err = fmt.Errorf("no number")
	}
	return l, p, err
}

// continues reports whether a row is a second line of headings: only names, units and currencies, and one of them at least.
func (k *Kind[T]) continues(r grid.Row) bool {
	cells := filled(r)
	for _, c := range cells {
		bare := strings.Trim(c, "()[] ")
		_, score := k.best(c)
		if strings.ContainsFunc(c, unicode.IsDigit) || cell.UnitOf(bare) == "" && cell.Currencies(bare) == nil && score == 0 &&
			!parenthesised(c) && !joining.Has(c) {
			return false
		}
	}
	return len(cells) > 0 && r.Fault == ""
}

// joining are the words that a second line of headings ends the first with: "Listed" over "on".
var joining = cell.SetOf("on|at|for|to|by|am|um|le|el|il|op|dnia|date")

func parenthesised(c string) bool { return strings.HasPrefix(c, "(") && strings.HasSuffix(c, ")") }

// joined returns one name a column from one or two lines. A name of the upper line stands for the empty ones to its right, as joined cells
// of a spreadsheet do, where the lower line has names.
func (k *Kind[T]) joined(lines [][]string) []string {
	if len(lines) == 1 {
		return lines[0]
	}
	upper, lower := lines[0], lines[1]
	out := make([]string, max(len(upper), len(lower)))
	group := ""
	for i := range out {
		above, below := at(upper, i), at(lower, i)
		if above != "" {
			group = above
		}
		if below != "" && above == "" {
			above = group
		}
		out[i] = strings.TrimSpace(above + " " + below)
		if _, own := k.best(below); own >= exact {
			if _, both := k.best(out[i]); both < exact {
				out[i] = below
			}
		}
	}
	return out
}

func at(cells []string, i int) string {
	if i < len(cells) {
		return cells[i]
	}
	return ""
}

// named returns the names of the columns, made whole: an empty one is called by its place, a second one of a name by its count.
func named(names []string, width int) []string {
	seen := map[string]bool{}
	header := make([]string, max(len(names), width))
	for i := range header {
		name := strings.Join(strings.Fields(at(names, i)), " ")
		if name == "" {
			name = fmt.Sprintf("column %d", i+1)
		}
		unique := name
		for n := 2; seen[unique]; n++ {
			unique = fmt.Sprintf("%s (%d)", name, n)
		}
		seen[unique] = true
		header[i] = unique
	}
	return header
}

// headless takes a grid without headings: lone texts above the rows are captions.
func (k *Kind[T]) headless(rows []grid.Row) (headed, error) {
	h := headed{headless: true}
	width := 0
	for _, r := range rows[:min(len(rows), searched)] {
		width = max(width, len(r.Cells))
	}
	for len(rows) > 0 && (len(rows[0].Cells) == 0 || width > 1 && len(filled(rows[0])) == 1 && !strings.ContainsAny(rows[0].Cells[0],
		"0123456789")) {
		h.skip(rows[0], k.above(rows, 0))
		rows = rows[1:]
	}
	h.body = rows
	h.header = named(nil, width)
	return h, nil
}

// again reports whether a row names the columns once more.
func (h *headed) again(r *grid.Row) bool {
	for _, names := range h.names {
		same := 0
		for i, c := range r.Cells {
			if c != "" && !strings.EqualFold(c, at(names, i)) {
				same = -1
				break
			}
			if c != "" {
				same++
			}
		}
		if same >= min(2, len(names)) && same > 0 {
			return true
		}
	}
	return false
}

// totals are the words that begin a row which adds up others. Common practice, no source.
var totals = cell.SetOf("total|totals|sum|sums|subtotal|grand|average|averages|avg|mean|median|min|max|minimum|maximum|count|summe|" +
	"gesamt|gesamtsumme|zwischensumme|durchschnitt|mittelwert|mittel|schnitt|" +
	"anzahl|insgesamt|somme|moyenne|mediane|nombre|suma|media|mediana|promedio|razem|srednia|ogolem|lacznie|totaal|som|gemiddelde|" +
	"gemiddeld|aantal|totale|somma|conteggio|ø")

// passed says why a row of the body is none of the kind; empty: it may be one.
func (h *headed) passed(r *grid.Row) string {
	switch {
	case len(r.Cells) == 0:
		return "blank"
	case r.Fault != "":
		return ""
	case h.again(r):
		return "the headings again"
	}
	label, texts, numbers := "", 0, 0
	for _, c := range r.Cells {
		switch {
		case c == "":
		case c[0] >= '0' && c[0] <= '9', hasDigit(c) && !startsTotal(c):
			numbers++
		case isLetter(c[0]):
			label = c
			texts++
		case strings.Trim(c, "-–—=_+|:. ") == "":
		default:
			label = c
			texts++
		}
	}
	switch {
	case texts == 0 && numbers == 0:
		return "a ruled line"
	case texts == 1 && startsTotal(label):
		return fmt.Sprintf("%q adds up other rows", label)
	case texts == 1 && numbers == 0 && len(h.header) > 2 && strings.Contains(label, " "),
		texts == 0 && numbers == 1 && len(h.header) > 2 && slices.ContainsFunc(r.Cells, counts.MatchString):
		return "a caption or remark"
	}
	return ""
}

func isLetter(c byte) bool { return c|0x20 >= 'a' && c|0x20 <= 'z' }

// hasDigit reports whether a digit of ASCII stands in a cell.
func hasDigit(c string) bool {
	for i := range len(c) {
		if c[i] >= '0' && c[i] <= '9' {
			return true
		}
	}
	return false
}

// counts finds a word and the number it counts, as below a list: "Lots: 3".
var counts = regexp.MustCompile(`^\pL[\pL .]*[:=] ?[0-9]+$`)

// lossAfter finds a vehicle that is a total loss, which adds nothing up.
var lossAfter = regexp.MustCompile(`(?i)^total\s+loss`)

func startsTotal(c string) bool {
	if c == "" || c[0] >= '0' && c[0] <= '9' {
		return false
	}
	if strings.HasPrefix(c, "Ø") || strings.HasPrefix(c, "∑") || strings.HasPrefix(c, "Σ") {
		return true
	}
	return totals.Begins(c) && !lossAfter.MatchString(c)
}
