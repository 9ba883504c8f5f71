package table

import (
	"fmt"
	"slices"
	"strings"

	"walkline/store/cell"
	"walkline/store/grid"
)

// rivals asks which column is a field that several headings name as well: a price asked and one paid, one in each of two currencies, the
// same heading twice. Columns that were stated, and those with the same cells, leave nothing open.
func (k *Kind[T]) rivals(columns []Became, body []grid.Row, s *Stated) (open []Question) {
	if len(s.Match) > 0 {
		return nil
	}
	for i, c := range columns {
		f := k.at(c.Field)
		if f < 0 || k.Columns[f].Many || c.Why != byHeading {
			continue
		}
		options, places := []string{c.Heading}, []int{i}
		for j := range columns {
			if columns[j].Field == k.left() && columns[j].Why != saidSo && k.rival(columns[i].Heading, columns[j].Heading, f) &&
				differ(body, i, j) {
				options, places = append(options, columns[j].Heading), append(places, j)
			}
		}
		if len(options) > 1 {
			open = append(open, Question{Key: "as", Word: c.Field, Options: options, At: places,
				Text: fmt.Sprintf("Which column is the %s? Several headings name it.", strings.ReplaceAll(c.Field, "_", " "))})
		}
	}
	return open
}

// rival reports whether a heading names a field as well as the one that was taken for it. Of texts only the same words do: a count of rows
// beside a lot number is no rival.
func (k *Kind[T]) rival(taken, other string, field int) bool {
	f, score := k.best(other)
	if _, has := k.best(taken); f != field || score < exact && has >= exact {
		return false
	}
	return k.Columns[field].Form == Money || slices.Equal(headingWords(taken), headingWords(other))
}

// differ reports whether two columns say something else in a row.
func differ(body []grid.Row, a, b int) bool {
	return slices.ContainsFunc(body, func(r grid.Row) bool {
		one, two := at(r.Cells, a), at(r.Cells, b)
		return !cell.Nothing(two) && one != two
	})
}
