package sheet

import (
	"strings"
	"testing"
)

func testPress(t testing.TB) *press {
	t.Helper()
	p, err := newPress(Letter, "test", "2026-11-25")
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// No line is wider than it may be, and the lines hold every character in its order.
func FuzzWrap(f *testing.F) {
	for _, s := range []string{"", "one", "the quick brown fox jumps", strings.Repeat("W", 90), "a " + strings.Repeat("no break", 20),
		"tab\tnew\nline", "\xff\u200b東\u00a0x", "12\u00a0min", "\u00a0", "a \u00a0 b"} {
		f.Add(s, 40.0)
	}
	p := testPress(f)
	f.Fuzz(func(t *testing.T, text string, width float64) {
		width = min(max(width, 5), 190)
		lines := p.wrap(text, width, bodyType)
		for _, l := range lines {
			if p.width(l, bodyType) > width && len([]rune(l)) > 1 {
				t.Errorf("%q is wider than %.1f mm", l, width)
			}
		}
		clean, _ := shown(bounded(text))
		if got, want := strings.ReplaceAll(strings.Join(lines, ""), " ", ""), strings.ReplaceAll(clean, " ", ""); got != want {
			t.Errorf("%q became %q", want, got)
		}
	})
}

func TestWrapKeepsWhatIsJoined(t *testing.T) {
	p := testPress(t)
	for width := 8.0; width < 40; width++ {
		for _, l := range p.wrap("Look from below. 12\u00a0min.", width, bodyType) {
			if strings.HasPrefix(l, "min") {
				t.Errorf("at %.0f mm a figure is parted from its unit", width)
			}
		}
	}
}

func TestShownKeepsWhatTheFontHas(t *testing.T) {
	for _, word := range []string{"Straße", "Łódź", "Ёлка", "Αθήνα", "½ × – — “x” … €", "0O1lI"} {
		if got, lack := shown(word); got != word || lack {
			t.Errorf("%q is shown as %q, lacking %v", word, got, lack)
		}
	}
	if got, lack := shown("a\u202fb\u2011c\x00d"); got != "a b-cd" || lack {
		t.Errorf("%q, %v", got, lack)
	}
}

// A word of 200,000 letters once took minutes: each line measured all that was left.
func TestAWordWithoutEndIsCutAndSaidToBe(t *testing.T) {
	p := testPress(t)
	lines := p.wrap(strings.Repeat("W", 200_000), 100, bodyType)
	if all := strings.Join(lines, " "); len(all) > mostLetters*11/10 || !strings.Contains(all, "not printed") {
		t.Errorf("%d letters are printed: %.80s", len(all), all[len(all)-80:])
	}
}
