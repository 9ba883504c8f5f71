package assets_test

import (
	"cmp"
	"encoding/json"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/assets"
	"walkline/store/casefile"
	"walkline/valuation"
)

// rewrite says to write the table of the wrecks anew and to print it: make wrecks.
var rewrite = flag.Bool("wrecks", false, "write the table of the wrecks anew, and print it")

const (
	wrecksAt    = "../testdata/wrecks"
	wreckTable  = wrecksAt + "/table.txt"
	cleanResale = 18500.0 // of the invented mid-size of all wrecks, before it was hit
)

// nod is what a veteran would nod at, for a one-person shop with used parts at 35 an own hour. Every limit is common practice, no
// source, from memory: a band to stay within, no target. A limit of 0 asks for nothing.
type nod struct {
	wreck        string
	repair, all  [2]float64 // known work; known work and hidden damage together
	bid          [2]float64 // as a share of the clean price
	none         bool       // the plan is no rebuild
	why          string
	needs, never []string // lines that are, and are not, in the plan
}

var nods = []nod{
	{wreck: "01b_scuff_front", repair: [2]float64{300, 900}, why: "a cover refinished, and the vehicle made ready"},
	{wreck: "01_light_front", repair: [2]float64{1200, 2500}, bid: [2]float64{.25, .4}, why: "bolted parts, all to be had used"},
	{wreck: "03b_corner_hit_suspension", repair: [2]float64{2000, 4000}, needs: []string{"wheel_alignment"},
		why: "a corner with its suspension, alignment always"},
	{wreck: "02_heavy_front_rail_bags", repair: [2]float64{7000, 10000}, bid: [2]float64{.1, .2},
		needs: []string{"nose_donor", "wheel_alignment"},
		why:   "rails, restraints, and a front end from a donor"},
	{wreck: "05_side_Bpillar_bags", repair: [2]float64{6000, 9500}, why: "a pillar, two doors, one side's bags"},
	{wreck: "07_rear_quarter_floor", repair: [2]float64{4500, 8000}, why: "welded tail with one quarter"},
	{wreck: "08_rollover", all: [2]float64{14000, 0}, none: true, why: "mostly parts: more than the vehicle brings"},
	{wreck: "10_hail", repair: [2]float64{3500, 6000}, why: "an insurer's total at a removal specialist"},
	{wreck: "10c_hail_left", repair: [2]float64{0, 1200}, why: "dents that stay cost no work; the price gives way"},
	{wreck: "14_mech_blown", repair: [2]float64{3000, 4500}, needs: []string{"engine_replace", "transmission_replace"},
		why: "most need an engine or a transmission, installed"},
	{wreck: "09c_flood_minor", repair: [2]float64{300, 1500}, never: []string{"engine_replace", "flood_modules"},
		why: "wet carpet: little"},
	{wreck: "09d_flood_dash", all: [2]float64{12000, 0}, none: true, needs: []string{"engine_replace", "flood_restraints",
		"flood_modules"}, why: "electrics, engine, restraints: mostly parts"},
	{wreck: "11_theft_stripped", needs: []string{"theft_wheels", "theft_seats", "catalytic_converter", "infotainment_unit",
		"airbag_driver"},
		never: []string{"subframe_front", "oil_pan", "floor_pan", "control_arm_front_left"},
		why:   "what is missing, and little else: missing wheels are no bent undercarriage"},
	{wreck: "12_engine_fire", all: [2]float64{9000, 0}, none: true, why: "parts, mostly"},
	{wreck: "12c_smoke", repair: [2]float64{300, 1500}, never: []string{"engine_harness", "fire_hoses"}, why: "smoke alone is cleaned"},
	{wreck: "15_ev_pack_func", needs: []string{"pack_isolation_test"}, never: []string{"exhaust_middle", "fuel_lines", "oil_pan"},
		why: "an electric car has no exhaust"},
}

func TestWrecksStayWithinWhatAVeteranNodsAt(t *testing.T) {
	answers := wrecks(t)
	for _, n := range nods {
		a, found := answers[n.wreck]
		if !found {
			t.Errorf("no wreck %s", n.wreck)
			continue
		}
		nodded(t, n, "repair", a.Repair.Mean, n.repair)
		nodded(t, n, "repair and hidden damage", a.Repair.Mean+a.Hidden.Mean, n.all)
		share := 0.0
		if a.WalkAway != nil {
			share = float64(*a.WalkAway) / 100 / cleanResale
		}
		nodded(t, n, "bid", share, n.bid)
		if n.none && a.Plan == valuation.Rebuild && a.WalkAway != nil {
			t.Errorf("%s: the plan is a rebuild at %.0f %% of the clean price (%s)", n.wreck, 100*share, n.why)
		}
		named(t, n, a)
	}
	salt, fresh := answers["09b_flood_salt"], answers["09_flood_fresh"]
	if s, f := salt.Repair.Mean+salt.Hidden.Mean, fresh.Repair.Mean+fresh.Hidden.Mean; s < 1.4*f {
		t.Errorf("salt water comes to %.0f, fresh to %.0f: salt is far worse", s, f)
	}
	if r, l := answers["08_rollover"].Hidden.Mean, answers["11b_theft_light"].Hidden.Mean; r < 2.5*l {
		t.Errorf("a rollover hides %.0f, a light theft %.0f", r, l)
	}
	if h, l := answers["10_hail"].WalkAway, answers["10c_hail_left"].WalkAway; h == nil || l == nil || *l < *h {
		t.Errorf("hail that stays bids %v, hail that is taken out %v", l, h)
	}
}

func nodded(t *testing.T, n nod, what string, x float64, limits [2]float64) {
	t.Helper()
	if x < limits[0] || limits[1] > 0 && x > limits[1] {
		t.Errorf("%s: %s %.4g is outside %v (%s)", n.wreck, what, x, limits, n.why)
	}
}

// named checks which lines are in the plan: needed ones in most cases.
func named(t *testing.T, n nod, a valuation.Answer) {
	t.Helper()
	there := map[string]bool{}
	for _, l := range a.Repair.Lines {
		there[l.ID] = true
	}
	for _, id := range n.needs {
		if !there[id] {
			t.Errorf("%s has no %s (%s)", n.wreck, id, n.why)
		}
	}
	for _, id := range n.never {
		if there[id] {
			t.Errorf("%s has %s (%s)", n.wreck, id, n.why)
		}
	}
}

// TestTableOfTheWrecks shows what a change of the catalogue or of the engine does to each wreck: the table is kept, and
// rewritten on purpose.
func TestTableOfTheWrecks(t *testing.T) {
	answers := wrecks(t)
	var b strings.Builder
	fmt.Fprintf(&b, "%-30s %6s %8s %8s %6s %8s %12s %8s %6s\n", "wreck", "hours", "repair", "hidden", "days", "bid", "plan", "stop at", "wins")
	for _, name := range wreckNames(t) {
		b.WriteString(wreckRow(t, name, answers[name]))
	}
	if *rewrite {
		if err := os.WriteFile(wreckTable, []byte(b.String()), 0o666); err != nil {
			t.Fatal(err)
		}
		fmt.Print(b.String())
		return
	}
	kept, err := os.ReadFile(wreckTable)
	if err != nil {
		t.Fatal(err)
	}
	if string(kept) != b.String() {
		t.Errorf("the wrecks come to something else than %s says; look at each, then make wrecks:\n%s", wreckTable, b.String())
	}
}

// wreckRow writes what one wreck comes to. Plan, stop line and chance to win stand there where the answer has them.
func wreckRow(t *testing.T, name string, a valuation.Answer) string {
	t.Helper()
	var more struct {
		Plan      string   `json:"plan"`
		StopLine  *float64 `json:"stop_line"`
		WinChance *float64 `json:"win_chance"`
	}
	if err := json.Unmarshal(casefile.WriteAnswer(a), &more); err != nil {
		t.Fatal(err)
	}
	bid := "none"
	if a.WalkAway != nil {
		bid = fmt.Sprintf("%.0f", float64(*a.WalkAway)/100)
	}
	figure := func(x *float64, form string) string {
		if x == nil {
			return "-"
		}
		return fmt.Sprintf(form, *x)
	}
	return fmt.Sprintf("%-30s %6.0f %8.0f %8.0f %6.0f %8s %12s %8s %6s\n", name, a.Hours.Mean, a.Repair.Mean, a.Hidden.Mean, a.Days.Mean, bid,
		cmp.Or(more.Plan, "-"), figure(more.StopLine, "%.0f"), figure(more.WinChance, "%.2f"))
}

func wreckNames(t testing.TB) []string {
	t.Helper()
	paths, err := filepath.Glob(wrecksAt + "/*.json")
	if err != nil || len(paths) < 30 {
		t.Fatal(err, paths)
	}
	var names []string
	for _, p := range paths {
		names = append(names, strings.TrimSuffix(filepath.Base(p), ".json"))
	}
	return names
}

// valued holds the wrecks once they are valued.
var valued = map[string]valuation.Answer{}

// wrecks values every wreck, once for all tests.
func wrecks(t testing.TB) map[string]valuation.Answer {
	t.Helper()
	if len(valued) > 0 {
		return valued
	}
	for _, name := range wreckNames(t) {
		c, k := wreck(t, name), starter(t)
		ways, err := valuation.ProposeWays(c, k, false)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		c.WaysOut = ways.WaysOut
		a, err := valuation.Value(c, k)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		valued[name] = a
	}
	return valued
}

// wreck reads one case file of the wrecks.
func wreck(t testing.TB, name string) valuation.Case {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(wrecksAt, name+".json"))
	if err != nil {
		t.Fatal(err)
	}
	c, faults := casefile.Read(data)
	if len(faults) > 0 {
		t.Fatalf("%s: %v", name, faults)
	}
	return c
}

// starter is what the program ships.
func starter(t testing.TB) valuation.Knowledge {
	t.Helper()
	k, faults := casefile.Knowledge(assets.Jobs(), assets.Risks(), assets.ResalePrior(), assets.Jurisdictions()...)
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	if k.Parts, faults = casefile.Assemblies(assets.Assemblies()); len(faults) > 0 {
		t.Fatal(faults)
	}
	return k
}
