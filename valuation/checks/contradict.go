package checks

import (
	"slices"

	"walkline/valuation/lot"
)

// clash is one way in which what is entered does not agree with itself.
type clash struct {
	id, text, why string
	holds         func(known) bool
}

// known is what is entered, easy to ask.
type known struct{ Subject }

func (k known) said(finding, answer string) bool { return k.Answers[finding] == answer }
func (k known) bag(where ...string) bool         { return meet(k.Lot.Airbags, where) }
func (k known) lost(how ...string) bool          { return meet(k.Lot.Loss, how) }
func (k known) is(condition ...string) bool      { return slices.Contains(condition, k.Lot.Condition) }
func (k known) keys(there bool) bool             { return k.Lot.Keys != nil && *k.Lot.Keys == there }

// hurt reports damage of at least functional extent in one of the areas.
func (k known) hurt(areas ...string) bool {
	return slices.ContainsFunc(k.Damage, func(d lot.Damage) bool { return d.Extent != "minor" && slices.Contains(areas, d.Area) })
}

func (k known) branded(code string) bool {
	return slices.ContainsFunc(append([]string{k.Lot.Title.Document}, k.Lot.Title.Brands...), func(w string) bool {
		b, ok := lot.BrandOf(w)
		return ok && b.Code == code
	})
}

func meet(have, want []string) bool {
	return slices.ContainsFunc(have, func(h string) bool { return slices.Contains(want, h) })
}

// clashes are common practice, no source, but where one is named. None proves anything: each asks for a second look.
var clashes = []clash{
	{"clash_front_bag", "A front airbag is entered as deployed, and no more than minor damage at the front.",
		"A bag that went off without a blow tells of an earlier crash, a repair since, or damage not entered. It is not unheard of: in " +
			"crashes that were not frontal, front bags went off in about 17 of 100 (NASS-CDS 1997-2002).",
		func(k known) bool { return k.bag("front", "knee") && !k.hurt("10", "11", "12", "01", "02") }},
	{"clash_side_bag", "A side or curtain airbag is entered as deployed, and no more than minor damage at a side or the top.",
		"Look for a blow to a side or a roll that is not entered, or an earlier crash.",
		func(k known) bool {
			return k.bag("side", "curtain") && !k.hurt("01", "02", "03", "04", "05", "07", "08", "09", "10", "11", "top")
		}},
	{"clash_lamp", "Airbags are deployed, yet the airbag light is answered as in order.",
		"A deployed bag leaves a fault stored and the lamp on; a lamp that looks well may have been tampered with.",
		func(k known) bool { return len(k.Lot.Airbags) > 0 && k.said("restraint_lamp_on", "no") }},
	{"clash_refit", "The airbag lids look refitted, and no airbag is entered as deployed.",
		"Bags may have gone off in an earlier crash and been covered over.",
		func(k known) bool { return len(k.Lot.Airbags) == 0 && k.said("airbag_lid_refit", "yes") }},
	{"clash_engine", "It is entered as starting or driving, yet the engine is answered as not turning over.",
		"One of the two is wrong, or it changed in the yard.",
		func(k known) bool { return k.is("drives", "starts") && k.said("engine_will_not_turn", "yes") }},
	{"clash_running", "It is entered as not starting, yet there is an answer on how the engine runs.",
		"Enter how it stands today.",
		func(k known) bool {
			return k.is("dead", "turns_over") && (k.Answers["engine_knocks"] != "" || k.Answers["engine_idles_rough"] != "")
		}},
	{"clash_keys", "The keys are entered as there, and answered as not to be had.", "Ask to see the key.",
		func(k known) bool { return k.keys(true) && k.said("key_missing", "yes") }},
	{"clash_no_keys", "The keys are entered as not there, and answered as to be had.", "Ask to see the key.",
		func(k known) bool { return k.keys(false) && k.said("key_missing", "no") }},
	{"clash_flood", "There are marks of water, and no flood is entered.",
		"Water lines, silt or a flood brand mean a flood until shown otherwise: enter it, and the risks of water are counted.",
		func(k known) bool {
			water := k.said("waterline_dash", "yes") || k.said("belt_tide_mark", "yes") || k.said("silt_in_seams", "yes") ||
				k.said("airbox_waterline", "yes")
			return !k.lost("flood") && (water || k.branded("01"))
		}},
	{"clash_fire", "The title says fire damage, and no fire is entered.", "Enter it, and the risks of heat are counted.",
		func(k known) bool { return !k.lost("fire") && k.branded("02") }},
	{"clash_miles", "The odometer is entered as actual, and there are signs of more miles.",
		"Clear it up before the bid: the price rests on the mileage (49 CFR 580).",
		func(k known) bool {
			return k.Lot.OdometerStatus == "actual" && (k.said("service_sticker_differs", "yes") || k.branded("69") || k.branded("70") ||
				k.branded("76"))
		}},
	{"clash_drives", "It is entered as driving, yet a wheel is answered as out of place and the steering as binding.",
		"A vehicle like that is not driven: enter how it stands.",
		func(k known) bool {
			return k.is("drives") && k.said("wheel_out_of_place", "yes") && k.said("steering_binds", "yes")
		}},
}

// Contradictions returns an item for each way in which facts, survey, title and answers do not agree.
func Contradictions(s Subject) []Item {
	var items []Item
	for _, c := range clashes {
		if c.holds(known{s}) {
			items = append(items, Item{ID: c.id, Kind: "inspection", State: "bad", Fixed: true, Text: c.text, Why: c.why, Where: "agreement"})
		}
	}
	for _, r := range s.Risks {
		if r.Contradicted(s.Answers) {
			items = append(items, Item{ID: "clash_" + r.ID, Kind: "inspection", State: "bad", Fixed: true, Where: "agreement",
				Text: "The answers on \"" + r.Name + "\" cannot all be true.", Why: "Its chance is left as it was before them. Look again.",
				Risks: []string{r.ID}})
		}
	}
	return items
}
