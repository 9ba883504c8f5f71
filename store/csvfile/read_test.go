package csvfile

import (
	"errors"
	"slices"
	"strings"
	"testing"
)

func TestFilesThatAreNoTableAreRefusedWithASentence(t *testing.T) {
	for name, c := range map[string]struct {
		data  string
		given Reading
		want  error
		says  string
	}{
		"nothing":           {"", Reading{}, ErrEmpty, "empty"},
		"blank lines":       {"\n\r\n  ", Reading{}, ErrEmpty, "empty"},
		"a mark alone":      {"\uFEFF \n", Reading{}, ErrEmpty, "empty"},
		"header only":       {"price,year\n", Reading{}, ErrNoRows, "no rows"},
		"header and blanks": {"price,year\n,\n , \n", Reading{}, ErrNoRows, "no rows"},
		"one column":        {"price\n100\n200\n", Reading{}, ErrDelimiter, "comma, semicolon or tab"},
		"stated delimiter":  {"price,year\n1,2\n", Reading{Delimiter: '"'}, ErrDelimiter, "comma"},
		"no names":          {"12500,2019\n11000,2018\n", Reading{}, ErrHeader, "name"},
		"broken names":      {"pri\"ce,year\n1,2\n", Reading{}, ErrHeader, "quotes"},
		"workbook":          {"PK\x03\x04\x14\x00\x06\x00price,year\n", Reading{}, ErrWorkbook, "save the sheet as CSV"},
		"old workbook":      {"\xD0\xCF\x11\xE0\xA1\xB1\x1A\xE1", Reading{}, ErrWorkbook, "workbook"},
		"zero bytes":        {"price,year\n12\x0000,2019\n", Reading{}, ErrBinary, "line 2"},
		"32-bit text":       {"\xFF\xFE\x00\x00p\x00\x00\x00", Reading{}, ErrBinary, "bytes"},
		"cut 16-bit text":   {"\xFF\xFEp\x00r", Reading{}, ErrBinary, "middle"},
		"broken 16-bit":     {"\xFF\xFEp\x00,\x00y\x00\n\x00\x00\xD8a\x00", Reading{}, ErrBinary, "16-bit"},
		"8-bit text":        {"price,note\n100,caf\xE9\n", Reading{}, ErrEncoding, "line 2"},
		"undefined bytes":   {"price,note\n100,caf\x81\n", Reading{Encoding: Windows1252}, ErrBinary, "windows-1252"},
		"open quote":        {"price,note\n100,\"never\nclosed\n200,x\n", Reading{}, ErrQuote, "line 2"},
		"open quote, sep":   {"sep=,\nprice,note\n100,\"never\nclosed\n", Reading{}, ErrQuote, "line 3"},
		"too many columns":  {strings.Repeat("a,", MaxColumns) + "b\n1\n", Reading{}, ErrTooLarge, "columns"},
		"too many rows":     {"a,b\n" + strings.Repeat("1,2\n", MaxRows+1), Reading{}, ErrTooLarge, "rows"},
		"too many bytes":    {"a,b\n" + strings.Repeat(" ", MaxBytes), Reading{}, ErrTooLarge, "MB"},
	} {
		if _, err := Read([]byte(c.data), c.given); !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestTextIsReadHoweverItIsHeld(t *testing.T) {
	want := []string{"100", "café ½"}
	for name, c := range map[string]struct {
		data  string
		given Reading
	}{
		"utf-8":          {"price,note\n100,café ½\n", Reading{}},
		"mark, crlf":     {"\uFEFFprice,note\r\n100,café ½\r\n", Reading{}},
		"cr alone":       {"price,note\r100,café ½\r", Reading{}},
		"no last end":    {"price,note\n100,café ½", Reading{}},
		"semicolon":      {"price;note\n100;café ½\n", Reading{}},
		"tab":            {"price\tnote\n100\tcafé ½\n", Reading{}},
		"bar, stated":    {"price|note\n100|café ½\n", Reading{Delimiter: '|'}},
		"sep line":       {"sep=;\nprice;note\n100;café ½\n", Reading{}},
		"quoted, spaced": {"price , \"note\"\n 100, \"café ½\" \n", Reading{Delimiter: ','}},
		"utf-16 le":      {wideText("\uFEFFprice,note\n100,café ½\n", false), Reading{}},
		"utf-16 be":      {wideText("\uFEFFprice,note\n100,café ½\n", true), Reading{}},
		"utf-16 no mark": {wideText("price,note\n100,café ½\n", false), Reading{}},
		"windows-1252":   {"price,note\n100,caf\xE9 \xBD\n", Reading{Encoding: Windows1252}},
	} {
		table, err := Read([]byte(c.data), c.given)
		if name == "quoted, spaced" { // a space after a closing quote is a fault of the row, not of the file
			if err != nil || len(table.Records) != 1 || table.Records[0].Fault == "" {
				t.Errorf("%s: %+v, %v", name, table, err)
			}
			continue
		}
		if err != nil || len(table.Records) != 1 || !slices.Equal(table.Records[0].Cells, want) || !slices.Equal(table.Header, []string{"price", "note"}) {
			t.Errorf("%s: %+v, %v", name, table, err)
		}
	}
}

// wideText returns text as UTF-16; all of it lies in the basic plane.
func wideText(text string, bigEndian bool) string {
	var b strings.Builder
	for _, r := range text {
		high, low := byte(r>>8), byte(r)
		if bigEndian {
			b.Write([]byte{high, low})
		} else {
			b.Write([]byte{low, high})
		}
	}
	return b.String()
}

func TestDelimitersAreToldByWhatFitsMostRows(t *testing.T) {
	for text, want := range map[string]rune{
		"Price, EUR;Year;km\n12,50;2019;3\n9,10;2018;4\n": ';',
		"price,note\n100,a;b;c\n200,d;e\n":                ',',
		"a\tb,c\td\n1\t2,3\t4\n":                          '\t',
		"a,b,c\n1,2\n":                                    ',',
	} {
		if table, err := Read([]byte(text), Reading{}); err != nil || table.Delimiter != want {
			t.Errorf("%q is parted by %q, %v", text, table.Delimiter, err)
		}
	}
}

func TestLinesAreTheFilesOwn(t *testing.T) {
	table, err := Read([]byte("sep=,\r\nprice,note\r\n1,\"two\r\nlines\"\r\n\r\n,\r\n2,x\r\n3,in\"ch\r\n4,y,z\r\n5,v,\r\n"), Reading{})
	if err != nil {
		t.Fatal(err)
	}
	var lines []int
	var faults []bool
	for _, r := range table.Records {
		lines, faults = append(lines, r.Line), append(faults, r.Fault != "")
	}
	if !slices.Equal(lines, []int{3, 7, 8, 9, 10}) || !slices.Equal(faults, []bool{false, false, true, true, false}) || table.Blank != 1 {
		t.Fatalf("lines %v, faults %v, %d blank", lines, faults, table.Blank)
	}
	if table.Records[0].Cells[1] != "two\nlines" || table.Records[2].Cells[0] != `3,in"ch` {
		t.Fatalf("%+v", table.Records)
	}
}

func TestNamesOfColumnsAreMadeWhole(t *testing.T) {
	table, err := Read([]byte("price,,Price, a  b ,price\n1,2,3,4,5\n"), Reading{})
	if want := []string{"price", "column 2", "Price", "a b", "price (2)"}; err != nil || !slices.Equal(table.Header, want) {
		t.Fatalf("%q, %v", table.Header, err)
	}
}

func TestAQuoteThatRunsOnNamesTheLinesThatItTook(t *testing.T) {
	table, err := Read([]byte("price,note\n1,\"open\n2,x\n3,\"y\"\n4,z\n"), Reading{})
	if err != nil || len(table.Records) != 2 || table.Records[0].Line != 2 || !strings.Contains(table.Records[0].Fault, "up to 4") || table.Records[1].Line != 5 {
		t.Fatalf("%+v, %v", table.Records, err)
	}
}
