// Package draw holds what the widgets draw with: texts that follow the theme, the ring of the keyboard, a sheet of canvas
// objects, and a pen for shapes that Fyne has no primitive for.
//
// A [Pen] rasterises paths with golang.org/x/image/vector into an alpha mask and blends colour and hatch by hand, which is four
// times as fast as a source image of hatch. Paths are in points of the window; hatch lines lie on the window's diagonals, so that
// neighboring shapes share them.
//
// What it does not do: it knows no widget and no figures.
package draw
