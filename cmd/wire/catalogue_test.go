package wire_test

import (
	"reflect"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation"
)

// Every entry that ships can be made one's own, kept and read again, and nothing of it is lost or found at fault.
func TestTheWholeCatalogueCanBeKeptAsOnesOwn(t *testing.T) {
	d, _ := open(t)
	s := d.Load(t.Context())
	s = d.Do(t.Context(), s, desk.EditOwn("all", func(o *valuation.Own) {
		o.Jobs, o.Risks, o.Findings = d.Know.Jobs.Jobs, d.Know.Risks.Risks, d.Know.Risks.Findings
	}))
	if s.Trouble != "" || len(s.OwnFaults) > 0 {
		t.Fatal(s.Trouble, s.OwnFaults)
	}
	again := d.Load(t.Context())
	if again.Trouble != "" || !reflect.DeepEqual(again.Know, again.Starter) {
		t.Errorf("%q: what was kept differs from what ships", again.Trouble)
	}
}

func TestAnOwnEntryWithAnUnknownKeyIsNotRead(t *testing.T) {
	d, book := open(t)
	kept := map[string]any{"format": valuation.OwnFormat, "currency": "USD",
		"jobs": []any{map[string]any{"id": "hood", "job": "Replace the hood", "houres": 3}}}
	if err := book.PutSetting(t.Context(), "catalogue", kept); err != nil {
		t.Fatal(err)
	}
	s := d.Load(t.Context())
	if !strings.Contains(s.Trouble, "houres") || !strings.Contains(s.Trouble, "hours") || len(s.Know.Jobs.Jobs) != len(d.Know.Jobs.Jobs) {
		t.Errorf("trouble %q", s.Trouble)
	}
}
