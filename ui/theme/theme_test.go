package theme

import (
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	fynetheme "fyne.io/fyne/v2/theme"
)

// linear undoes the sRGB transfer curve, as written in WCAG 2.1 ("relative luminance").
func linear(channel uint8) float64 {
	v := float64(channel) / 255
	if v <= 0.03928 {
		return v / 12.92
	}
	return math.Pow((v+0.055)/1.055, 2.4)
}

func luminance(c color.NRGBA) float64 {
	return 0.2126*linear(c.R) + 0.7152*linear(c.G) + 0.0722*linear(c.B)
}

func contrast(a, b color.NRGBA) float64 {
	la, lb := luminance(a), luminance(b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// lightness is L* of CIE 1976, from relative luminance.
func lightness(c color.NRGBA) float64 {
	y := luminance(c)
	if y <= 216.0/24389 {
		return y * 24389 / 27
	}
	return 116*math.Cbrt(y) - 16
}

func gray(v uint8) color.NRGBA { return color.NRGBA{R: v, G: v, B: v, A: 0xff} }

func TestContrastKnowsPublishedValues(t *testing.T) {
	// WCAG 2.1: black on white is 21:1. #767676 is the lightest grey that holds 4.5:1 on white, #777777 fails
	// (widely published, from memory).
	if got := contrast(gray(0), gray(255)); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white: %v", got)
	}
	if contrast(gray(0x76), gray(255)) < 4.5 || contrast(gray(0x77), gray(255)) >= 4.5 {
		t.Error("the 4.5:1 gray on white is not between #767676 and #777777")
	}
}

var variants = map[string]fyne.ThemeVariant{"light": fynetheme.VariantLight, "dark": fynetheme.VariantDark}

func shade(name fyne.ThemeColorName, v fyne.ThemeVariant) color.NRGBA {
	return New(Options{}).Color(name, v).(color.NRGBA)
}

func TestTextHoldsContrast(t *testing.T) {
	texts := []fyne.ThemeColorName{fynetheme.ColorNameForeground, ColorMuted, ColorAccent, ColorWarning,
		fynetheme.ColorNameDisabled, fynetheme.ColorNamePlaceHolder, fynetheme.ColorNameHyperlink, fynetheme.ColorNameError}
	grounds := []fyne.ThemeColorName{fynetheme.ColorNameBackground, fynetheme.ColorNameInputBackground,
		fynetheme.ColorNameMenuBackground, fynetheme.ColorNameOverlayBackground, fynetheme.ColorNameHeaderBackground,
		fynetheme.ColorNameButton, fynetheme.ColorNameSelection, ColorRowSelected, ColorRowHover, ColorNoteBackground,
		ColorWarningBackground, ColorAccentSoft, ColorBand, ColorPlanFill}
	for variant, v := range variants {
		for _, text := range texts {
			for _, ground := range grounds {
				if got := contrast(shade(text, v), shade(ground, v)); got < 4.5 {
					t.Errorf("%s: %s on %s is %.2f:1", variant, text, ground, got)
				}
			}
		}
		for _, ground := range []fyne.ThemeColorName{fynetheme.ColorNamePrimary, fynetheme.ColorNameWarning, fynetheme.ColorNameError} {
			if got := contrast(shade(fynetheme.ColorNameForegroundOnPrimary, v), shade(ground, v)); got < 4.5 {
				t.Errorf("%s: text on %s is %.2f:1", variant, ground, got)
			}
		}
		if got := contrast(shade(ColorLiveForeground, v), shade(ColorLiveBackground, v)); got < 20.9 {
			t.Errorf("%s: the Live page is %.2f:1", variant, got)
		}
	}
}

func TestShapesHoldContrast(t *testing.T) {
	shapes := []fyne.ThemeColorName{ColorPoint, ColorPlanOutline, ColorHatch, ColorAccent, ColorWarning, fynetheme.ColorNameInputBorder}
	for variant, v := range variants {
		for _, shape := range shapes {
			for _, ground := range []fyne.ThemeColorName{fynetheme.ColorNameBackground, ColorBand} {
				if got := contrast(shade(shape, v), shade(ground, v)); got < 3 {
					t.Errorf("%s: %s on %s is %.2f:1", variant, shape, ground, got)
				}
			}
		}
		for _, fill := range []fyne.ThemeColorName{ColorDamageMinor, ColorDamageFunctional, ColorDamageDisabling} {
			if got := contrast(shade(ColorHatch, v), shade(fill, v)); got < 3 {
				t.Errorf("%s: the hatch on %s is %.2f:1", variant, fill, got)
			}
		}
	}
}

// seen returns a colour as a dichromat sees it, by the matrices of Viénot, Brettel and Mollon (1999) for protanopia and
// deuteranopia in linear RGB (values from memory; their rows sum to 1, which the test checks).
func seen(c color.NRGBA, m [3][3]float64) [3]float64 {
	in := [3]float64{linear(c.R), linear(c.G), linear(c.B)}
	var out [3]float64
	for i, row := range m {
		for j, k := range row {
			out[i] += k * in[j]
		}
	}
	return out
}

var dichromats = map[string][3][3]float64{
	"protan": {{0.11238, 0.88762, 0}, {0.11238, 0.88762, 0}, {0.00401, -0.00401, 1}},
	"deutan": {{0.29275, 0.70725, 0}, {0.29275, 0.70725, 0}, {-0.02234, 0.02234, 1}},
}

func TestAccentAndWarningStayApart(t *testing.T) {
	for kind, m := range dichromats {
		for _, row := range m {
			if sum := row[0] + row[1] + row[2]; math.Abs(sum-1) > 1e-6 {
				t.Errorf("%s: a row sums to %v: white would not stay white", kind, sum)
			}
		}
		for variant, v := range variants {
			a, w := seen(shade(ColorAccent, v), m), seen(shade(ColorWarning, v), m)
			ya := 0.2126*a[0] + 0.7152*a[1] + 0.0722*a[2]
			yw := 0.2126*w[0] + 0.7152*w[1] + 0.0722*w[2]
			if ratio := (max(ya, yw) + 0.05) / (min(ya, yw) + 0.05); ratio < 1.3 {
				t.Errorf("%s eyes, %s: accent and warning differ by %.2f:1 only", kind, variant, ratio)
			}
		}
	}
	for variant, v := range variants {
		if d := math.Abs(lightness(shade(ColorAccent, v)) - lightness(shade(ColorWarning, v))); d < 14 {
			t.Errorf("%s, in gray: accent and warning differ by %.1f L* only", variant, d)
		}
	}
}

func TestDamageFillsGrowDarkerOrLighterInOrder(t *testing.T) {
	order := []fyne.ThemeColorName{ColorPlanFill, ColorDamageMinor, ColorDamageFunctional, ColorDamageDisabling}
	for variant, v := range variants {
		for i := 1; i < len(order); i++ {
			step := lightness(shade(order[i], v)) - lightness(shade(order[i-1], v))
			if v == fynetheme.VariantLight {
				step = -step
			}
			if i > 1 && step < 8 || step < 1 {
				t.Errorf("%s: %s is only %.1f L* beyond %s", variant, order[i], step, order[i-1])
			}
		}
	}
}

func TestEveryFyneColorIsOurs(t *testing.T) {
	test.AssertAllColorNamesDefined(t, New(Options{Look: Light}), "light")
	test.AssertAllColorNamesDefined(t, New(Options{Look: Dark}), "dark")
}

func TestLookOverridesTheSystem(t *testing.T) {
	light, dark := New(Options{Look: Light}), New(Options{Look: Dark})
	name := fynetheme.ColorNameBackground
	if light.Color(name, fynetheme.VariantDark) != shade(name, fynetheme.VariantLight) {
		t.Error("Light follows the system")
	}
	if dark.Color(name, fynetheme.VariantLight) != shade(name, fynetheme.VariantDark) {
		t.Error("Dark follows the system")
	}
}

func TestScaleMovesTextAndNotSpaces(t *testing.T) {
	one, big := New(Options{}), New(Options{Scale: 1.5})
	if big.Size(SizeBody) != 1.5*one.Size(SizeBody) {
		t.Errorf("body text: %v after %v", big.Size(SizeBody), one.Size(SizeBody))
	}
	if big.Size(fynetheme.SizeNamePadding) != one.Size(fynetheme.SizeNamePadding) {
		t.Error("spaces scale")
	}
	if got := New(Options{Scale: 9}).Options().Scale; got != MaxScale {
		t.Errorf("scale 9 became %v", got)
	}
}

func TestDigitsHaveOneWidth(t *testing.T) {
	test.NewTempApp(t).Settings().SetTheme(New(Options{Look: Light}))
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		want := fyne.MeasureText("0000000000", 20, style).Width
		for d := '1'; d <= '9'; d++ {
			text := string([]rune{d, d, d, d, d, d, d, d, d, d})
			if got := fyne.MeasureText(text, 20, style).Width; math.Abs(float64(got-want)) > 0.01 {
				t.Errorf("bold %v: ten of %c take %v, ten zeros %v", style.Bold, d, got, want)
			}
		}
	}
}

// over returns what is seen of an opaque colour under a veil.
func over(veil, under color.NRGBA) color.NRGBA {
	mix := func(a, b uint8) uint8 {
		return uint8((int(a)*int(veil.A) + int(b)*(0xff-int(veil.A))) / 0xff)
	}
	return color.NRGBA{R: mix(veil.R, under.R), G: mix(veil.G, under.G), B: mix(veil.B, under.B), A: 0xff}
}

// A button that has the keyboard is told from one that has not, and its words stay readable (WCAG 2.1, 1.4.3).
func TestFocusedButtonsStayReadable(t *testing.T) {
	words := map[fyne.ThemeColorName]fyne.ThemeColorName{fynetheme.ColorNamePrimary: fynetheme.ColorNameForegroundOnPrimary,
		fynetheme.ColorNameButton: fynetheme.ColorNameForeground, fynetheme.ColorNameBackground: fynetheme.ColorNameForeground}
	for variant, v := range variants {
		for ground, text := range words {
			plain := shade(ground, v)
			focused := over(shade(fynetheme.ColorNameFocus, v), plain)
			if got := contrast(shade(text, v), focused); got < 4.5 {
				t.Errorf("%s: %s on a focused %s is %.2f:1", variant, text, ground, got)
			}
			if d := lightness(focused) - lightness(plain); math.Abs(d) < 10 {
				t.Errorf("%s: focus moves %s by %.1f of lightness", variant, ground, d)
			}
		}
	}
}
