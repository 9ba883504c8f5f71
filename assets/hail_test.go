package assets_test

import (
	"regexp"
	"testing"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

func TestMoreHailCostsMore(t *testing.T) {
	for _, size := range lot.HailSizes {
		rising(t, "hail "+size, lot.HailCounts, func(n string) lot.Lot {
			return seen(lot.Survey{Hail: &lot.Hail{Count: n,
				Size: size}}, "hail")
		})
	}
	for _, count := range lot.HailCounts {
		rising(t, "hail "+count, lot.HailSizes, func(s string) lot.Lot {
			return seen(lot.Survey{Hail: &lot.Hail{Count: count,
				Size: s}}, "hail")
		})
		rising(t, "hail "+count+", panels", []int{1, 2, 3, 4, 5}, func(n int) lot.Lot {
			return seen(lot.Survey{Hail: &lot.Hail{Count: count, Size: "medium", Panels: lot.HailPanels[:n]}}, "hail")
		})
	}
}

// More dents, or larger ones, on one panel alone never make the lot cheaper, whatever the others have.
func TestMoreHailOnOnePanelCostsMore(t *testing.T) {
	for _, rest := range lot.HailCounts {
		for _, panel := range lot.HailPanels {
			on := func(d lot.Dents) lot.Lot {
				return seen(lot.Survey{Hail: &lot.Hail{Count: rest, Size: "medium", Each: map[string]lot.Dents{panel: d}}}, "hail")
			}
			rising(t, panel+" among "+rest, lot.HailCounts, func(n string) lot.Lot { return on(lot.Dents{Count: n}) })
			rising(t, panel+" among "+rest+", size", lot.HailSizes, func(n string) lot.Lot { return on(lot.Dents{Size: n}) })
		}
	}
}

// Marking a panel for hail never puts filler in the place of removal.
func TestAPanelMarkedForHailIsNotFilled(t *testing.T) {
	filler := regexp.MustCompile(`^(roof|hood|trunk_lid|fender|quarter|front_door|rear_door)_repair`)
	for _, area := range []string{"top", "12", "06", "11", "10", "09", "08", "07"} {
		for _, l := range repair.Plan(nil, jobs(t), seen(lot.Survey{Hail: &lot.Hail{Count: "many", Size: "medium"}}, "hail"),
			[]lot.Damage{cell(area, "minor", "skin"), cell(area, "functional", "skin")}) {
			if filler.MatchString(l.ID) {
				t.Errorf("hail marked at %s: %s", area, l.Job)
			}
		}
	}
}
