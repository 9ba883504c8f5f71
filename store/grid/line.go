package grid

import "strings"

// lineCells parts a line without its end into cells as encoding/csv would. It can't where a cell runs over the line's end, or a quote
// stands where none can.
func lineCells(cells []string, line string, delimiter byte) (out []string, can bool) {
	for more := true; more; {
		var cell string
		if cell, line, more, can = lineCell(line, delimiter); !can {
			return cells, false
		}
		cells = append(cells, cell)
	}
	return cells, true
}

// lineCell returns the first cell of a line, the rest after it, and whether another cell follows.
func lineCell(line string, delimiter byte) (cell, rest string, more, can bool) {
	start := 0
	for start < len(line) && (line[start] == ' ' || line[start] == '\t') {
		start++
	}
	if start < len(line) && line[start] == '"' {
		return quotedCell(line[start+1:], delimiter)
	}
	for at := start; at < len(line); at++ {
		switch line[at] {
		case delimiter:
			return line[start:at], line[at+1:], true, true
		case '"':
			return "", "", false, false
		}
	}
	return line[start:], "", false, true
}

// quotedCell is [lineCell] of a line whose first quote is taken off.
func quotedCell(line string, delimiter byte) (cell, rest string, more, can bool) {
	doubled := false
	for at := 0; at < len(line); at++ {
		if line[at] != '"' {
			continue
		}
		after := line[at+1:]
		if after != "" && after[0] == '"' {
			doubled = true
			at++
			continue
		}
		if cell = line[:at]; doubled {
			cell = strings.ReplaceAll(cell, `""`, `"`)
		}
		if after == "" {
			return cell, "", false, true
		}
		return cell, after[1:], true, after[0] == delimiter
	}
	return "", "", false, false
}
