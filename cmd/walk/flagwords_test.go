package main

import (
	"strings"
	"testing"
)

func TestOptionsAreFoundFaultWithInTheProgramsWords(t *testing.T) {
	for _, c := range []struct {
		args []string
		says string
	}{
		{[]string{"comps", "price", "a.csv", "--fast"}, "walk comps price: no option --fast\n"},
		{[]string{"comps", "price", "a.csv", "-subject"}, "walk comps price: --subject wants a value behind it\n"},
		{[]string{"comps", "prices", "--dirr", "x"}, "walk comps prices: no option --dirr\n"},
		{[]string{"comps", "rows", "a.csv", "--json=perhaps"}, `walk comps rows: --json "perhaps": that is no value of it` + "\n"},
		{[]string{"comps", "rows", "a.csv", "--as", "Betrag"}, `walk comps rows: --as "Betrag": `},
		{[]string{"lots", "rows", "a.csv", "---x"}, "walk lots rows: no option ---x\n"},
		{[]string{"rank", "a.csv", "--fast"}, "walk rank: no option --fast\n"},
	} {
		code, _, errs := ran(c.args...)
		if code != faulty || !strings.HasPrefix(errs, c.says) || strings.Contains(errs, "flag") || strings.Contains(errs, "Usage of") {
			t.Errorf("%q: exit %d, %q", c.args, code, errs)
		}
	}
}
