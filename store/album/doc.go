// Package album answers one question: where are the files of photographs and bills kept, so that none is lost or mixed up?
//
// A [Folder] holds each file under the SHA-256 of its content, with an ending for its kind: the same file is kept once, and a
// file that has changed since shows by its name. A file is written beside its place, waited for and then put in place, so that
// a crash leaves a whole file or none. Nothing is ever overwritten or deleted here: the store's history may bring a photograph
// back.
//
// The kind [Small] is no content of its own but a small picture made of the file of that hash: it may be made anew at any time
// and is not checked.
//
// Units: hashes are 64 hexadecimal digits in lower case.
// Assumptions: the folder lies on a local disk; who writes into it by hand is told by the check.
//
// Sources: [1] FIPS 180-4 (SHA-256).
//
// It does not look into files: what may be kept is decided before.
package album
