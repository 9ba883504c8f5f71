package theme

import (
	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// Names of the text sizes. A page uses the first three; the numeral is the verdict's alone and the Live page's are its own.
const (
	SizeSmall   = fynetheme.SizeNameCaptionText
	SizeBody    = fynetheme.SizeNameText
	SizeHeading = fynetheme.SizeNameSubHeadingText

	SizeNumeral fyne.ThemeSizeName = "walklineNumeral"
	SizeLive    fyne.ThemeSizeName = "walklineLive"

	// SizeLesserNumeral is for a figure too long for SizeNumeral.
	SizeLesserNumeral fyne.ThemeSizeName = "walklineLesserNumeral"
)

// Spaces of the 8-point grid, in points.
const (
	Half  float32 = 4
	Space float32 = 8
	Wide  float32 = 16
	Broad float32 = 24
)

var textSizes = map[fyne.ThemeSizeName]float32{
	SizeSmall:                     12,
	SizeBody:                      14,
	SizeHeading:                   19,
	fynetheme.SizeNameHeadingText: 19,
	fynetheme.SizeNameInlineIcon:  20,
	SizeNumeral:                   44,
	SizeLive:                      112,
	SizeLesserNumeral:             30,
	fynetheme.SizeNameLineSpacing: 4,
}

var spaces = map[fyne.ThemeSizeName]float32{
	fynetheme.SizeNamePadding:            Half,
	fynetheme.SizeNameInnerPadding:       Space,
	fynetheme.SizeNameSeparatorThickness: 1,
	fynetheme.SizeNameInputBorder:        1,
	fynetheme.SizeNameInputRadius:        4,
	fynetheme.SizeNameSelectionRadius:    3,
}
