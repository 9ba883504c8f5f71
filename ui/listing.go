package ui

import (
	"walkline/ui/widgets"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

// mostShown is how many letters of one sentence are shown whole. Ours: a cell of a table may hold millions.
const mostShown = 2000

// brief returns words, cut where they are longer than most letters.
func brief(words string, most int) string {
	if len(words) <= most {
		return words
	}
	if letters := []rune(words[:min(len(words), 4*most+4)]); len(letters) > most { // a letter has at most four bytes
		return string(letters[:most]) + "…"
	}
	return words
}

// newListing returns a list of sentences, one a row, that builds only the rows on show, however many there are. The sentence of the
// selected row stands whole below.
func newListing(lines []string) fyne.CanvasObject {
	whole := widget.NewLabel("")
	whole.Wrapping = fyne.TextWrapWord
	room := container.NewVScroll(whole)
	room.SetMinSize(fyne.NewSize(0, footHeight))
	list := widgets.NewList(func() int { return len(lines) },
		func() fyne.CanvasObject {
			l := widget.NewLabel("")
			l.Truncation = fyne.TextTruncateEllipsis
			return l
		},
		func(i widget.ListItemID, o fyne.CanvasObject) {
			o.(*widget.Label).SetText(brief(lines[i], mostShown/10))
		})
	list.OnSelected = func(i widget.ListItemID) { whole.SetText(brief(lines[i], mostShown)) }
	if len(lines) > 0 {
		list.Select(0)
	}
	return container.NewBorder(nil, room, nil, nil, list)
}
