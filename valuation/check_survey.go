package valuation

import (
	"fmt"
	"maps"
	"slices"
	"strconv"

	"walkline/valuation/lot"
)

// survey adds the faults of what the survey says beside the damaged areas.
func (f *faults) survey(c Case) {
	s := c.Survey
	if s == nil {
		return
	}
	for _, x := range []struct {
		key, word string
		words     []string
	}{{"kind", s.Kind, lot.Kinds}, {"powertrain", s.Powertrain, lot.Powertrains}, {"driven", s.Driven, lot.DrivenAxles},
		{"parts_level", s.PartsLevel, lot.PartsLevels}, {"region", s.Region, lot.Regions}, {"paint", s.Paint, lot.Paints}} {
		f.optional("survey."+x.key, x.word, x.words)
	}
	if s.Doors != 0 {
		f.word("survey.doors", strconv.Itoa(s.Doors), lot.DoorCounts)
	}
	f.words("survey.missing", s.Missing, lot.MissingKeys)
	f.words("survey.mechanical", s.Causes, lot.Causes)
	f.water(s.Water)
	f.hailAndFire(s)
	f.covered(c)
}

// optional adds a fault where a word that may be left out is none of the words.
func (f *faults) optional(key, word string, words []string) {
	if word != "" {
		f.word(key, word, words)
	}
}

// words adds a fault for each entry of a list that is none of the words.
func (f *faults) words(key string, list, words []string) {
	for i, w := range list {
		f.word(fmt.Sprintf("%s[%d]", key, i), w, words)
	}
}

func (f *faults) water(w *lot.Water) {
	if w == nil {
		return
	}
	f.word("survey.water.height", w.Height, lot.WaterHeights)
	f.optional("survey.water.kind", w.Kind, lot.WaterKinds)
	if w.Hours != nil {
		f.between("survey.water.hours", *w.Hours, 0, mostTime)
	}
}

func (f *faults) hailAndFire(s *lot.Survey) {
	if h := s.Hail; h != nil {
		f.word("survey.hail.count", h.Count, lot.HailCounts)
		f.optional("survey.hail.size", h.Size, lot.HailSizes)
		f.words("survey.hail.panels", h.Panels, lot.HailPanels)
		for _, panel := range slices.Sorted(maps.Keys(h.Each)) {
			f.word("survey.hail.each", panel, lot.HailPanels)
			f.optional("survey.hail.each."+panel+".count", h.Each[panel].Count, lot.HailCounts)
			f.optional("survey.hail.each."+panel+".size", h.Each[panel].Size, lot.HailSizes)
		}
		if h.Discount != nil {
			f.three("survey.hail.discount", *h.Discount)
			f.unless(h.Discount.High < 1, "survey.hail.discount.high", h.Discount.High, "a fraction below 1 (15 % is 0.15)")
		}
	}
	if x := s.Fire; x != nil {
		f.word("survey.fire.reach", x.Reach, lot.FireReaches)
		f.words("survey.fire.where", x.Where, lot.FirePlaces)
	}
}

// covered adds a fault where a catalogue is asked of a vehicle that it does not speak of: no work would read as none needed.
func (f *faults) covered(c Case) {
	if c.seen().Covered() {
		return
	}
	const want = "false: not covered, the catalogue does not speak of a motorcycle; enter its work and its risks by hand"
	f.unless(!c.Repair.UseCatalogue, "repair.use_catalogue", true, want)
	f.unless(!c.Hidden.UseCatalogue, "hidden.use_catalogue", true, want)
}
