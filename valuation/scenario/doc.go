// Package scenario answers one question: what could the build cost, how long could it take, and how much of that goes
// together?
//
// [Play] draws N joint scenarios of one lot: every repair line, every hidden risk, freight, yard storage, the inspection
// queue and the days to sell, all leaning on one common factor where they should. It returns one column a figure, so that
// the bid stage can read any rule off them; the resale price is not drawn but integrated out there.
//
// [Memory] keeps what was drawn, each line and risk under all that it was drawn from, so that an edit draws anew what it changed.
// Of a line or risk only the scenarios in which it is there are kept.
//
// [Memory.Strip] says what is known of the same scenarios at the strip-down: which work and damage is there and the factor, all else at
// its mean given them (a part costs the mean over its sources and its fallback).
//
// Units: money in major units, hours, calendar days. Shape: each column has N values, scenario by scenario.
// Random: stratified columns named by line, see prob.Draws; the common factor is the column "lot/factor", each score moved to where
// the findings put its place in the factor's distribution, so that no findings change no draw.
// Days = max(longest lead time of a critical part, hours / hours a week x 7) + days of the hidden damage present +
// inspection queue + days to sell. Hours count both repair and hidden damage, whose days are the waits beside them.
// Assumptions: freight, storage and the waiting times do not lean on the common factor.
//
// Sources: [1] design of the scenarios: McKay, Beckman and Conover 1979 (see package prob); [2] first-order shares of
// variance by covariance decomposition: Saltelli et al., Global Sensitivity Analysis, 2008 (from memory).
//
// It knows no price, no fee and no bid.
package scenario
