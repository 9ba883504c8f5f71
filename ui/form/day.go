package form

import (
	"os"
	"runtime"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/lang"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/ui/widgets/draw"
	"walkline/valuation/lot"
)

// monthFirst are the regions that write the month before the day, from the locale data of the Unicode CLDR (the order of its short date).
var monthFirst = []string{"US", "AS", "FM", "GU", "MH", "MP", "PH", "PR", "PW", "UM", "VI"}

// DayOrder is the order of the system's region, on Unix of that for days; one that names none is taken as American, as the words of the
// window are.
func DayOrder() lot.DayOrder {
	tag := strings.FieldsFunc(LocaleOf("LC_TIME"), func(r rune) bool { return r == '-' || r == '_' })
	if len(tag) == 0 {
		return lot.MonthFirst
	}
	region := tag[len(tag)-1]
	return lot.DayOrder(len(region) != 2 || len(tag) == 1 || slices.Contains(monthFirst, region))
}

// LocaleOf returns the locale of one kind of thing, such as "de_DE", empty where none is set. On Unix the environment sets one for each
// kind, named as LC_TIME; elsewhere the system has one for all. Source: POSIX.1-2017, 8.2 Internationalization Variables.
func LocaleOf(kind string) string {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		return string(lang.SystemLocale())
	}
	for _, name := range []string{"LC_ALL", kind, "LANG"} {
		if locale := os.Getenv(name); locale != "" {
			locale, _, _ = strings.Cut(locale, "@")
			locale, _, _ = strings.Cut(locale, ".")
			return locale
		}
	}
	return ""
}

// DayShown writes a day in the system's manner.
func DayShown(d lot.Date) string { return DayOrder().Show(d) }

// ReadDay reads a day as it was typed, and says how where it could be read otherwise. Errors: it is no day.
func ReadDay(typed string) (d lot.Date, said string, err error) {
	order := DayOrder()
	d, guessed, err := order.ReadDay(typed, lot.Date(time.Now().Format(time.DateOnly)))
	switch {
	case err != nil:
		return d, "", err
	case guessed:
		said = "= " + order.Show(d) + " (" + order.String() + ")"
	case d != "" && typed != order.Show(d):
		said = "= " + order.Show(d)
	}
	return d, said, nil
}

// Date adds a field for a calendar day, typed as people write days; under it stands how it was read, or what is wrong.
func (f *Of[T]) Date(label string, at func(*T) *lot.Date) {
	e, says := widgets.NewTextEntry(), widgets.NewCaption("")
	says.Hide()
	e.SetPlaceHolder("11/27, Nov 27 or tomorrow")
	e.SetMeaning(view.Help(label))
	say := func(words string, wrong bool) {
		says.SetWarning(wrong)
		says.SetText(words)
		says.Hidden = words == ""
		e.Refresh()
	}
	e.OnChanged = func(s string) {
		d, said, err := ReadDay(s)
		if err != nil {
			say("! "+err.Error(), true)
			return
		}
		say(said, false)
		f.Change(label, func(c *T) { *at(c) = d })
	}
	f.leads(e)
	var kept lot.Date // as it was shown last
	f.Row(label, bounded(container.NewVBox(e, says)), func(c T) {
		d, _, err := ReadDay(e.Text)
		canvas := draw.CanvasOf(e)
		begun := canvas != nil && canvas.Focused() == e // a day that is refused stays while it is typed: it may be the beginning of another
		if now := *at(&c); (now != kept || !begun) && (err == nil || e.Text == "") && d != now {
			e.SetText(DayShown(now))
		}
		kept = *at(&c)
	})
}
