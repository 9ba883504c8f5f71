package lot

import "slices"

// Abilities are what a look may ask of the vehicle: that its keys are there, that its own battery still gives power, that the engine may be
// cranked, that it may be run.
var Abilities = []string{"keys", "battery", "crank", "run"}

// Unable returns those of the abilities that the vehicle lacks for certain, in their order; what is not known lacks nothing. marked is
// its damage. An engine that water may have reached, or that stood upside down, is never cranked: water and oil on a piston do not
// compress, and rods bend. Nor is one in a vehicle that burnt: current in burnt wiring starts the fire anew. Common practice, no source.
func (l Lot) Unable(marked []Damage) []string {
	v := l.Survey
	if v == nil {
		v = &Survey{}
	}
	engineless := slices.Contains(v.Missing, "engine")
	dead := l.Condition == "dead" || slices.Contains(v.Missing, "battery")
	crank := l.flooded(marked) || rolled(marked) || l.burnt() || engineless
	lacks := map[string]bool{"keys": l.Keys != nil && !*l.Keys, "battery": dead, "crank": crank,
		"run": crank || dead || l.Condition == "turns_over"}
	return slices.DeleteFunc(slices.Clone(Abilities), func(a string) bool { return !lacks[a] })
}

// flooded reports whether water stood in the vehicle: how high is often misjudged, so that any height counts.
func (l Lot) flooded(marked []Damage) bool {
	return slices.Contains(l.Loss, "flood") || l.Survey != nil && l.Survey.Water != nil ||
		slices.ContainsFunc(marked, func(d Damage) bool { return d.Area == "water" })
}

// burnt reports whether there was a fire.
func (l Lot) burnt() bool {
	return slices.Contains(l.Loss, "fire") || l.Survey != nil && l.Survey.Fire != nil
}

// rolled reports whether the roof is hurt as a rollover hurts it. A fallen tree does the same, and the engine is spared one look.
func rolled(marked []Damage) bool {
	return slices.ContainsFunc(marked, func(d Damage) bool { return d.Area == "top" && (d.Extent == "disabling" || d.Depth == "structure") })
}
