package grid

import (
	"strings"
	"testing"
)

func TestNoWrittenCellRunsAsAFormula(t *testing.T) {
	for _, cell := range []string{"=1+1", "+1", "-1", "@x", "\tx", "\rx", "\nx", "＝x", "＋x", "－x", "＠x", "'=x", "''=x", "'x", "x", "",
		"'", "''"} {
		safe := Defused(cell)
		if safe != "" && strings.ContainsRune(formulaStarts, []rune(safe)[0]) {
			t.Errorf("%q is written as %q", cell, safe)
		}
		if undefused(safe) != cell {
			t.Errorf("%q comes back as %q", cell, undefused(safe))
		}
	}
}
