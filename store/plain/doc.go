// Package plain answers one question: how is a file that somebody names read without being held up or flooded by it?
//
// [Read] and [Copy] take plain files alone, up to a size, and stop when their context ends, as soon as the system answers: who must not
// wait for a share that does not calls them away from the window. A
// pipe, a device or a folder is refused by name. A copy is written beside its place, waited for and then renamed, so that a crash
// or a full disk leaves a whole file or none; the folder is waited for too.
//
// Units: sizes are bytes.
// Assumptions: who may write into the folder of a file may also exchange it between two looks.
//
// It does not look into files.
package plain
