package form_test

import (
	"runtime"
	"testing"

	"walkline/ui/form"
	"walkline/valuation/lot"
)

// TestDaysGoByTheirOwnLocale reads environments as POSIX.1-2017, 8.2, orders them: LC_ALL, LC_TIME, LANG. The orders are those of the short
// dates of the Unicode CLDR: en-US M/d/y, en-GB dd/MM/y, de-DE dd.MM.y, en-PH M/d/y.
func TestDaysGoByTheirOwnLocale(t *testing.T) {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		t.Skip("the system is asked there, not the environment")
	}
	for _, c := range []struct {
		all, time, messages, lang string
		want                      lot.DayOrder
	}{
		{"", "en_GB.UTF-8", "", "en_US.UTF-8", lot.DayFirst}, {"", "en_US.UTF-8", "", "de_DE.UTF-8", lot.MonthFirst},
		{"", "", "de_DE.UTF-8", "en_US.UTF-8", lot.MonthFirst}, {"", "", "", "de_DE@euro", lot.DayFirst},
		{"en_PH.UTF-8", "de_DE.UTF-8", "", "de_DE.UTF-8", lot.MonthFirst}, {"", "C.UTF-8", "", "de_DE.UTF-8", lot.MonthFirst},
		{"", "", "", "", lot.MonthFirst}, {"", "", "", "de", lot.MonthFirst}, {"", "_", "", "", lot.MonthFirst},
	} {
		for name, value := range map[string]string{"LC_ALL": c.all, "LC_TIME": c.time, "LC_MESSAGES": c.messages, "LANG": c.lang} {
			t.Setenv(name, value)
		}
		if got := form.DayOrder(); got != c.want {
			t.Errorf("%+v: %s", c, got)
		}
	}
}
