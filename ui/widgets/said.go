package widgets

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"walkline/ui/theme"
)

// Said is what a window says at its foot: small words that wrap to the width there is, however long they are.
type Said struct{ widget.Label }

// NewSaid returns a foot that says nothing.
func NewSaid() *Said {
	s := &Said{}
	s.Wrapping, s.SizeName, s.Importance = fyne.TextWrapWord, theme.SizeSmall, widget.LowImportance
	s.ExtendBaseWidget(s)
	return s
}

// SetWarning shows the words in the warning color, or not; say the warning in words too.
func (s *Said) SetWarning(on bool) {
	tone := widget.LowImportance
	if on {
		tone = widget.WarningImportance
	}
	if s.Importance != tone {
		s.Importance = tone
		s.Refresh()
	}
}
