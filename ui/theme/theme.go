package theme

import (
	"image/color"

	"fyne.io/fyne/v2"
	fynetheme "fyne.io/fyne/v2/theme"
)

// Look says which variant is shown.
type Look int

// The looks: that of the system, or always one of the two.
const (
	System Look = iota
	Light
	Dark
)

// Options are what a user may choose about the looks.
type Options struct {
	Look  Look
	Scale float32 // of text: 1 is normal, 0 stands for 1; held to MinScale..MaxScale
}

// The range of the text scale. Beyond it pages of 1280 x 720 points would cut text.
const (
	MinScale = 0.8
	MaxScale = 2
)

// Theme is the theme of the program. It implements fyne.Theme and never changes: make a new one for other options.
type Theme struct {
	options Options
}

// New returns the theme for the options.
func New(o Options) *Theme {
	if o.Scale == 0 {
		o.Scale = 1
	}
	o.Scale = min(max(o.Scale, MinScale), MaxScale)
	return &Theme{options: o}
}

// Options returns what the theme was made from, with the scale in its range.
func (t *Theme) Options() Options { return t.options }

// Color returns the colour of a name; the system's variant counts only for the look System.
func (t *Theme) Color(name fyne.ThemeColorName, variant fyne.ThemeVariant) color.Color {
	switch t.options.Look {
	case Light:
		variant = fynetheme.VariantLight
	case Dark:
		variant = fynetheme.VariantDark
	}
	if c, ok := colorOf(name, variant); ok {
		return c
	}
	return fynetheme.DefaultTheme().Color(name, variant)
}

// Font returns Fyne's bundled face.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	return fynetheme.DefaultTheme().Font(style)
}

// Icon returns Fyne's bundled icon.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource {
	return fynetheme.DefaultTheme().Icon(name)
}

// Size returns a size in points; texts and the icons beside them scale, spaces do not.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	if size, ok := textSizes[name]; ok {
		return size * t.options.Scale
	}
	if size, ok := spaces[name]; ok {
		return size
	}
	return fynetheme.DefaultTheme().Size(name)
}

// standing is the theme that widgets fall back on outside the program, in tests of other themes.
var standing = New(Options{Look: Light})

// Color returns the colour of a name, Fyne's or ours, in the theme and variant of the moment.
func Color(name fyne.ThemeColorName) color.Color {
	settings := fyne.CurrentApp().Settings()
	if t, ok := settings.Theme().(*Theme); ok {
		return t.Color(name, settings.ThemeVariant())
	}
	return standing.Color(name, fynetheme.VariantLight)
}

// Size returns a size in points, text scale counted in, in the theme of the moment.
func Size(name fyne.ThemeSizeName) float32 {
	if t, ok := fyne.CurrentApp().Settings().Theme().(*Theme); ok {
		return t.Size(name)
	}
	return standing.Size(name)
}

// Scale returns the text scale of the moment.
func Scale() float32 {
	if t, ok := fyne.CurrentApp().Settings().Theme().(*Theme); ok {
		return t.options.Scale
	}
	return 1
}
