package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// Names of the colours that Fyne does not have.
const (
	ColorMuted             fyne.ThemeColorName = "walklineMuted"             // text of second rank
	ColorAccent            fyne.ThemeColorName = "walklineAccent"            // the accent, as text, line or fill
	ColorAccentSoft        fyne.ThemeColorName = "walklineAccentSoft"        // a ground tinted by the accent
	ColorWarning           fyne.ThemeColorName = "walklineWarning"           // the warning colour, as text or shape
	ColorWarningBackground fyne.ThemeColorName = "walklineWarningBackground" // the ground of a warning
	ColorNoteBackground    fyne.ThemeColorName = "walklineNoteBackground"    // the ground of a plain note
	ColorBand              fyne.ThemeColorName = "walklineBand"              // the area between two percentiles
	ColorGridLine          fyne.ThemeColorName = "walklineGridLine"          // the grid of a plot
	ColorPoint             fyne.ThemeColorName = "walklinePoint"             // a point or plain bar of a plot
	ColorHatch             fyne.ThemeColorName = "walklineHatch"             // hatch lines and borders of damage
	ColorPlanFill          fyne.ThemeColorName = "walklinePlanFill"          // an undamaged cell of the plan
	ColorPlanOutline       fyne.ThemeColorName = "walklinePlanOutline"       // the outline of the vehicle
	ColorDamageMinor       fyne.ThemeColorName = "walklineDamageMinor"       // the fill under the widest hatch
	ColorDamageFunctional  fyne.ThemeColorName = "walklineDamageFunctional"  // the fill under the middle hatch
	ColorDamageDisabling   fyne.ThemeColorName = "walklineDamageDisabling"   // the fill under the densest hatch
	ColorRowSelected       fyne.ThemeColorName = "walklineRowSelected"       // the ground of the selected row
	ColorRowHover          fyne.ThemeColorName = "walklineRowHover"          // the ground of the row under the pointer
	ColorLiveBackground    fyne.ThemeColorName = "walklineLiveBackground"    // the ground of the Live page, white in every variant
	ColorLiveForeground    fyne.ThemeColorName = "walklineLiveForeground"    // the text of the Live page, black in every variant
)

// swatch is one colour in its two variants, as 0xRRGGBB.
type swatch struct{ light, dark uint32 }

// The warm greys, the accent and the warning colour.
var (
	ground     = swatch{0xf6f3ee, 0x1e1c19}
	raised     = swatch{0xfdfbf8, 0x282521}
	sunken     = swatch{0xebe6de, 0x332f2a}
	ink        = swatch{0x26221d, 0xece7df}
	muted      = swatch{0x635b50, 0xb0a799}
	hairline   = swatch{0xd9d2c6, 0x443f38}
	border     = swatch{0x8a8174, 0x857c6f}
	accent     = swatch{0x08474f, 0x86d0d1}
	accentSoft = swatch{0xd8e5e4, 0x1f3335}
	rust       = swatch{0xa8481a, 0xe08654}
	rustSoft   = swatch{0xf5e3d7, 0x40291d}
	onAccent   = swatch{0xfdfbf8, 0x14211f}
)

// swatches gives the colour of every name, Fyne's and ours, that is opaque.
var swatches = map[fyne.ThemeColorName]swatch{
	fynetheme.ColorNameBackground:          ground,
	fynetheme.ColorNameButton:              sunken,
	fynetheme.ColorNameDisabledButton:      sunken,
	fynetheme.ColorNameDisabled:            muted,
	fynetheme.ColorNameError:               rust,
	fynetheme.ColorNameForeground:          ink,
	fynetheme.ColorNameForegroundOnError:   onAccent,
	fynetheme.ColorNameForegroundOnPrimary: onAccent,
	fynetheme.ColorNameForegroundOnSuccess: onAccent,
	fynetheme.ColorNameForegroundOnWarning: onAccent,
	fynetheme.ColorNameHeaderBackground:    ground,
	fynetheme.ColorNameHyperlink:           accent,
	fynetheme.ColorNameInputBackground:     raised,
	fynetheme.ColorNameInputBorder:         border,
	fynetheme.ColorNameMenuBackground:      raised,
	fynetheme.ColorNameOverlayBackground:   raised,
	fynetheme.ColorNamePlaceHolder:         muted,
	fynetheme.ColorNamePrimary:             accent,
	fynetheme.ColorNameSelection:           accentSoft,
	fynetheme.ColorNameSeparator:           hairline,
	fynetheme.ColorNameSuccess:             accent,
	fynetheme.ColorNameWarning:             rust,
	fynetheme.ColorNameScrollBar:           border,
	fynetheme.ColorNameScrollBarBackground: sunken,

	ColorMuted:             muted,
	ColorAccent:            accent,
	ColorAccentSoft:        accentSoft,
	ColorWarning:           rust,
	ColorWarningBackground: rustSoft,
	ColorNoteBackground:    sunken,
	ColorBand:              {0xdfe5e2, 0x27322f},
	ColorGridLine:          {0xe3ddd3, 0x38342e},
	ColorPoint:             {0x6e665a, 0xa89f91},
	ColorHatch:             {0x1f3b3f, 0xcfe3e2},
	ColorPlanFill:          {0xefeae2, 0x2a2723},
	ColorPlanOutline:       {0x857c6f, 0x8d8477},
	ColorDamageMinor:       {0xdde6e4, 0x2c3c3d},
	ColorDamageFunctional:  {0xaec6c6, 0x38595b},
	ColorDamageDisabling:   {0x6f979a, 0x4f8083},
	ColorRowSelected:       accentSoft,
	ColorRowHover:          sunken,
	ColorLiveBackground:    {0xffffff, 0xffffff},
	ColorLiveForeground:    {0x000000, 0x000000},
}

// veils are the colours that lie over others: black or white by variant, with an alpha.
var veils = map[fyne.ThemeColorName][2]uint8{
	fynetheme.ColorNameHover:   {0x12, 0x16},
	fynetheme.ColorNamePressed: {0x24, 0x2c},
	fynetheme.ColorNameShadow:  {0x30, 0x70},
}

// focusVeil lies over whatever has the keyboard, a deep accent as well as a pale ground: a middle grey is seen on both and leaves
// the words readable.
var focusVeil = color.NRGBA{R: 0x80, G: 0x80, B: 0x80, A: 0x70}

// colorOf returns the colour of a name in a variant, and whether the name is known.
func colorOf(name fyne.ThemeColorName, variant fyne.ThemeVariant) (color.Color, bool) {
	dark := variant == fynetheme.VariantDark
	if s, ok := swatches[name]; ok {
		return s.in(dark), true
	}
	if name == fynetheme.ColorNameFocus {
		return focusVeil, true
	}
	alphas, ok := veils[name]
	if !ok {
		return nil, false
	}
	if dark {
		tone := uint8(0xff)
		if name == fynetheme.ColorNameShadow {
			tone = 0
		}
		return color.NRGBA{R: tone, G: tone, B: tone, A: alphas[1]}, true
	}
	return color.NRGBA{A: alphas[0]}, true
}

func (s swatch) in(dark bool) color.NRGBA {
	v := s.light
	if dark {
		v = s.dark
	}
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xff}
}
