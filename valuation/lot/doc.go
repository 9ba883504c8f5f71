// Package lot answers one question: what is known of the vehicle on offer?
//
// It holds the facts of the lot, its title, the damage survey by clock point, what else the survey says (kind, powertrain, missing
// parts, water, hail, fire, mechanical cause), what a run list says beside, the signs by which jobs and risks recognise a
// lot, the states of a lot in the buyer's week, and what its vehicle identification number (VIN) can tell: characters,
// check digit and model year.
//
// Units: odometer in its own unit (mi or km), dates as calendar days.
// Assumptions: clock points are seen from above, 12 the front, clockwise, so 03 is the right side.
//
// Sources: [1] Model Minimum Uniform Crash Criteria, damage areas and extents, as coded in NIEM 6.0; [2] 49 CFR
// 565.15, VIN characters, check digit, model year; [3] 49 CFR 580.17, odometer exemptions; [4] AAMVA D20 title brands as
// published in NIEM 6.0, CC BY 4.0; [5] ISO 3780, world regions (from memory).
//
// It prices nothing, and a good check digit is no proof of a correct VIN: several letters and digits share a value.
package lot
