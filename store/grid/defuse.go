package grid

import "strings"

// formulaStarts are the characters after which a spreadsheet program runs a cell as a formula. Source: OWASP, "CSV Injection" (from
// memory).
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// Defused returns a cell that no spreadsheet program runs: one that starts like a formula gets an apostrophe, the spreadsheets' own mark
// for text. A cell that already looks so gets another, so that [Read] gives it back exactly.
func Defused(cell string) string {
	if rest := strings.TrimLeft(cell, "'"); rest != "" && strings.ContainsRune(formulaStarts, []rune(rest)[0]) {
		return "'" + cell
	}
	return cell
}

// undefused returns the cell that [Defused] was given.
func undefused(cell string) string {
	if cell == "" || cell[0] != '\'' {
		return cell
	}
	if rest := strings.TrimLeft(cell, "'"); rest != "" && strings.ContainsRune(formulaStarts, []rune(rest)[0]) {
		return cell[1:]
	}
	return cell
}
