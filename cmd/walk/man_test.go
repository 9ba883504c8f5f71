package main

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// TestTheManPageNamesEveryCommand holds the page that is installed against the help: the same commands in the same order, every option.
func TestTheManPageNamesEveryCommand(t *testing.T) {
	text, err := os.ReadFile("../../assets/man/walk.1")
	if err != nil {
		t.Fatal(err)
	}
	page := string(text)
	_, synopsis, _ := strings.Cut(page, "\n.Sh SYNOPSIS\n")
	synopsis, _, _ = strings.Cut(synopsis, "\n.Sh ")
	var named, want []string
	for _, m := range regexp.MustCompile(`(?m)^\.Nm\n\.Cm (.+)$`).FindAllStringSubmatch(synopsis, -1) {
		named = append(named, m[1])
	}
	for _, p := range manuals {
		want = append(want, p.name)
		for _, line := range p.options {
			option := regexp.MustCompile(`-(-[a-z-]+)`).FindStringSubmatch(line)[1]
			if !regexp.MustCompile(`Fl ` + option + `\b`).MatchString(page) {
				t.Errorf("the page leaves out %s of %s", option, p.name)
			}
		}
	}
	if !slices.Equal(named, want) {
		t.Errorf("the page has %q, the help %q", named, want)
	}
}
