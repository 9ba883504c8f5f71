package checks_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"walkline/store/casefile"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
)

// Every shipped pack is whole, says to check with the agency, and marks what is from memory as such.
func TestShippedPacks(t *testing.T) {
	ids := map[string]bool{}
	for _, p := range shipped(t) {
		if ids[p.ID] {
			t.Errorf("%s twice", p.ID)
		}
		ids[p.ID] = true
		if !strings.Contains(p.Note, "Check with the agency") {
			t.Errorf("%s: %q", p.ID, p.Note)
		}
	}
	for _, id := range []string{"*", "US", "US-AL", "US-MI", "US-IA", "US-NC", "US-TX", "US-NJ", "US-WA", "US-GA", "US-OK", "US-CO", "US-VA",
		"US-IN", "US-NV"} {
		if !ids[id] {
			t.Errorf("no pack for %s", id)
		}
	}
	for _, c := range []struct {
		source checks.Source
		want   string
	}{
		{checks.Source{Citation: "MCL 257.217c", Status: "read", Read: "2026-11-25"}, "MCL 257.217c, read 2026-11-25: check with the agency."},
		{checks.Source{Citation: "NRS 487", Status: "secondary", Read: "2026-11-25"},
			"NRS 487, read where another page quotes it 2026-11-25: check with the agency."},
		{checks.Source{Status: "from memory"}, "From memory: ask the agency."},
	} {
		if got := c.source.Words(); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestChoose(t *testing.T) {
	packs := append(shipped(t), checks.Pack{ID: "US-MI", Name: "Mine"})
	for code, want := range map[string][]string{
		"US-AL": {"US-AL", "US", "*"}, " us-al ": {"US-AL", "US", "*"}, "US-XX": {"US", "*"}, "CA-QC": {"*"}, "": {"*"}, "US": {"US", "*"},
	} {
		var got []string
		for _, p := range checks.Choose(packs, code) {
			got = append(got, p.ID)
		}
		if !slices.Equal(got, want) {
			t.Errorf("%q: %v, want %v", code, got, want)
		}
	}
	if got := checks.Choose(packs, "US-MI")[0].Name; got != "Mine" {
		t.Errorf("a pack of the user's own is not first: %s", got)
	}
}

// A user's pack is refused with every fault named by its key.
func TestPackFaults(t *testing.T) {
	doc := `{"format":"walkline-jurisdiction/1","id":"Michigan","name":" ","currency":"USD","note":"",
		"thresholds":[{"name":"","from":"75","reached":true,"below":"0.5","citation":"","status":"read","read":"2026-02-30"},
			{"name":"x","from":"0.9","below":"0.8","salvage_share":"0.2","status":"heard"}],
		"documents":[{"text":"","status":"from memory"}], "fees":[{"name":"x","amount":"-1","status":"from memory"}],
		"private_sales":{"most":-1,"months":0,"text":"x","status":"from memory"}, "insepctions":[]}`
	_, faults := casefile.Pack([]byte(doc))
	var keys []string
	for _, f := range faults {
		keys = append(keys, f.Key)
	}
	for _, want := range []string{"id", "name", "thresholds[0].name", "thresholds[0].from", "thresholds[0].citation", "thresholds[0].read",
		"thresholds[1].below", "thresholds[1].salvage_share", "thresholds[1].status", "documents[0].text", "fees[0].amount",
		"private_sales.most", "private_sales.months", "insepctions"} {
		if !slices.Contains(keys, want) {
			t.Errorf("no fault at %s among %v", want, keys)
		}
	}
	if _, faults := casefile.Pack([]byte(`{"currency":"USD"`)); len(faults) == 0 {
		t.Error("half a document passed")
	}
}

func listed(t *testing.T, title lot.Title) map[string]checks.Item {
	t.Helper()
	items := map[string]checks.Item{}
	for _, i := range checks.List(checks.Subject{Lot: lot.Lot{VIN: goodVIN, Title: title},
		Packs: checks.Choose(shipped(t), title.RegisterIn)}) {
		if old, twice := items[i.ID]; twice {
			t.Errorf("%s twice: %+v %+v", i.ID, old, i)
		}
		items[i.ID] = i
	}
	return items
}

func TestListsFollowTheJurisdiction(t *testing.T) {
	nj := listed(t, lot.Title{Document: "salvage", RegisterIn: "US-NJ"})
	if i := nj["keep_us_nj_3"]; !strings.Contains(i.Text, "each major component") ||
		!strings.Contains(i.Source, "N.J.A.C. 13:21-22.7, read") || !i.Tick {
		t.Errorf("%+v", i)
	}
	if _, there := nj["keep_anywhere_1"]; there {
		t.Error("New Jersey's own list and the generic one both stand")
	}
	al := listed(t, lot.Title{Document: "salvage", RegisterIn: "US-AL"})
	if i := al["keep_anywhere_1"]; !strings.Contains(i.Source, "From memory: ask the agency") {
		t.Errorf("%+v", i)
	}
	if i := al["standing_private"]; !strings.Contains(i.Source, "16 CFR 455.1(d)(3), from memory: ask the agency") ||
		!strings.Contains(i.Text, "It grants nothing below that") {
		t.Errorf("%+v", i)
	}
	if _, there := listed(t, lot.Title{RegisterIn: "US-XX"})["pack_missing"]; !there {
		t.Error("a missing pack is not named")
	}
	if _, there := listed(t, lot.Title{})["register_unknown"]; !there {
		t.Error("nobody asks where it will be registered")
	}
}

// Michigan: a scrap title may not be rebuilt, a salvage title may (MCL 257.217c). A user's pack may forbid more.
func TestTitlesThatAPackForbids(t *testing.T) {
	if i, there := listed(t, lot.Title{Document: "salvage", RegisterIn: "US-MI"})["stop_pack"]; there {
		t.Errorf("%+v", i)
	}
	own := checks.Pack{ID: "US-MI", Name: "Mine", Rebuild: []checks.Rebuild{{Title: "Flood damage", Row: checks.Row{Text: "No flood."}}}}
	for word, want := range map[string]bool{"flood": true, "Flood Damage": true, "salvage": false, "": false} {
		items := checks.List(checks.Subject{Lot: lot.Lot{VIN: goodVIN, Title: lot.Title{Document: word, RegisterIn: "US-MI"}},
			Packs: []checks.Pack{own}})
		if got := len(checks.Stops(items)) == 1; got != want {
			t.Errorf("title %q: stopped %v", word, got)
		}
	}
}

// leave is how a sentence would read that grants leave to sell. Common practice, no source: no list of a program grants any.
var leave = regexp.MustCompile(`(?i)(may|can) (be sold|sell)\b|without a (dealer's )?licen[cs]e (you|one) (may|can)|up to \d+ ` +
	`(vehicles? )?may|(are|is) allowed to sell|you may sell|no licen[cs]e (is )?needed`)

func TestNoSentenceReadsAsLeaveToSell(t *testing.T) {
	said := 0
	for _, p := range shipped(t) {
		for _, i := range checks.List(checks.Subject{Lot: lot.Lot{Title: lot.Title{Document: "salvage", RegisterIn: p.ID}},
			Packs: checks.Choose(shipped(t), p.ID)}) {
			said++
			if text := i.Text + " " + i.Why; leave.MatchString(text) && !strings.Contains(text, "mostly not be sold") {
				t.Errorf("%s: %q", p.ID, text)
			}
		}
	}
	if said < 500 || !leave.MatchString("Up to 4 may be sold without a dealer's license.") {
		t.Errorf("%d sentences were read", said)
	}
}

// Twelve states more and three other countries beside the first fourteen states: each says to ask, and cites what it was read in.
func TestPacksOfMoreStatesAndCountries(t *testing.T) {
	states, countries := 0, 0
	for _, p := range shipped(t) {
		if strings.HasPrefix(p.ID, "US-") {
			states++
		} else if p.ID != "US" && p.ID != checks.Anywhere {
			countries++
		}
	}
	if states < 26 || countries < 3 {
		t.Errorf("%d states and %d other places", states, countries)
	}
}
