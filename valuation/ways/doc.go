// Package ways answers one question: after the strip-down, does a buyer go on or stop, and what does stopping leave?
//
// Points in time: bought and home; stripped; finished; sold. At the strip-down it is known which work and damage is there and how the
// lot's common factor lies; prices of parts, hours and the sale are not. [Lot.Choose] compares, scenario by scenario, the mean of
// going on (expected resale on the mean day of sale less selling, less what is still to pay, to work and to hold) with the best way
// out (its money less its hours and days). Going on is chosen where its mean is at least the way's. [Lot.Stop] books what is then
// realised: the choice sees no future. What was paid before is sunk and on both sides.
//
// Units: money in major units, hours, calendar days. Shape: columns have one value a scenario.
// Assumptions: neither side depends on the bid, but through capital on the invoice, which is left out of the choice; a way's figures
// lean on nothing; the hours and days of the strip-down count at their means where the choice is made, as drawn where it stops, and are
// part of the repair's own where it is finished.
//
// Sources: the option to abandon a project, Brealey, Myers and Allen, Principles of Corporate Finance; Brigham and Ehrhardt, Financial
// Management, web extension 25A.
//
// It knows no bid and no rule.
package ways
