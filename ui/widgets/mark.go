package widgets

import (
	"strings"
	"sync/atomic"
)

// comma says that the fields' decimals stand behind a comma. It is one for the program, as the toolkit's theme is.
var comma atomic.Bool

// DecimalComma sets whether every field for a number reads and writes its decimals behind a comma, and points between thousands:
// "1.200,50". The window calls it with the shop's setting. Fields that are there show it once they are filled again.
func DecimalComma(on bool) { comma.Store(on) }

// swapping exchanges the two marks.
var swapping = strings.NewReplacer(".", ",", ",", ".")

// marked turns what the fields write into what the shop writes, and back.
func marked(s string) string {
	if comma.Load() {
		return swapping.Replace(s)
	}
	return s
}

// DecimalMark returns the mark that stands before decimals in the fields.
func DecimalMark() string { return marked(".") }
