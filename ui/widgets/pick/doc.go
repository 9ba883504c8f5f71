// Package pick answers: which file, which files, or which folder? It lists the folders of the machine, one at a time.
//
// The keyboard alone does all: Enter goes into a folder or takes a file, the first row goes to the folder above, space marks one file
// among many and Shift with the mouse all from one to another; a path can be typed. Files are known by their endings; hidden ones are
// left out. Times are shown as the program has told.
//
// Folders are read away from the window, where the program says how: one that answers late holds nothing up.
//
// What it does not do: it reads no file, writes nothing and makes no folder.
package pick
