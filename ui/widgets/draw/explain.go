package draw

import "fyne.io/fyne/v2"

// Explain has the window of an object tell what the object means, where its content can; no words: nothing to tell.
func Explain(o fyne.CanvasObject, words string) {
	c := CanvasOf(o)
	if c == nil {
		return
	}
	if teller, ok := c.Content().(interface{ Explain(words string) }); ok {
		teller.Explain(words)
	}
}
