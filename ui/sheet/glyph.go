package sheet

import (
	"strings"
	"sync"
	"unicode"

	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/text/unicode/norm"
)

// lacking stands for a character that the fonts do not have.
const lacking = '□'

// face is the regular font's table of characters; the bold one has the same.
var face = sync.OnceValue(func() *sfnt.Font {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic("sheet: the font that the program carries cannot be read: " + err.Error())
	}
	return f
})

// plainer are characters of typesetting with a plain one that the fonts have.
var plainer = map[rune]rune{'\u202f': ' ', '\u2009': ' ', '\u2007': ' ', '\u2010': '-', '\u2011': '-', '\t': ' ', '\r': ' ', '\n': ' ',
	'\u2028': ' ', '\u2029': ' '}

// shown returns words as the fonts can show them, on one line, and whether a character was lacking. Accents that stand by
// themselves are joined to their letters; marks without a shape are left out.
func shown(words string) (string, bool) {
	var b sfnt.Buffer
	lack := false
	out := strings.Map(func(r rune) rune {
		if p, ok := plainer[r]; ok {
			return p
		}
		if unicode.Is(unicode.Cf, r) || unicode.IsControl(r) {
			return -1
		}
		if i, err := face().GlyphIndex(&b, r); err != nil || i == 0 {
			lack = true
			return lacking
		}
		return r
	}, norm.NFC.String(strings.ToValidUTF8(words, string(lacking))))
	return out, lack
}
