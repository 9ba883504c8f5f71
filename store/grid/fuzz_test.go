package grid

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"hash/crc32"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// whole fails where rows are none: no line, cells beyond bounds.
func whole(t *testing.T, g Grid) {
	t.Helper()
	for _, r := range g.Rows {
		if r.Line < 1 || len(r.Cells) > MaxColumns {
			t.Fatalf("%+v", r)
		}
		if strings.Join(r.Cells, "") == "" && len(r.Cells) > 0 && r.Fault == "" {
			t.Fatalf("a blank row has cells: %+v", r)
		}
	}
}

// seeds adds the tables of the project with an ending.
func seeds(f *testing.F, pattern string) {
	files, err := filepath.Glob("../../testdata/tables/" + pattern)
	if err != nil || len(files) == 0 {
		f.Fatal("no seeds", err)
	}
	for _, name := range files {
		data, err := os.ReadFile(name)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
}

func FuzzWorkbook(f *testing.F) {
	seeds(f, "*.xlsx")
	f.Add(book(map[string]string{"xl/worksheets/sheet1.xml": `<worksheet><sheetData><row r="1"><c r="A1" t="s"><v>-1</v></c></row>` +
		`</sheetData></worksheet>`}))
	f.Add(book(map[string]string{"xl/sharedStrings.xml": `<sst count="-5"/>`}))
	f.Fuzz(func(t *testing.T, data []byte) {
		if g, err := Read(data, Options{}); err == nil {
			whole(t, g)
		}
	})
}

// FuzzSheet reads any sheet in a workbook that is sound else.
func FuzzSheet(f *testing.F) {
	f.Add(`<worksheet><sheetData><row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1"><v>1e3</v></c></row></sheetData></worksheet>`,
		`<sst count="1"><si><t>x</t></si></sst>`)
	f.Add(`<worksheet><sheetData><row r="0"><c r="ZZZZ1" s="1"><v>9e99</v></c><c r="-1" t="s"><v> -1</v></c></row></sheetData></worksheet>`,
		`<sst count="9999999999999"/>`)
	f.Add(`<w><row><c t="s"><v>&#45;1</v></c><c t="s"><v><![CDATA[-1]]></v></c></row></w>`, `<sst/>`)
	f.Fuzz(func(t *testing.T, sheet, texts string) {
		if g, err := Read(book(map[string]string{"xl/worksheets/sheet1.xml": sheet, "xl/sharedStrings.xml": texts}),
			Options{}); err == nil {
			whole(t, g)
		}
	})
}

func FuzzClipboard(f *testing.F) {
	f.Add("Year\tPrice\n2016\t12\" wheels\n\"a\nb\"\t\"c\"\"d\"\n")
	f.Add("\"\t\"\n\t\n\"")
	f.Add("a,b\n\n1,\"x\ny\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		g, err := Read([]byte(text), Options{Delimiter: '\t'})
		if err != nil {
			return
		}
		whole(t, g)
		last := 0
		for _, r := range g.Rows {
			if r.Line <= last {
				t.Fatalf("line %d after %d", r.Line, last)
			}
			last = r.Line
		}
	})
}

// book returns a workbook of one sheet whose parts are replaced.
func book(parts map[string]string) []byte {
	all := map[string]string{
		"xl/workbook.xml": `<workbook xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>` +
			`<sheet name="A" r:id="r1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="r1" Target="worksheets/sheet1.xml"/></Relationships>`,
		"xl/styles.xml":              `<styleSheet><cellXfs><xf numFmtId="0"/><xf numFmtId="14"/></cellXfs></styleSheet>`,
		"xl/worksheets/sheet1.xml":   `<worksheet><sheetData/></worksheet>`,
	}
	for name, text := range parts {
		all[name] = text
	}
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	for name, text := range all {
		if text == "" {
			continue // left out
		}
		w, err := z.Create(name)
		if err != nil {
			panic(err)
		}
		fmt.Fprint(w, text)
	}
	z.Close()
	return out.Bytes()
}

// stating returns a workbook one part of which is said to unpack to a size.
func stating(t *testing.T, text string, size uint64) []byte {
	t.Helper()
	var packed, out bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	fmt.Fprint(w, text)
	w.Close()
	z := zip.NewWriter(&out)
	part, err := z.CreateRaw(&zip.FileHeader{Name: "xl/worksheets/sheet1.xml", Method: zip.Deflate, CRC32: crc32.ChecksumIEEE([]byte(text)),
		CompressedSize64: uint64(packed.Len()), UncompressedSize64: size})
	if err != nil {
		t.Fatal(err)
	}
	part.Write(packed.Bytes())
	z.Close()
	return out.Bytes()
}

// A workbook that says it unpacks to more than is read is refused before anything is unpacked, and so is one that lies about it.
func TestABombIsRefusedByItsSize(t *testing.T) {
	if _, err := Read(stating(t, "<a/>", MaxUnpacked+1), Options{}); !errors.Is(err, ErrTooLarge) {
		t.Errorf("a part that is too long: %v", err)
	}
	if _, err := Read(stating(t, strings.Repeat(" ", 1<<20), 1<<10), Options{}); !errors.Is(err, ErrWorkbook) {
		t.Errorf("a part longer than its directory says: %v", err)
	}
}

// The library would end the program on these.
func TestWhatTheLibraryTrustsIsCheckedFirst(t *testing.T) {
	for _, value := range []string{"-1", " -1", "&#45;1", "<![CDATA[-1]]>"} {
		sheet := `<worksheet><sheetData><row r="1"><c r="A1" t="s"><v>` + value + `</v></c></row></sheetData></worksheet>`
		if _, err := Read(book(map[string]string{"xl/worksheets/sheet1.xml": sheet}), Options{}); err == nil &&
			strings.TrimSpace(value) == value {
			t.Errorf("%s was read", value)
		}
	}
	if _, err := Read(book(map[string]string{"xl/sharedStrings.xml": `<sst count="99999999999"><si><t>x</t></si></sst>`}),
		Options{}); !errors.Is(err, ErrWorkbook) {
		t.Errorf("a count beyond reason: %v", err)
	}
}

// The part of styles is optional (ECMA-376 part 1, 12.3.20): without it a day is known by nothing but its looks.
func TestAWorkbookWithoutStylesIsRead(t *testing.T) {
	sheet := `<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>2026-03-01</t></is></c><c r="B1" s="1"><v>46082</v></c>` +
		`</row></sheetData></worksheet>`
	g, err := Read(book(map[string]string{"xl/styles.xml": "", "xl/worksheets/sheet1.xml": sheet}), Options{})
	if err != nil || len(g.Rows) != 1 || !slices.Equal(g.Rows[0].Cells, []string{"2026-03-01", "46082"}) {
		t.Errorf("%+v, %v", g, err)
	}
}
