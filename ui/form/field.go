package form

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/widgets"
	"walkline/valuation/lot"
	"walkline/valuation/money"
)

// OrZero returns a whole number, 0 standing for not known.
func OrZero(n int) widgets.Number {
	if n == 0 {
		return widgets.Number{}
	}
	return widgets.Known(float64(n))
}

// OrNone returns a whole number that may be missing.
func OrNone(n *int) widgets.Number {
	if n == nil {
		return widgets.Number{}
	}
	return widgets.Known(float64(*n))
}

// ToPointer returns a whole number, nil when it is not known.
func ToPointer(n widgets.Number) *int {
	if !n.Known {
		return nil
	}
	x := n.Int()
	return &x
}

// Ungrouped is the spec of a number that is never grouped, such as a year.
func Ungrouped(s widgets.Spec) widgets.Spec {
	s.Ungrouped = true
	return s
}

// Date adds a field for a calendar day; text that is no day says so and changes nothing.
func (f *Of[T]) Date(label string, get func(T) lot.Date, set func(*T, lot.Date)) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder("YYYY-MM-DD")
	e.Validator = func(s string) error {
		if _, err := lot.ParseDate(s); s != "" && err != nil {
			return errors.New("no day of the calendar: write YYYY-MM-DD")
		}
		return nil
	}
	e.OnChanged = func(s string) {
		if d, err := lot.ParseDate(s); s == "" || err == nil {
			f.Change(label, func(c *T) { set(c, d) })
		}
	}
	f.leads(e)
	f.Row(label, bounded(withFault(e)), func(c T) {
		if d, err := lot.ParseDate(e.Text); (err == nil || e.Text == "") && d != get(c) {
			e.SetText(string(get(c)))
		}
	})
}

// Words adds a field for a list of words, parted by commas.
func (f *Of[T]) Words(label, example string, get func(T) []string, set func(*T, []string)) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder(example)
	e.OnChanged = func(s string) { f.Change(label, func(c *T) { set(c, parted(s)) }) }
	f.Row(label, bounded(e), func(c T) {
		if now := strings.Join(get(c), ", "); strings.Join(parted(e.Text), ", ") != now {
			e.SetText(now)
		}
	})
}

func parted(s string) []string {
	var out []string
	for _, w := range strings.Split(s, ",") {
		if w = strings.TrimSpace(w); w != "" {
			out = append(out, w)
		}
	}
	return out
}

// Amount returns an exact amount as a number.
func Amount(a *money.Amount, cur money.Currency) widgets.Number {
	if a == nil {
		return widgets.Number{}
	}
	return widgets.Exactly(cur.Decimal(*a))
}

// ToAmount returns a number as an exact amount, nil when it is not known.
func ToAmount(n widgets.Number, cur money.Currency) *money.Amount {
	if !n.Known {
		return nil
	}
	a := money.Amount(n.Minor(cur.Digits))
	return &a
}

// Share returns an optional fraction as a number.
func Share(x *float64) widgets.Number {
	if x == nil {
		return widgets.Number{}
	}
	return widgets.Known(*x)
}

// ToShare returns a fraction, nil when it is not known.
func ToShare(n widgets.Number) *float64 {
	if !n.Known {
		return nil
	}
	x := n.Float()
	return &x
}

// withFault shows what is wrong with an entry's text beside it, in words.
func withFault(e *widgets.TextEntry) fyne.CanvasObject {
	says := widgets.NewCaption("")
	check := e.OnChanged
	e.OnChanged = func(s string) {
		words := ""
		if err := e.Validator(s); err != nil {
			words = "! " + err.Error()
		}
		says.SetText(words)
		check(s)
	}
	return container.NewBorder(nil, nil, nil, says, e)
}
