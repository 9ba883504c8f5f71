package main

import (
	"regexp"
	"strings"
	"testing"
)

func TestEveryCommandHasItsHelp(t *testing.T) {
	for _, p := range manuals {
		words := strings.Fields(p.name)
		calls := [][]string{append([]string{"help"}, words...), append(words, "--help"), append(words, "-h")}
		if p.name != "help" {
			calls = append(calls, append(words, "x.json", "--help"))
		}
		for _, args := range calls {
			code, out, errs := ran(args...)
			if code != done || errs != "" || !strings.HasPrefix(out, p.synopsis()+"\n") || !strings.HasSuffix(out, codes) {
				t.Errorf("%q: exit %d, %q, %q", args, code, out, errs)
			}
		}
		if !strings.Contains(usage, p.synopsis()) {
			t.Errorf("the overview leaves out %s", p.name)
		}
	}
	if code, out, _ := ran("comps", "--help"); code != done || strings.Count(out, "walk comps ") != 4 {
		t.Errorf("exit %d: %s", code, out)
	}
	if code, out, errs := ran("help", "apprise"); code != faulty || out != "" || !strings.Contains(errs, `no command "apprise"`) {
		t.Errorf("exit %d: %q %q", code, out, errs)
	}
}

// TestHelpNamesRealOptions gives each option that a page names to its command: none is refused as unknown.
func TestHelpNamesRealOptions(t *testing.T) {
	option := regexp.MustCompile(`^(?:-o, )?(--[a-z_-]+)`)
	for _, p := range manuals {
		for _, line := range p.options {
			name := option.FindStringSubmatch(line)
			if name == nil {
				t.Errorf("%s: no option in %q", p.name, line)
				continue
			}
			_, _, errs := ran(append(strings.Fields(p.name), name[1])...)
			if strings.Contains(errs, "no option") || strings.Contains(errs, "not defined") {
				t.Errorf("%s %s: %s", p.name, name[1], errs)
			}
		}
	}
}

func TestVersion(t *testing.T) {
	for _, arg := range []string{"version", "--version"} {
		if code, out, errs := ran(arg); code != done || errs != "" || !strings.HasPrefix(out, "walk unstamped (walkline-engine/") {
			t.Errorf("%s: exit %d, %q, %q", arg, code, out, errs)
		}
	}
}
