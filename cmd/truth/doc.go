// Package truth answers one question: what comes of a lot in a simulated shop, whose true ratios, chances and spreads are known and differ
// from the starter values?
//
// [Truth.Live] draws it from the starter forecast's items and the truth, by arithmetic of its own and not by the engine's: hours and money
// are lognormal, where the engine takes them for betas. Units: money in major units, hours, days.
//
// All figures are invented, for simulations alone.
package truth
