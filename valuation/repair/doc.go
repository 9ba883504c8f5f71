// Package repair answers one question: what will the known work cost, take in hours and hold up in days?
//
// A [Line] is one piece of work: hours by trade, materials, work bought in, and parts with the sources they may come from.
// [Plan] adds the lines of the job catalogue that the damage survey calls for, once each, with what they bring along and without
// what they make needless. A chance moves with what is known of the lot ([lot.Move]), a job may be ruled out for a vehicle, and its
// money and hours follow the vehicle's price level and the survey ([lot.Scale]). An assembly covers its pieces. A [Donor]
// that the buyer plans with is paid once and feeds any lines.
// [Need] keeps why a job is there, so that scenarios draw brought work with what brings it, hidden damage among it.
//
// [Line.Draw] plays a line out over all scenarios: whether it is needed, its hours, materials and outside work as
// modified PERT values, and for each part the best option that turns out to be obtainable, or else its fallback.
// Options are tried in the order that costs least in the mean: by expected price + freight - core money back + extra hours at their rate +
// lead days at the holding cost of a day (none where the part holds nothing up), and none that costs more than the fallback. A
// quote stands in place of the starter values of its source.
//
// Units: money in major units, hours of one person, calendar days, chances 0..1. Costs are positive.
// Random: each quantity of a line has a stream of its own, named by the line's id, so that editing one line leaves the
// draws of the others alone.
// Assumptions: a job that spares another is done or not independently of whether that one is needed. Hours, materials, prices
// and the need for the work lean on the lot's common factor by the line's loading; lead times and what can be had do not. Extra hours of an
// option are worked in the line's chief trade. The spread of a
// known list of damage is that of its three-point values.
//
// Sources: [1] modified PERT, see package prob; [2] one-factor Gaussian copula, see prob.Loaded.
//
// It does not know what a lot is worth, and it prices no damage that has not been seen: that is package hidden.
package repair
