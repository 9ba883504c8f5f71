// Command empty opens a window of the toolkit with nothing in it: the baseline for start-up and memory.
package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/widget"
)

func main() {
	a := app.NewWithID("walkline.empty")
	w := a.NewWindow("Walkline")
	w.SetContent(widget.NewLabel("empty"))
	w.Resize(fyne.NewSize(1280, 720))
	w.ShowAndRun()
}
