package csvfile

import "strings"

// formulaStarts are the characters after which a spreadsheet program runs a cell as a formula. Source: doc.go [3].
const formulaStarts = "=+-@\t\r\n＝＋－＠"

// defused returns a cell that no spreadsheet program runs: one that starts like a formula gets an apostrophe, the
// spreadsheets' own mark for text. A cell that already looks so gets another, so that [undefused] returns it exactly.
func defused(cell string) string {
	rest := strings.TrimLeft(cell, "'")
	if rest != "" && strings.ContainsRune(formulaStarts, []rune(rest)[0]) {
		return "'" + cell
	}
	return cell
}

// undefused returns the cell that [defused] was given.
func undefused(cell string) string {
	rest := strings.TrimLeft(cell, "'")
	if rest != "" && rest != cell && strings.ContainsRune(formulaStarts, []rune(rest)[0]) {
		return cell[1:]
	}
	return cell
}
