// Command walkline is the window: the walk-away bid for salvage lots, from what is seen of a wreck to the most that may be
// bid for it.
//
//	walkline [FILE | --store FILE | help | version]
//
// Everything is kept in one SQLite file, walkline.db in the user's data folder unless another is named. In that folder also lie the log,
// walkline.log with the one before it, and a file for each fault of the program.
//
// Where no window can be shown it says why on stderr, in a message of the desktop's where there is a program for it, and by exit code 3,
// before it touches the lots; a window that is not painted within half a minute ends it too. Signals that ask it to end close the
// window as its user would. Nothing here listens on a network or sends anything.
package main
