package grid

import (
	"bytes"
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"
)

// The encodings that tell themselves.
const (
	UTF8  = "utf-8"
	UTF16 = "utf-16"
)

// Encodings are the 8-bit encodings that can be stated.
var Encodings = []string{"windows-1252", "iso-8859-2", "iso-8859-15", "windows-1250"}

var charmaps = map[string]*charmap.Charmap{
	"windows-1252": charmap.Windows1252, "iso-8859-2": charmap.ISO8859_2, "iso-8859-15": charmap.ISO8859_15,
	"windows-1250": charmap.Windows1250,
}

// What can be wrong with a whole file, in words for the person at the screen. Test with errors.Is.
var (
	ErrEmpty    = errors.New("the file is empty")
	ErrTooLarge = errors.New("the file is too large")
	ErrWorkbook = errors.New("this is no workbook that can be read")
	ErrBinary   = errors.New("the file holds bytes that no text has: it is no table")
	ErrQuote    = errors.New("a quote is opened and never closed")
	ErrSheet    = errors.New("the workbook has no such sheet")
)

// Unsettled is the error of an 8-bit text that the bytes alone don't decode.
type Unsettled struct {
	Ways []Way // at least two
}

// Way is what one encoding makes of a text.
type Way struct {
	Encoding, Shows string // the first line with letters that the ways read differently
}

func (u Unsettled) Error() string {
	var ways []string
	for _, w := range u.Ways {
		ways = append(ways, fmt.Sprintf("%s gives %q", w.Encoding, w.Shows))
	}
	return "the text is not UTF-8; state its encoding: " + strings.Join(ways, "; ")
}

// decoded returns the file as UTF-8 text without a byte order mark, and the encoding that it was in.
func decoded(data []byte, encoding string) ([]byte, string, error) {
	if len(bytes.TrimSpace(data)) == 0 {
		return nil, "", ErrEmpty
	}
	if bytes.HasPrefix(data, []byte("\xD0\xCF\x11\xE0")) {
		return nil, "", fmt.Errorf("%w: it is of the old kind (.xls): save it as .xlsx or CSV", ErrWorkbook)
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
	case encoding != "" && encoding != UTF8:
		return stated(text, encoding)
	}
	return settled(text)
}

// stated returns a text in the encoding that the user states.
func stated(text []byte, encoding string) ([]byte, string, error) {
	table := charmaps[strings.ToLower(encoding)]
	if table == nil {
		return nil, "", fmt.Errorf("%q is none of the encodings %s", encoding, strings.Join(Encodings, ", "))
	}
	out, err := table.NewDecoder().Bytes(text)
	if err != nil || bytes.ContainsRune(out, utf8.RuneError) {
		return nil, "", fmt.Errorf("%w: it holds bytes that %s leaves undefined", ErrBinary, encoding)
	}
	return out, strings.ToLower(encoding), nil
}

// settled returns an 8-bit text where its bytes leave one reading.
func settled(text []byte) ([]byte, string, error) {
	var u Unsettled
	var outs [][]byte
	for _, encoding := range Encodings {
		if encoding == "windows-1250" && !slices.ContainsFunc(text,
			func(b byte) bool { return strings.IndexByte("\x8c\x8d\x8f\x9c\x9d\x9f", b) >= 0 }) {
			continue // the letters that only it has do not stand here
		}
		out, _, err := stated(text, encoding)
		if err != nil || !plausible(out) || containsText(outs, out) {
			continue
		}
		outs, u.Ways = append(outs, out), append(u.Ways, Way{Encoding: encoding})
	}
	switch len(outs) {
	case 0:
		return nil, "", fmt.Errorf("%w, in no encoding that is read", ErrBinary)
	case 1:
		return outs[0], u.Ways[0].Encoding, nil
	}
	u.show(outs)
	return nil, "", u
}

func containsText(outs [][]byte, out []byte) bool {
	for _, o := range outs {
		if bytes.Equal(o, out) {
			return true
		}
	}
	return false
}

// show finds the first line that the ways read differently.
func (u *Unsettled) show(outs [][]byte) {
	lines := make([][][]byte, len(outs))
	for i, out := range outs {
		lines[i] = bytes.Split(out, []byte("\n"))
	}
	for n := range lines[0] {
		differs := false
		for i := range outs {
			u.Ways[i].Shows = strings.TrimSpace(string(lines[i][n]))
			differs = differs || !bytes.Equal(lines[i][n], lines[0][n])
		}
		if differs {
			return
		}
	}
}

// ordinals are letters that follow a digit in first, second, third: 1ère, 2ème, 1º, 1ª.
const ordinals = "èéºª"

// plausible reports whether a decoded text has no control characters and no foreign letter or sign beside a digit, where a sign of
// money would stand.
func plausible(text []byte) bool {
	before := ' '
	for _, r := range string(text) {
		switch {
		case r >= 0x80 && unicode.IsControl(r), r == '¤':
			return false
		case strings.ContainsRune(ordinals, r):
			r = ' ' // a digit may follow: nº1
		case r >= 0x80 && unicode.IsLetter(r) && unicode.IsDigit(before), unicode.IsDigit(r) && before >= 0x80 && unicode.IsLetter(before):
			return false
		}
		before = r
	}
	return true
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

func lineOf(text []byte, offset int) int { return 1 + bytes.Count(text[:offset], []byte("\n")) }
