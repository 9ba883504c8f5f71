package main

import "strings"

// flagWords says what package flag found in the words of this program. Source: its texts, Go 1.26.
func flagWords(found string) string {
	if name, ok := strings.CutPrefix(found, "flag provided but not defined: "); ok {
		return "no option " + long(name)
	}
	if name, ok := strings.CutPrefix(found, "flag needs an argument: "); ok {
		return long(name) + " wants a value behind it"
	}
	if rest, ok := strings.CutPrefix(found, "bad flag syntax: "); ok {
		return "no option " + rest
	}
	rest := strings.TrimPrefix(strings.TrimPrefix(found, "invalid value "), "invalid boolean value ")
	value, rest, _ := strings.Cut(rest, " for ")
	name, why, ok := strings.Cut(strings.TrimPrefix(rest, "flag "), ": ")
	switch {
	case !ok:
		return found
	case strings.Contains(why, "strconv.") || why == "parse error":
		why = "that is no value of it"
	}
	return long(name) + " " + value + ": " + why
}

// long is the name of an option as the help writes it.
func long(name string) string { return "--" + strings.TrimLeft(name, "-") }
