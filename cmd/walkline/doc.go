// Command walkline is the window: the walk-away bid for salvage lots, from what is seen of a wreck to the most that may be
// bid for it.
//
//	walkline [--store FILE]
//
// Everything is kept in one SQLite file, walkline.db in the user's data folder unless --store names another. Without a
// display it says so and points to the terminal side, cmd/walk.
package main
