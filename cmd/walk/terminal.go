package main

import (
	"context"
	"fmt"
	"io"
	"regexp"

	"walkline/store/plain"
)

// mostBytes is the size of the largest file that is read. Ours: a table of a million comparables stays below.
const mostBytes = 256 << 20

// readFile returns a plain file of bounded size.
func readFile(path string) ([]byte, error) { return plain.Read(context.Background(), path, mostBytes) }

// terminal is a writer to a terminal, which obeys control characters: those of a file that was read never reach it raw. They
// are written as JSON does, so that a document stays the same document.
type terminal struct{ w io.Writer }

// controls are the control characters but tab, line feed and a carriage return before one: those of ASCII and, in UTF-8, those of ISO 6429.
var controls = regexp.MustCompile("\r\n|[\x00-\x08\x0b-\x1f\x7f\u0080-\u009f]")

// Write writes all of p, which holds whole characters.
func (t terminal) Write(p []byte) (int, error) {
	shown := controls.ReplaceAllFunc(p, func(c []byte) []byte {
		if len(c) == 2 && c[0] == '\r' {
			return c
		}
		return fmt.Appendf(nil, `\u%04x`, []rune(string(c))[0])
	})
	if _, err := t.w.Write(shown); err != nil {
		return 0, err
	}
	return len(p), nil
}
