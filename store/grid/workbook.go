package grid

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
	"time"

	"github.com/thedatashed/xlsxreader"
)

// How much a workbook may unpack to, and in how many parts. Starter values, ours.
const (
	MaxUnpacked = 256 << 20
	maxParts    = 5_000
	maxTexts    = 4 << 20
)

// workbook returns the rows of one sheet of a workbook.
func workbook(data []byte, sheet string) (g Grid, err error) {
	archive, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		return g, fmt.Errorf("%w: %v", ErrWorkbook, err)
	}
	if err := bounded(archive); err != nil {
		return g, err
	}
	early, err := sound(archive)
	if err != nil {
		return g, err
	}
	defer func() { // the library trusts what a part says of itself
		if v := recover(); v != nil {
			g, err = Grid{}, fmt.Errorf("%w: it is broken", ErrWorkbook)
		}
	}()
	if err := styled(archive); err != nil {
		return g, err
	}
	book, err := xlsxreader.NewReaderZip(archive)
	if err != nil {
		return g, fmt.Errorf("%w: %v", ErrWorkbook, err)
	}
	if sheet == "" && len(book.Sheets) > 0 {
		sheet = book.Sheets[0]
	}
	for _, name := range book.Sheets {
		if name == sheet {
			g, err = sheetOf(book, sheet, early)
			g.Sheets = book.Sheets
			return g, err
		}
	}
	return g, fmt.Errorf("%w as %q: it has %q", ErrSheet, sheet, book.Sheets)
}

// bounded refuses a workbook by the sizes that its directory states. [zip.File.Open] stops at the stated size.
func bounded(archive *zip.Reader) error {
	var total uint64
	for _, f := range archive.File {
		total += min(f.UncompressedSize64, MaxUnpacked+1)
		if total > MaxUnpacked || len(archive.File) > maxParts {
			return fmt.Errorf("%w: the workbook unpacks to more than %d MB: save the sheet alone, as CSV", ErrTooLarge, MaxUnpacked>>20)
		}
	}
	return nil
}

// suspect finds a value that may be a negative number, or hide one.
var suspect = regexp.MustCompile(`[>\[]\s*[-&]`)

// sound refuses what the library would not survive: a text that is counted from below zero, in a sheet, and texts in number beyond
// reason. It reports whether the days of the workbook count from 1904.
func sound(archive *zip.Reader) (early bool, err error) {
	for _, f := range archive.File {
		name := strings.ToLower(f.Name)
		if !strings.HasSuffix(name, ".xml") {
			continue
		}
		part, err := f.Open()
		if err != nil {
			return false, fmt.Errorf("%w: %v", ErrWorkbook, err)
		}
		text, err := io.ReadAll(io.LimitReader(part, MaxUnpacked))
		if err == nil && suspect.Match(text) || strings.HasSuffix(name, "sharedstrings.xml") || name == "xl/workbook.xml" {
			var days bool
			days, err = soundPart(text)
			early = early || days && name == "xl/workbook.xml"
		}
		if err = errors.Join(err, part.Close()); err != nil {
			return false, fmt.Errorf("%w: %s: %v", ErrWorkbook, f.Name, err)
		}
	}
	return early, nil
}

// soundPart walks one part.
func soundPart(text []byte) (early bool, err error) {
	d := xml.NewDecoder(bytes.NewReader(text))
	shared, value := false, false
	for {
		token, err := d.Token()
		if err != nil {
			return early, nil // the library says what is broken
		}
		switch t := token.(type) {
		case xml.StartElement:
			value = t.Name.Local == "v" // and a count is believed of a root of any name
			for _, a := range t.Attr {
				n, bad := strconv.Atoi(a.Value)
				switch {
				case a.Name.Local == "count" && bad == nil && (n < 0 || n > maxTexts):
					return early, fmt.Errorf("it says that it holds %d texts", n)
				case t.Name.Local == "workbookPr" && a.Name.Local == "date1904":
					early = a.Value == "1" || a.Value == "true"
				}
			}
			if t.Name.Local == "c" {
				shared = textCell(t)
			}
		case xml.CharData:
			if n, bad := strconv.Atoi(string(t)); shared && value && bad == nil && n < 0 {
				return early, fmt.Errorf("a cell names text %d", n)
			}
		case xml.EndElement:
			value = false
		}
	}
}

// textCell reports whether a cell names one of the shared texts.
func textCell(c xml.StartElement) bool {
	for _, a := range c.Attr {
		if a.Name.Local == "t" {
			return a.Value == "s"
		}
	}
	return false
}

// sheetOf returns the rows of a sheet.
func sheetOf(book *xlsxreader.XlsxFile, sheet string, early bool) (g Grid, err error) {
	for found := range book.ReadRows(sheet) {
		if err != nil {
			continue // to the end, so that the library's reader ends
		}
		row := Row{Line: found.Index}
		if row.Line == 0 {
			row.Line = len(g.Rows) + 1
		}
		if found.Error != nil {
			row.Fault = "the row is broken: " + found.Error.Error()
		}
		for i, c := range found.Cells {
			if err = row.put(c, i, early); err != nil {
				break
			}
		}
		row.Cells = trimmed(row.Cells)
		if g.Rows = append(g.Rows, row); len(g.Rows) > MaxRows {
			err = tooMany()
		}
	}
	return g, err
}

// put takes a cell of a workbook.
func (r *Row) put(c xlsxreader.Cell, at int, early bool) error {
	if c.Column != "" {
		if at = -1; len(c.Column) <= 3 {
			at = c.ColumnIndex()
		}
	}
	if at < 0 || at >= MaxColumns {
		return tooMany()
	}
	for len(r.Cells) <= at {
		r.Cells = append(r.Cells, "")
	}
	r.Cells[at] = c.Value
	switch c.Type {
	case xlsxreader.TypeNumerical:
		if x, err := strconv.ParseFloat(c.Value, 64); err == nil {
			r.Cells[at] = plainNumber(x)
			if at < 64 {
				r.Typed |= 1 << at
			}
		}
	case xlsxreader.TypeDateTime:
		if len(c.Value) >= len(time.DateOnly) {
			r.Cells[at] = dayOf(c.Value[:len(time.DateOnly)], early)
		}
	}
	return nil
}

// plainNumber returns a number as a decimal one, rounded to the 15 digits that a spreadsheet shows.
func plainNumber(x float64) string {
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', 15, 64), 64)
	return strconv.FormatFloat(x, 'f', -1, 64)
}

// daysFrom1904 is how many days lie between the two starts of serial days. Source: doc.go [4].
const daysFrom1904 = 1462

func dayOf(day string, early bool) string {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil || !early {
		return day
	}
	return t.AddDate(0, 0, daysFrom1904).Format(time.DateOnly)
}
