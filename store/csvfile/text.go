package csvfile

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// The encodings that a file may be in.
const (
	UTF8        = "utf-8"
	UTF16       = "utf-16"
	Windows1252 = "windows-1252" // only when the user says so: an 8-bit file does not tell its encoding
)

// What can be wrong with a whole file, in words for the person at the screen. Test with errors.Is.
var (
	ErrEmpty     = errors.New("the file is empty")
	ErrTooLarge  = errors.New("the file is too large")
	ErrWorkbook  = errors.New("this is a spreadsheet workbook or an archive, not CSV: open it and save the sheet as CSV")
	ErrBinary    = errors.New("the file holds bytes that no text has: it is not CSV")
	ErrEncoding  = errors.New("the text is not UTF-8: save it as UTF-8, or state that it is windows-1252")
	ErrDelimiter = errors.New("no comma, semicolon or tab parts the first line into columns: save the file as CSV")
	ErrHeader    = errors.New("the first line does not name the columns: add a line of names")
	ErrNoRows    = errors.New("the file has a line of names and no rows below it")
	ErrQuote     = errors.New("a quote is opened and never closed")
)

// decoded returns the file as UTF-8 text without a byte order mark, and the encoding that it was in.
func decoded(data []byte, encoding string) ([]byte, string, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, "", ErrEmpty
	}
	if bytes.HasPrefix(data, []byte("PK\x03\x04")) || bytes.HasPrefix(data, []byte("\xD0\xCF\x11\xE0")) {
		return nil, "", ErrWorkbook
	}
	if order := wide(data); order != nil {
		text, err := fromUTF16(data, order)
		return text, UTF16, err
	}
	text := bytes.TrimPrefix(data, []byte("\xEF\xBB\xBF"))
	switch {
	case len(bytes.TrimSpace(text)) == 0:
		return nil, "", ErrEmpty
	case bytes.IndexByte(text, 0) >= 0:
		return nil, "", fmt.Errorf("%w (a zero byte in line %d)", ErrBinary, lineOf(text, bytes.IndexByte(text, 0)))
	case utf8.Valid(text):
		return text, UTF8, nil
	case encoding == Windows1252:
		return fromWindows1252(text)
	}
	return nil, "", fmt.Errorf("%w (line %d)", ErrEncoding, lineOf(text, firstInvalid(text)))
}

// wide returns the byte order of UTF-16 text, nil when it is not UTF-16. Without a mark, it is taken for UTF-16 when the
// first two characters are Latin ones: their other byte is zero, and UTF-8 text has no zero byte.
func wide(data []byte) binary.ByteOrder {
	switch {
	case bytes.HasPrefix(data, []byte("\xFF\xFE\x00\x00")), bytes.HasPrefix(data, []byte("\x00\x00\xFE\xFF")):
		return nil // UTF-32: its zero bytes refuse it
	case bytes.HasPrefix(data, []byte("\xFF\xFE")):
		return binary.LittleEndian
	case bytes.HasPrefix(data, []byte("\xFE\xFF")):
		return binary.BigEndian
	case len(data) < 4:
		return nil
	case data[0] != 0 && data[1] == 0 && data[2] != 0 && data[3] == 0:
		return binary.LittleEndian
	case data[0] == 0 && data[1] != 0 && data[2] == 0 && data[3] != 0:
		return binary.BigEndian
	}
	return nil
}

func fromUTF16(data []byte, order binary.ByteOrder) ([]byte, error) {
	if len(data)%2 != 0 {
		return nil, fmt.Errorf("%w: it ends in the middle of a 16-bit character", ErrBinary)
	}
	units := make([]uint16, 0, len(data)/2)
	for i := 0; i < len(data); i += 2 {
		units = append(units, order.Uint16(data[i:]))
	}
	if units[0] == 0xFEFF {
		units = units[1:]
	}
	text := []byte(string(utf16.Decode(units)))
	switch {
	case len(bytes.TrimSpace(text)) == 0:
		return nil, ErrEmpty
	case bytes.ContainsRune(text, utf8.RuneError) || bytes.IndexByte(text, 0) >= 0:
		return nil, fmt.Errorf("%w: its 16-bit characters are broken", ErrBinary)
	}
	return text, nil
}

func fromWindows1252(data []byte) ([]byte, string, error) {
	text, err := charmap.Windows1252.NewDecoder().Bytes(data)
	if err != nil || bytes.ContainsRune(text, utf8.RuneError) {
		return nil, "", fmt.Errorf("%w: it holds bytes that windows-1252 leaves undefined", ErrBinary)
	}
	return text, Windows1252, nil
}

func firstInvalid(text []byte) int {
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		if r == utf8.RuneError && size == 1 {
			return i
		}
		i += size
	}
	return len(text)
}

func lineOf(text []byte, offset int) int { return 1 + bytes.Count(text[:offset], []byte("\n")) }
