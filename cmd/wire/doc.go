// Package wire answers one question: who gives the window what its desk needs?
//
// It fits the store and the CSV reader to the interfaces that package desk declares, reads the catalogues that the
// program ships, and builds the demo sale. Both programs with a window use it.
//
// It decides nothing and shows nothing.
package wire
