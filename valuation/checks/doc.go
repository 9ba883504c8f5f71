// Package checks answers one question: what must be looked at, asked for or stopped at before a lot is bought?
//
// [List] returns the stops first, then the title and paper items, then what to look at round the vehicle: every finding
// that informs a risk of this lot. Questions are put so that "yes" speaks for trouble. A stop beats every number: a title
// that cannot be rebuilt, or a VIN that cannot be read or does not agree with the facts entered.
//
// [TotalLoss] says what each of a small table of total-loss rules would call the vehicle, from the repair cost and the value
// before the damage.
//
// Units: minutes; money in minor units, compared exactly.
// Assumptions: what a title document or brand allows differs by jurisdiction and changes; the stops here are those under
// which no jurisdiction known to the authors registers a rebuilt vehicle, and every one says to ask the agency.
//
// Sources: [1] AAMVA D20 brand wording as published in NIEM 6.0 (CC BY 4.0); [2] 49 CFR 565.15 (VIN); [3] 49 CFR 580
// (odometer statements); [4] the total-loss rules, each with its citation, in testdata/reference/state_total_loss_rules.csv.
//
// It does not yet work out what a look is worth: an item's Worth is unknown, and the list is not ordered by it.
package checks
