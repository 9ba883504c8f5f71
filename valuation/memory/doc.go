// Package memory answers one question: has this been worked out before?
//
// [Of] names a content by a fingerprint of all its fields, those added later included, so that a stage needs no list of what
// its result depends on that could fall behind. A [Shelf] keeps results by such a name within a bound and hands them
// out again. A result may be forgotten at any time, and whoever asks then works it out anew: a memory changes how long an answer
// takes and never what it is.
//
// Units: sizes are in whatever the shelf's owner counts in, bytes as a rule.
// Assumptions: what is kept is not changed by anybody afterwards; two contents with one SHA-256 do not occur.
//
// Sources: [1] FIPS 180-4, SHA-256, by the standard library.
//
// It is not safe for use from two goroutines at once: its owner locks. It keeps nothing on disk.
package memory
