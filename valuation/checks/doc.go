// Package checks answers one question: what must be looked at, asked for or stopped at before a lot is bought?
//
// [List] returns the stops first, then the title and paper items, then what to look at round the vehicle: every finding
// that informs a risk of this lot. Questions are put so that "yes" speaks for trouble. A stop beats every number: a title
// that cannot be rebuilt, or a VIN that cannot be read or does not agree with the facts entered.
//
// [Contradictions] points out what does not agree: bags without a blow, keys, engine, water, mileage, answers that exclude
// each other. None proves anything; each asks for a second look.
//
// A [Pack] is what one jurisdiction asks: thresholds, what may be rebuilt, papers, fees, private sales. Each row says what it
// rests on. [Choose] takes those that speak for a place, the nearest first; the lists of paper follow them, and so does
// [TotalLoss], which says what their rules would call the vehicle, from the repair cost and the value before the damage.
//
// Units: minutes; money in minor units, compared exactly.
// Assumptions: what a title document or brand allows differs by jurisdiction and changes; the stops here are those under
// which no jurisdiction known to the authors registers a rebuilt vehicle, and every one says to ask the agency.
//
// A look that tells of several risks is read as one event with several causes (noisy-or); risks are independent of each
// other here, while the scenarios let them lean on a common factor.
//
// Sources: [1] AAMVA D20 brand wording as published in NIEM 6.0 (CC BY 4.0); [2] 49 CFR 565.15 (VIN); [3] 49 CFR 580
// (odometer statements); [4] the total-loss rules, each with its citation, in testdata/reference/state_total_loss_rules.csv and in the
// packs;
// [5] value of information: Raiffa, Decision Analysis, 1968; Raiffa and Schlaifer, Applied Statistical Decision Theory, 1961.
//
// [Rank] says what each open look is worth before the bid and orders the looks by it. Over the guess of the hammer price, a
// buyer who may spend m keeps S(m) = E[(m - cost of winning)+] ([Surplus]). A look's answers move m by the hidden damage
// that they make likelier or less likely; its worth is the mean of S after the answers less S now (expected value of
// sample information). S is convex, so no look is worth less than nothing, and none more than knowing for sure
// ([Stakes.Perfect]). m is what the house rules allow to go out; what they ask for beyond the cost is a reserve that looks
// do not move. Where the buyer has no guess, the hammer price is taken to fall most likely at the walk-away bid, from half
// of it to half as much again: there looks matter most, so the order is sound and the money named is rather high; the
// answer says that it rests on a stand-in. Where there is no bid either, or a stop stands, there is no worth.
//
// A [Round] is filled in the order of value per minute, and its worth is that of all its looks together, so that looks at
// the same damage are not counted twice.
package checks
