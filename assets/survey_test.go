package assets_test

import (
	"math"
	"slices"
	"testing"

	"walkline/valuation/hidden"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
)

// The rates of the bands below, starter values, from memory: money an own hour and money a day of waiting.
const ownHour, waitingDay = 35.0, 6.0

// band is what a survey may come to. Its limits are starter values, from memory: what a careful rebuilder would believe of
// a common mid-size car. Money is parts, materials and work bought in, by expected value.
type band struct {
	name     string
	lot      lot.Lot
	survey   []lot.Damage
	lines    [2]int
	money    [2]float64
	hours    [2]float64
	risks    [2]int
	surprise [2]float64 // expected hidden cost, own labour at its rate
}

func cell(area, extent, depth string) lot.Damage {
	return lot.Damage{Area: area, Extent: extent, Depth: depth}
}

func bags(l lot.Lot, positions ...string) lot.Lot {
	l.Airbags = positions
	return l
}

var flooded = lot.Lot{Loss: []string{"flood"}, Condition: "dead"}

var bands = []band{
	{"scuffed bumper", crash(), []lot.Damage{cell("12", "minor", "skin")}, [2]int{2, 4}, [2]float64{120, 400}, [2]float64{4, 10},
		[2]int{1, 5}, [2]float64{100, 450}},
	{"dented fender", crash(), []lot.Damage{cell("11", "minor", "skin")}, [2]int{2, 4}, [2]float64{120, 400}, [2]float64{5, 12}, [2]int{1, 5},
		[2]float64{100, 450}},
	{"light front", crash(), []lot.Damage{cell("12", "functional", "bolted")}, [2]int{8, 16}, [2]float64{800, 2000}, [2]float64{12, 28},
		[2]int{8, 14}, [2]float64{400, 999}},
	{"light rear", crash(), []lot.Damage{cell("06", "functional", "bolted")}, [2]int{8, 16}, [2]float64{600, 1700}, [2]float64{9, 24},
		[2]int{7, 14}, [2]float64{400, 999}},
	{"side with structure", crash(), []lot.Damage{cell("09", "functional", "structure"), cell("08", "functional", "bolted")}, [2]int{20, 36},
		[2]float64{2200, 4500}, [2]float64{45, 90}, [2]int{10, 16}, [2]float64{1000, 2000}},
	{"front wheel knocked off", crash(), []lot.Damage{cell("11", "disabling", "bolted"), cell("12", "functional", "bolted")}, [2]int{28, 48},
		[2]float64{2000, 4500}, [2]float64{25, 60}, [2]int{14, 22}, [2]float64{1000, 2600}},
	{"hard front with bags", bags(crash(), "front"), []lot.Damage{cell("12", "disabling", "structure"), cell("11", "functional", "bolted")},
		[2]int{55, 85},
		[2]float64{5000, 8000}, [2]float64{65, 110}, [2]int{14, 28}, [2]float64{1500, 3500}},
	{"hard rear", crash(), []lot.Damage{cell("06", "disabling", "structure")}, [2]int{26, 40}, [2]float64{2800, 5500}, [2]float64{45, 90},
		[2]int{7, 16}, [2]float64{400, 1500}},
	{"flood over the rockers", flooded, []lot.Damage{cell("water", "functional", "bolted")}, [2]int{20, 36}, [2]float64{2500, 6000},
		[2]float64{60, 110},
		[2]int{11, 17}, [2]float64{3000, 6500}},
	{"hail", lot.Lot{Loss: []string{"hail"}, Condition: "drives"}, nil, [2]int{8, 24}, [2]float64{1000, 3200}, [2]float64{2, 15},
		[2]int{5, 12}, [2]float64{500, 1600}},
}

// worthWriting is the chance below which a rebuilder writes no line: the blend of a panel that is itself painted in every other case. From
// memory.
const worthWriting = 0.25

func TestTypicalSurveysComeToWhatARebuilderBelieves(t *testing.T) {
	j, r := jobs(t), risks(t)
	for _, b := range bands {
		lines := without(repair.Plan(nil, j, b.lot, b.survey), anyway)
		money, hours := known(lines)
		raised := hidden.Raise(nil, r, b.lot, b.survey)
		surprise := unseen(raised)
		written := 0
		for _, l := range lines {
			if repair.Or(l.Chance, 1) >= worthWriting {
				written++
			}
		}
		within(t, b.name+": lines", float64(len(lines)), [2]float64{float64(b.lines[0]), math.Inf(1)})
		within(t, b.name+": lines worth writing", float64(written), [2]float64{0, float64(b.lines[1])})
		within(t, b.name+": money", money, b.money)
		within(t, b.name+": hours", hours, b.hours)
		within(t, b.name+": risks", float64(len(raised)), [2]float64{float64(b.risks[0]), float64(b.risks[1])})
		within(t, b.name+": hidden cost", surprise, b.surprise)
	}
}

// anyway is work that every wreck brings, whatever was hit: the bands are of what the survey itself asks for.
var anyway = []string{"sale_preparation", "flatbed", "wheel_check", "one_time_parts"}

func without(lines []repair.Line, ids []string) []repair.Line {
	return slices.DeleteFunc(lines, func(l repair.Line) bool { return slices.Contains(ids, l.ID) })
}

func within(t *testing.T, what string, x float64, limits [2]float64) {
	t.Helper()
	if x < limits[0] || x > limits[1] {
		t.Errorf("%s %.0f is outside %v", what, x, limits)
	}
}

// More damage never costs less, in every area.
func TestMoreDamageCostsMore(t *testing.T) {
	c := jobs(t)
	for _, area := range lot.Areas {
		before := 0.0
		for _, d := range []lot.Damage{cell(area, "minor", "skin"), cell(area, "functional", "bolted"), cell(area, "disabling", "structure")} {
			money, hours := known(repair.Plan(nil, c, crash(), []lot.Damage{d}))
			if cost := money + hours*ownHour; cost < before {
				t.Errorf("%s, %s, %s costs %.0f, less than the smaller damage's %.0f", area, d.Extent, d.Depth, cost, before)
			} else {
				before = cost
			}
		}
	}
}

// known returns the expected money and own hours of lines. Units: major units of the currency, hours.
func known(lines []repair.Line) (money, hours float64) {
	for _, l := range lines {
		m, h := l.Materials.Mean()+l.Outside.Mean(), work(l.Hours)
		for _, p := range l.Parts {
			pm, ph := part(p)
			m, h = m+pm, h+ph
		}
		chance := repair.Or(l.Chance, 1)
		money, hours = money+chance*m, hours+chance*h
	}
	return money, hours
}

// part returns the expected money and extra hours of a part: each option with the chance that all better ones fail.
func part(p repair.Part) (money, hours float64) {
	open := 1.0
	for _, i := range p.Order(ownHour, waitingDay) {
		o := p.Options[i]
		taken := open * repair.Or(o.Chance, 1)
		money += taken * (o.Price.Mean() + o.Freight.Mean() - o.CoreBack.Mean())
		hours += taken * o.ExtraHours.Mean()
		open -= taken
	}
	if p.Fallback != nil {
		money, hours = money+open*p.Fallback.Price.Mean(), hours+open*p.Fallback.Hours.Mean()
	}
	return money, hours
}

// unseen returns the expected cost of risks before anyone has looked.
func unseen(risks []hidden.Risk) float64 {
	sum := 0.0
	for _, r := range risks {
		sum += r.Chance.Mean() * (r.Cost.Mean() + ownHour*work(r.Hours))
	}
	return sum
}

func work(hours map[string]prob.Three) float64 {
	sum := 0.0
	for _, h := range hours {
		sum += h.Mean()
	}
	return sum
}
