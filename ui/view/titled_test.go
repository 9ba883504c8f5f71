package view

import (
	"strings"
	"testing"

	"walkline/ui/desk"
)

// An empty title when sold is rebuilt, as the case file has it; the words over the comparables name it like any other.
func TestTheResalePriceSaysItsTitle(t *testing.T) {
	for brand, title := range map[string]string{"": "rebuilt", "clear": "clear"} {
		o := desk.Open{Valued: &desk.Valued{}}
		o.Valued.Of.Resale.Subject.Brand, o.Case.Currency = brand, "USD"
		if said := ResaleWords(o); !strings.HasPrefix(said, "Sold with title "+title+". ") {
			t.Errorf("%q: %q", brand, said)
		}
	}
}
