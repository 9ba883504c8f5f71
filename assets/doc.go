// Package assets answers one question: what does the program know before its user has taught it anything?
//
// It carries the starter documents inside the program: the job catalogue (what work a damage survey calls for), the
// catalogue of hidden risks and of the findings that inform them, the market's prior for resale prices, what jurisdictions ask
// for, and an invented demo sale at the yard Harrow Flats. [Jobs], [Risks], [ResalePrior], [Jurisdictions] and [Demo] return the
// documents as bytes; package store/casefile reads them.
//
// Units: money in US dollars, hours of one person, calendar days, chances 0..1.
// Assumptions: every figure of the two catalogues is a starter value, from memory, for common mid-size cars: a rebuilder
// replaces it with their own. Makes, models, people, places and sales of the demo are invented; its VINs have a right check
// digit and begin with 0, which heads the numbers of no region (ISO 3780, from memory), so they are no real vehicle's.
//
// Each row of a jurisdiction names its citation and whether it was read, read where another page quotes it, or is from
// memory; none is legal advice.
//
// Sources: the cautions name theirs where one was read; areas and extents are those of the Model Minimum Uniform Crash
// Criteria, title brands those of AAMVA D20 as published in NIEM 6.0. That suspension work brings an alignment about 99
// times in 100, and that a used maker's axle goes for about a third of a new one, is common practice, no source.
//
// It does not decode, check or change what it carries.
package assets
