package wire

import (
	"fmt"
	"strconv"
	"strings"

	"walkline/store/table"
	"walkline/ui/desk"
)

// written returns a value of a row as a person writes it: yes or no, thousands of prices and readings apart, lists without brackets.
func written(value any, form table.Form) string {
	if says, ok := value.(bool); ok {
		return map[bool]string{true: "yes", false: "no"}[says]
	}
	text := strings.Trim(fmt.Sprint(value), "[]")
	if form != table.Money && form != table.Odometer {
		return text
	}
	whole, rest, broken := strings.Cut(text, ".")
	n, err := strconv.Atoi(whole)
	if err != nil {
		return text
	}
	if broken {
		rest = "." + rest
	}
	return desk.Grouped(n) + rest
}
