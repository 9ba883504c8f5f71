// Command walk is the terminal side of Walkline: it values case files and checks tables of comparables.
//
//	walk value case.json [--json]     the walk-away bid, why, and what could go wrong
//	walk comps check file.csv         what a table of comparables holds, and every row that cannot be used
//
// Exit codes: 0 done; 1 a file could not be read or written; 2 the call or the case is at fault, one line a fault.
package main
