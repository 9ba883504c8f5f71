// Package listing answers one question: what does the text of a listing say of a lot?
//
// A listing is what a sale writes of one vehicle: a line such as "2017 Ostrane Pell S 2.0L, 61,200 miles, salvage title, front end damage,
// runs and drives, no keys", or lines of a label and a value, with a colon or a tab between them or each on a line of its own. [Read] finds
// the vehicle, engine, odometer, VIN, title, cause of loss, whether it runs, keys, airbags and damaged areas in it. [Fill] puts into a case
// what is not known there yet; what the case says otherwise is told and left. Everything that was understood is named, and so is every
// piece that was not. What a text denies or says of a part alone is not taken of the vehicle, and of a field that it says in two ways
// neither is taken: both are left, and said.
//
// The words are those of packages cell and runlist, so that a table and a text are read alike: common practice, no source. How far an
// area is hurt is seldom said: without a word for it the mark is "functional, bolted", and the fact says that it is a guess.
//
// Units: an odometer stays in its stated unit; one without a unit is not understood. It opens no file and keeps nothing.
package listing
