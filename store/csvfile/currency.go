package csvfile

import (
	"fmt"
	"slices"
)

// CurrencyColumn is the name of the column that states each row's currency, as published price sets have it.
const CurrencyColumn = "currency"

// StatedCurrency returns the currency that a table's column of currencies states, empty when it has none.
// Errors: more than one is stated.
func StatedCurrency(t Table) (string, error) {
	at := slices.Index(t.Header, CurrencyColumn)
	stated := ""
	for _, r := range t.Records {
		if at < 0 || r.Fault != "" || r.Cells[at] == "" {
			continue
		}
		if stated != "" && r.Cells[at] != stated {
			return "", fmt.Errorf("line %d: currency %q: the rows before it are in %s; one table has one currency", r.Line, r.Cells[at], stated)
		}
		stated = r.Cells[at]
	}
	return stated, nil
}

// OtherCurrency returns what is wrong when a table states another currency than the one it is read for.
func OtherCurrency(t Table, code string) error {
	stated, err := StatedCurrency(t)
	if err == nil && stated != "" && stated != code {
		err = fmt.Errorf("the currency column says %q, and the prices are wanted in %s", stated, code)
	}
	return err
}
