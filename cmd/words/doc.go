// Command words answers: what does the program say to its user?
//
// It prints every text that the window, the paper or the terminal may show, with where it stands, so that all of them can be read in one
// go: the string literals of two words and more in the Go files that ship, joined where a line break parts them, and the texts of the
// catalogue and the jurisdictions. It is run in the module's root: go run ./cmd/words.
//
// Its test holds the words that the project gave up, and the length of a sentence.
//
// What it does not do: texts that are put together from pieces stand as their pieces, with a verb such as %s in their gaps; words of one
// piece that a caller joins to others (a rule's name, a state) are listed where they are written.
package main
