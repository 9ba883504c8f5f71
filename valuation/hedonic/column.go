package hedonic

import (
	"math"
	"slices"
	"sort"
	"strings"
)

// column is an extra column of the table that the subject states too.
type column struct {
	name   string
	at     int            // among the cells
	words  bool           // levels of words; otherwise numbers
	centre float64        // of numbers: the subject's own value
	mean   float64        // of numbers: stands in where a row has none
	scale  float64        // of numbers: what one unit of the effect is
	reach  float64        // of numbers: no row is further from the subject, in units of scale
	term   int            // of numbers
	levels map[string]int // of words: the term of each level
	group  int
}

// Words in the name of a column that say what it is of. Common practice, no source.
var (
	engineWords = []string{"engine", "fuel", "transmission", "gearbox", "power", "displacement", "litre", "liter", "cylinder", "drive", "hp",
		"kw", "ps", "cc"}
	placeWords = []string{"town", "city", "place", "region", "state", "country", "county", "location", "postcode", "zip", "area", "where"}
)

// cause returns what an adjustment by the column is for.
func (c column) cause() Cause {
	for _, word := range strings.FieldsFunc(strings.ToLower(c.name), func(r rune) bool { return r == '_' || r == ' ' || r == '-' }) {
		if slices.Contains(engineWords, word) {
			return CauseEngine
		}
		if slices.Contains(placeWords, word) {
			return CausePlace
		}
	}
	return CauseOther
}

// Limits on extra columns: more levels or columns than this are more likely notes and names than facts of the vehicle.
const (
	mostColumns  = 24
	mostLevels   = 40
	leastFilled  = 0.5
	wordsPerRows = 3 // a column of words needs at least this many rows to a level, once it has more than fewLevels
	fewLevels    = 8
)

// notFacts are columns that say nothing of the vehicle, or that the fit reads elsewhere.
var notFacts = map[string]bool{MonthsColumn: true, "currency": true, "price": true, "id": true, "row_id": true, "vin": true,
	"note": true, "source": true, "url": true}

// columns returns the extra columns that can tell rows apart, in the order of their names.
func (t table) columns() []column {
	var out []column
	for at := range t.names {
		if len(out) == mostColumns {
			break
		}
		if c, ok := t.column(at); ok {
			out = append(out, c)
		}
	}
	return out
}

func (t table) column(at int) (column, bool) {
	counts := map[string]int{}
	var xs []float64
	filled := 0
	for _, r := range t.rows {
		c := r.cells[at]
		if c.word == "" {
			continue
		}
		filled++
		counts[c.word]++
		if c.counts {
			xs = append(xs, c.number)
		}
	}
	own, out := t.subject.cells[at], column{name: t.names[at], at: at}
	if len(t.rows) == 0 || float64(filled) < leastFilled*float64(len(t.rows)) || (len(counts) == 1 && counts[own.word] > 0) {
		return column{}, false
	}
	if own.counts && len(xs) == filled {
		out.setNumbers(xs, own.number)
		return out, true
	}
	if len(counts) > fewLevels && filled < wordsPerRows*len(counts) {
		return column{}, false
	}
	out.words, out.levels = true, commonest(counts, own.word)
	return out, true
}

func (c *column) setNumbers(xs []float64, own float64) {
	mean, square := 0.0, 0.0
	for _, x := range xs {
		mean += x / float64(len(xs))
	}
	for _, x := range xs {
		square += (x - mean) * (x - mean) / float64(len(xs))
	}
	scale := math.Sqrt(square)
	if scale == 0 {
		scale = max(math.Abs(own-mean), 1e-9)
	}
	c.centre, c.mean, c.scale = own, mean, scale
}

// commonest returns the levels that get an effect of their own: the subject's and those with the most rows.
func commonest(counts map[string]int, own string) map[string]int {
	names := make([]string, 0, len(counts))
	for name := range counts {
		if name != own {
			names = append(names, name)
		}
	}
	sort.Slice(names, func(i, j int) bool {
		if counts[names[i]] != counts[names[j]] {
			return counts[names[i]] > counts[names[j]]
		}
		return names[i] < names[j]
	})
	if len(names) > mostLevels {
		names = names[:mostLevels]
	}
	sort.Strings(names)
	levels := map[string]int{}
	for _, name := range append(names, own) {
		levels[name] = -1
	}
	return levels
}
