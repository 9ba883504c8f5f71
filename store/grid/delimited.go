package grid

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
)

// reader returns a strict reader of text. Spaces before a quote are allowed.
func reader(text io.Reader, delimiter rune) *csv.Reader {
	r := csv.NewReader(text)
	r.Comma, r.FieldsPerRecord, r.TrimLeadingSpace, r.ReuseRecord = delimiter, -1, true, true
	return r
}

// sampled is how many rows are looked at to tell the delimiter.
const sampled = 60

// detected returns the delimiter that parts the most rows into the same number of cells, 0 when none does. Of equals, a tab comes before a
// semicolon, a bar and a comma: what stands in every row of a table and could be a decimal mark is likelier that.
func detected(text []byte) rune {
	var best rune
	most := 0.0
	for _, delimiter := range []rune{'\t', ';', '|', ','} {
		if fit, cells := fitOf(text, delimiter); cells > 1 && fit > most {
			best, most = delimiter, fit
		}
	}
	return best
}

// fitOf returns the number of cells that most of the first rows with a delimiter have, and their share of all rows.
func fitOf(text []byte, delimiter rune) (fit float64, cells int) {
	if bytes.IndexByte(text, byte(delimiter)) < 0 {
		return 0, 0
	}
	r := reader(bytes.NewReader(text), delimiter)
	if delimiter == '\t' { // an empty cell is no space to be passed over, and a quote is itself
		r.TrimLeadingSpace, r.LazyQuotes = false, true
	}
	rows, having := 0, map[int]int{}
	for rows < sampled {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		rows++
		if err == nil && len(row) > 1 {
			having[len(row)]++
		}
	}
	for n, times := range having {
		if times > having[cells] || times == having[cells] && n > cells {
			cells = n
		}
	}
	return float64(having[cells]) / float64(max(rows, 1)), cells
}

// roomOfCells is for how many cells room is made at once.
const roomOfCells = 2000

// delimited returns the rows of a text. Errors: [ErrQuote], [ErrTooLarge].
func delimited(text []byte, delimiter rune) ([]Row, error) {
	if delimiter == '\t' {
		return tabbed(string(text))
	}
	p := parting{text: text, delimiter: delimiter, lines: counting{text: text}, buffer: bufio.NewReader(nil)}
	rows := make([]Row, 0, min(bytes.Count(text, []byte("\n"))+1, MaxRows))
	for p.at < len(text) {
		start, n := p.at, blank(text[p.at:])
		if n > 0 { // what encoding/csv passes over
			rows = append(rows, Row{Line: p.lines.at(start)})
			p.at += n
			continue
		}
		cells, err := p.next()
		if err == io.EOF {
			break
		}
		if len(rows) >= MaxRows || len(cells) > MaxColumns {
			return nil, tooMany()
		}
		row, err := rowOf(p.keep(cells), err, text[start:p.at], p.at == len(text))
		if err != nil {
			return nil, fmt.Errorf("%w: it starts in the row of line %d", err, p.lines.at(start))
		}
		row.Line = p.lines.at(start)
		rows = append(rows, row)
	}
	return rows, nil
}

// parting parts a text into rows.
type parting struct {
	text      []byte
	delimiter rune
	at        int // where the next row starts
	lines     counting
	buffer    *bufio.Reader
	cells     []string // of the last row
	free      []string // room for the cells of the next rows
}

// next returns the cells of the next row, which the row after it overwrites. A row that is one sound line is parted here; encoding/csv
// tells of every other. Errors: those of encoding/csv.
func (p *parting) next() (cells []string, err error) {
	rest := p.text[p.at:]
	if end := bytes.IndexByte(rest, '\n'); end >= 0 && strings.ContainsRune(",;|", p.delimiter) {
		line := string(bytes.TrimSuffix(rest[:end], []byte("\r")))
		if cells, parts := lineCells(p.cells[:0], line, byte(p.delimiter)); parts {
			p.cells, p.at = cells, p.at+end+1
			return cells, nil
		}
	}
	p.buffer.Reset(bytes.NewReader(rest))
	r := reader(p.buffer, p.delimiter)
	cells, err = r.Read()
	p.at += int(r.InputOffset())
	return cells, err
}

// keep returns cells in room of their own.
func (p *parting) keep(cells []string) []string {
	if len(p.free) < len(cells) {
		p.free = make([]string, max(roomOfCells, len(cells)))
	}
	n := copy(p.free, cells)
	kept := p.free[:n:n]
	p.free = p.free[n:]
	return kept
}

// blank returns the length of the empty line that a text begins with, 0 where it begins with none.
func blank(text []byte) int {
	switch {
	case bytes.HasPrefix(text, []byte("\n")):
		return 1
	case bytes.HasPrefix(text, []byte("\r\n")):
		return 2
	}
	return 0
}

func tooMany() error {
	return fmt.Errorf("%w: more than %d rows or %d columns: split it", ErrTooLarge, MaxRows, MaxColumns)
}

// counting tells the line of places that come in their order.
type counting struct {
	text []byte
	seen int
	line int
}

func (c *counting) at(place int) int {
	c.line += bytes.Count(c.text[c.seen:place], []byte("\n"))
	c.seen = place
	return c.line + 1
}

// rowOf returns a row that was found, trimmed and whole. Errors: a quote that is never closed has swallowed the rest of the file.
func rowOf(cells []string, err error, raw []byte, last bool) (Row, error) {
	if err == nil {
		return Row{Cells: trimmed(cells)}, nil
	}
	var broken *csv.ParseError
	if errors.As(err, &broken) {
		if errors.Is(err, csv.ErrQuote) && last && bytes.Count(raw, []byte(`"`))%2 == 1 {
			return Row{}, ErrQuote
		}
		fault := "a quote stands where none can: put the whole cell in quotes and double those inside it"
		if more := bytes.Count(bytes.TrimRight(raw, "\r\n"), []byte("\n")); more > 0 {
			fault += fmt.Sprintf(" (it took the next %d lines into this row)", more)
		}
		return Row{Cells: []string{strings.Trim(string(raw), "\r\n")}, Fault: fault}, nil
	}
	return Row{Cells: trimmed(cells)}, nil
}

// trimmed takes spaces around cells off, and a row of empty cells has none.
func trimmed(cells []string) []string {
	empty := true
	for i, cell := range cells {
		if cell = strings.TrimSpace(cell); cell != "" && (cell[0] >= 0x80 || cell[len(cell)-1] >= 0x80) {
			cell = strings.Trim(cell, "\u00a0\u202f")
		}
		cells[i] = undefused(cell)
		empty = empty && cells[i] == ""
	}
	if empty {
		return nil
	}
	return cells
}

// tabbed returns the rows of tab-separated text. A cell is quoted only where a quote that closes it stands before the next tab or line
// end; else a quote is itself, as in 12".
func tabbed(text string) ([]Row, error) {
	var rows []Row
	for line := 1; text != ""; {
		row := Row{Line: line}
		for more := true; more; {
			var cell string
			cell, text, more = tabbedCell(text)
			line += strings.Count(cell, "\n")
			row.Cells = append(row.Cells, cell)
			if len(row.Cells) > MaxColumns {
				return nil, tooMany()
			}
		}
		row.Cells = trimmed(row.Cells)
		if rows = append(rows, row); len(rows) > MaxRows {
			return nil, tooMany()
		}
		line++
	}
	return rows, nil
}

// tabbedCell returns the first cell of a text, the text after it, and whether another cell follows in its row.
func tabbedCell(text string) (cell, rest string, more bool) {
	if strings.HasPrefix(text, `"`) {
		for at := 1; at < len(text); at++ {
			if text[at] != '"' {
				continue
			}
			if at+1 < len(text) && text[at+1] == '"' {
				at++
				continue
			}
			after := strings.TrimPrefix(text[at+1:], "\r")
			if after == "" || after[0] == '\n' || after[0] == '\t' {
				return strings.ReplaceAll(text[1:at], `""`, `"`), after[min(1, len(after)):], after != "" && after[0] == '\t'
			}
			break
		}
	}
	end := strings.IndexAny(text, "\t\n")
	if end < 0 {
		return strings.TrimSuffix(text, "\r"), "", false
	}
	return strings.TrimSuffix(text[:end], "\r"), text[end+1:], text[end] == '\t'
}
