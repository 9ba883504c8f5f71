package assets_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// strict decodes data into v and refuses keys that v does not know and anything behind the document.
func strict(t *testing.T, data []byte, v any) {
	t.Helper()
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		t.Fatal(err)
	}
	if _, err := d.Token(); err != io.EOF {
		t.Fatalf("something follows the document: %v", err)
	}
}

func jobs(t *testing.T) repair.Catalogue {
	t.Helper()
	var c repair.Catalogue
	strict(t, assets.Jobs(), &c)
	return c
}

func risks(t *testing.T) hidden.Catalogue {
	t.Helper()
	var c hidden.Catalogue
	strict(t, assets.Risks(), &c)
	return c
}

var snake = regexp.MustCompile(`^[a-z0-9]+(_[a-z0-9]+)*$`)

func TestCataloguesSayWhatTheirFiguresAre(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, head := range [][3]string{{j.Format, j.Currency, j.Note}, {r.Format, r.Currency, r.Note}} {
		if head[1] != "USD" || !strings.Contains(head[2], "starter value, from memory") || !strings.Contains(head[2], "replace it with yours") {
			t.Errorf("the head %q does not mark its figures as starter values in USD", head)
		}
	}
	if j.Format != "walkline-jobs/1" || r.Format != "walkline-risks/1" {
		t.Errorf("formats %q and %q", j.Format, r.Format)
	}
	if len(j.Jobs) < 160 || len(r.Risks) < 75 || len(r.Findings) < 45 {
		t.Errorf("%d jobs, %d risks, %d findings: fewer than promised", len(j.Jobs), len(r.Risks), len(r.Findings))
	}
}

func TestJobsAreWhole(t *testing.T) {
	c := jobs(t)
	seen, brought := map[string]bool{}, map[string]bool{}
	for _, j := range c.Jobs {
		if !snake.MatchString(j.ID) || seen[j.ID] {
			t.Errorf("job %q: not a new snake_case id", j.ID)
		}
		seen[j.ID] = true
		for _, b := range j.Brings {
			brought[b.ID] = true
		}
	}
	for _, j := range c.Jobs {
		for _, f := range jobFaults(j, seen) {
			t.Errorf("job %s: %s", j.ID, f)
		}
		if len(j.Calls) == 0 && !brought[j.ID] {
			t.Errorf("job %s: nothing calls for it and nothing brings it", j.ID)
		}
	}
}

// jobFaults lists what is wrong with one job; known holds every id of the catalogue.
func jobFaults(j repair.Job, known map[string]bool) []string {
	faults := append(hourFaults(j.Hours), signFaults(j.Calls)...)
	faults = append(faults, changeFaults(j.Moves, j.Never, j.Scales)...)
	for _, id := range j.Covers {
		if !known[id] || id == j.ID {
			faults = append(faults, "covers "+id)
		}
	}
	if j.Job == "" || j.Why == "" || j.Operation == "" || !slices.Contains(lot.Areas, j.Area) {
		faults = append(faults, "no name, reason, operation or known area")
	}
	if !chance(j.Chance) {
		faults = append(faults, "a chance outside 0..1")
	}
	faults = append(faults, threeFaults(map[string]prob.Three{"materials": j.Materials, "outside": j.Outside})...)
	for _, p := range j.Parts {
		faults = append(faults, partFaults(p)...)
	}
	for _, b := range j.Brings {
		if !known[b.ID] || !chance(b.Chance) {
			faults = append(faults, "brings "+b.ID+", which is unknown or has a chance outside 0..1")
		}
	}
	if len(j.Hours)+len(j.Parts) == 0 && j.Materials.Zero() && j.Outside.Zero() {
		faults = append(faults, "costs nothing")
	}
	return faults
}

var sources = []string{"new_maker", "new_aftermarket", "used", "donor", "repaired", "made"}

func partFaults(p repair.Part) []string {
	var faults []string
	sure := false
	for _, o := range p.Options {
		sure = sure || o.Chance == nil || *o.Chance >= 1
		if !slices.Contains(sources, o.Source) || !chance(o.Chance) || o.Price.Zero() || o.LeadDays.High <= 0 {
			faults = append(faults, fmt.Sprintf("%s, %s: source, chance, price or lead time", p.Name, o.Source))
		}
		faults = append(faults, threeFaults(map[string]prob.Three{"price": o.Price, "freight": o.Freight, "lead_days": o.LeadDays,
			"extra_hours": o.ExtraHours, "core_back": o.CoreBack})...)
	}
	if len(p.Options) == 0 || p.Name == "" {
		faults = append(faults, "a part without a name or an option")
	}
	if f := p.Fallback; f != nil {
		faults = append(faults, threeFaults(map[string]prob.Three{"fallback price": f.Price, "fallback lead": f.LeadDays,
			"fallback hours": f.Hours})...)
		sure = sure || !f.Price.Zero() || !f.Hours.Zero()
	}
	if !sure {
		faults = append(faults, p.Name+": may end in nothing")
	}
	return faults
}

func TestBringsDoNotRunInARing(t *testing.T) {
	brings := map[string][]string{}
	for _, j := range jobs(t).Jobs {
		for _, b := range j.Brings {
			brings[j.ID] = append(brings[j.ID], b.ID)
		}
	}
	state := map[string]int{} // 1 on the way, 2 done
	var walk func(id string, way []string)
	walk = func(id string, way []string) {
		if state[id] == 1 {
			t.Errorf("ring: %s", strings.Join(append(way, id), " brings "))
		}
		if state[id] != 0 {
			return
		}
		state[id] = 1
		for _, next := range brings[id] {
			walk(next, append(way, id))
		}
		state[id] = 2
	}
	for id := range brings {
		walk(id, nil)
	}
}

// walk is the way round the vehicle in which the findings stand.
var walk = []string{"front", "engine bay", "electrical", "front wheel", "wheels", "wheel arches", "side", "top", "rear", "underneath",
	"driver's seat", "interior", "paper"}

func TestRisksAndFindingsAreWhole(t *testing.T) {
	c := risks(t)
	ids, findings, used := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, f := range c.Findings {
		if !snake.MatchString(f.ID) || findings[f.ID] || f.Text == "" || f.Look == "" || f.Where == "" || f.Minutes <= 0 || f.Minutes > 10 {
			t.Errorf("finding %q: id, words or minutes", f.ID)
		}
		if !slices.Contains([]string{"none", "flashlight", "magnet", "tape", "code reader"}, f.Tools) || !strings.HasSuffix(f.Text, "?") {
			t.Errorf("finding %s: tool %q or no question", f.ID, f.Tools)
		}
		findings[f.ID] = true
	}
	for i, f := range c.Findings {
		if i > 0 && slices.Index(walk, f.Where) < slices.Index(walk, c.Findings[i-1].Where) || !slices.Contains(walk, f.Where) {
			t.Errorf("finding %s: %q is out of the walk round the vehicle", f.ID, f.Where)
		}
	}
	for _, r := range c.Risks {
		if !snake.MatchString(r.ID) || ids[r.ID] {
			t.Errorf("risk %q: not a new snake_case id", r.ID)
		}
		ids[r.ID] = true
		for _, f := range riskFaults(r, findings) {
			t.Errorf("risk %s: %s", r.ID, f)
		}
		for _, e := range r.Findings {
			used[e.Finding] = true
		}
	}
	work := map[string]bool{}
	for _, j := range jobs(t).Jobs {
		work[j.ID] = true
	}
	for _, r := range c.Risks {
		for _, b := range r.Brings {
			if !work[b.ID] || !chance(b.Chance) {
				t.Errorf("risk %s brings %q", r.ID, b.ID)
			}
		}
	}
	for _, f := range c.Findings {
		if !used[f.ID] {
			t.Errorf("finding %s informs no risk", f.ID)
		}
	}
	if !findings["wheel_out_of_place"] {
		t.Error("the finding of the case file's example is missing")
	}
}

// riskFaults lists what is wrong with one risk. A finding must speak for its damage: more often seen with it than without.
func riskFaults(r hidden.Entry, known map[string]bool) []string {
	faults := append(hourFaults(r.Hours), signFaults(r.Triggers)...)
	faults = append(faults, changeFaults(r.Moves, r.Never, r.Scales)...)
	faults = append(faults, threeFaults(map[string]prob.Three{"cost": r.Cost, "days": r.Days})...)
	if seen := r.Chance.A + r.Chance.B; r.Chance.A <= 0 || r.Chance.B <= 0 || seen < 4 || seen > 20 {
		faults = append(faults, "a chance that weighs less than 4 or more than 20 cases")
	}
	if r.Loading == nil || *r.Loading < 0.1 || *r.Loading > 0.6 || r.Name == "" || r.Why == "" || r.Cost.Zero() {
		faults = append(faults, "loading, name, reason or cost")
	}
	// A risk's days hold its hours of work too, at some 30 hours a week (starter value, from memory), with a fifth to spare.
	if r.Days.Likely < 0.8*7/30*likely(r.Hours) {
		faults = append(faults, "its days do not hold its hours of work")
	}
	if len(r.Triggers) == 0 || len(r.Findings) == 0 {
		faults = append(faults, "no trigger or no finding")
	}
	for _, e := range r.Findings {
		if !known[e.Finding] || !(0 < e.IfAbsent && e.IfAbsent < e.IfPresent && e.IfPresent < 1) {
			faults = append(faults, "evidence of "+e.Finding)
		}
	}
	return faults
}

func likely(hours map[string]prob.Three) float64 {
	sum := 0.0
	for _, h := range hours {
		sum += h.Likely
	}
	return sum
}

func hourFaults(hours map[string]prob.Three) []string {
	var faults []string
	for trade := range hours {
		if !slices.Contains(lot.Trades, trade) {
			faults = append(faults, "unknown trade "+trade)
		}
	}
	return append(faults, threeFaults(hours)...)
}

func threeFaults(values map[string]prob.Three) []string {
	var faults []string
	for name, v := range values {
		if !v.Ordered() || v.Low < 0 {
			faults = append(faults, fmt.Sprintf("%s %v is negative or out of order", name, v))
		}
	}
	return faults
}

func signFaults(signs []lot.Sign) []string {
	var faults []string
	for _, s := range signs {
		if s.Empty() {
			faults = append(faults, "a sign that asks for nothing")
		}
		lists := append(s.Lists(&lot.Lot{}), lot.Asked{Want: s.Areas, Words: lot.Areas}, lot.Asked{Want: s.Extents, Words: lot.Extents},
			lot.Asked{Want: s.Depths, Words: lot.Depths})
		for _, list := range lists {
			for _, w := range list.Want {
				if !slices.Contains(list.Words, w) {
					faults = append(faults, fmt.Sprintf("word %q is not in %v", w, list.Words))
				}
			}
		}
	}
	return faults
}

// changeFaults lists what is wrong with how a lot moves, scales and rules out an entry.
func changeFaults(moves []lot.Move, never []lot.Sign, scales []lot.Scale) []string {
	faults := signFaults(never)
	for _, m := range moves {
		faults = append(faults, signFaults([]lot.Sign{m.When})...)
		if !(m.Odds > 0) || m.Odds == 1 {
			faults = append(faults, fmt.Sprintf("odds times %g", m.Odds))
		}
	}
	for _, s := range scales {
		faults = append(faults, signFaults([]lot.Sign{s.When})...)
		if s.Parts+s.Materials+s.Hours <= 0 {
			faults = append(faults, "a scale that changes nothing")
		}
	}
	return faults
}

func chance(c *float64) bool { return c == nil || (*c > 0 && *c <= 1) }
