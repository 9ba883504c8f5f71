// Package ui is the window. It answers: where do the pages stand, what do menu and keys do, and how does a state flow?
//
// Event -> desk action -> new state -> view -> render, one way. [Window] holds the state of the moment; every handler asks
// the desk for the next one and shows it. Valuing runs through ui/task under one key, so that an older answer is dropped
// and typing starts one valuation, not ten. Looks (light, dark, text scale) are remembered in the book's settings.
//
// It decides nothing about lots, saves nothing itself, and never imports the toolkit's app package: its tests run
// without a display.
package ui
