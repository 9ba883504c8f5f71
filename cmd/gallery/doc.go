// Command gallery writes pictures of every page into pictures/, without a display, and prints the files it wrote.
//
// Run it from the repository root. Every page is drawn by Fyne's software test driver over a store in a file of its own with the demo
// sale: light, 1280 x 720 points, text scale 1. With -all every page is drawn in every look: light and dark, 1280 x 720 and 1920 x 1080
// points, text scale 1 and 1.5. The menu bar is the window system's part and is not drawn.
package main
