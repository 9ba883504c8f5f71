package main

import (
	"regexp"
	"strings"
	"testing"
)

// retired are words of another dialect or of no shop; each has its successor in the window, and ids of files may still hold it.
var retired = regexp.MustCompile(`(?i)\b(torch|aluminium|middle pillars?|sills?|bulkhead|loom|bumper beam|undertray|charge-air|` +
	`expansion bottle|` +
	`propeller shaft|stabiliser|spiral contact|restraint lamp|theft lamp|reversing camera|number-plate|bought-in|own hours|foretold|` +
	`tyres?|colours?|moulds?|moulding|licence|labour|gearbox(es)?|bonnet|windscreen|bound by|what stripping|is hurt|foretell|judgement|` +
	`worth a minute|not looked|prior lot|can be had)\b`)

// longest is how many words a sentence may have. The form that carries a rule's figures and a citation may be longer.
const longest = 25

func TestNoTextHoldsARetiredWord(t *testing.T) {
	all, err := texts("../..")
	if err != nil || len(all) < 2000 {
		t.Fatal(len(all), err)
	}
	for _, x := range all {
		if found := retired.FindString(x.words); found != "" {
			t.Errorf("%s:%d: %q in %q", x.path, x.line, found, x.words)
		}
	}
}

func TestNoSentenceIsTooLong(t *testing.T) {
	all, err := texts("../..")
	if err != nil {
		t.Fatal(err)
	}
	ends := regexp.MustCompile(`[.:;?!]["')]*(\s|$)|\n|[()]`)
	for _, x := range all {
		for _, s := range ends.Split(x.words, -1) {
			// what a law counts up one by one, parted by commas, may be longer
			if n := len(strings.Fields(s)); n > longest && strings.Count(s, ", ") < n/4 {
				t.Errorf("%s:%d: %d words in %q", x.path, x.line, n, s)
			}
		}
	}
}
