package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// Without a guess of the hammer price the answer still has a chance to win, and says that it goes by starter values.
func TestAValueWithoutAGuessSaysWhatTheChanceToWinGoesBy(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "..", "testdata", "wrecks", "01_light_front.json"))
	if err != nil {
		t.Fatal(err)
	}
	before, after, found := strings.Cut(string(text), `"hammer_guess":`)
	if !found {
		t.Fatal("the wreck has no guess to take out")
	}
	_, after, _ = strings.Cut(after, "}")
	name := filepath.Join(t.TempDir(), "lot.json")
	if err := os.WriteFile(name, []byte(before+`"hammer_guess": null`+after), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, brief := range []bool{false, true} {
		args := []string{"value", name}
		if brief {
			args = append(args, "--brief")
		}
		code, out, errs := ran(args...)
		if code != done || errs != "" {
			t.Fatal(code, errs)
		}
		if strings.Contains(out, "no hammer guess") || !strings.Contains(out, "Both go by") || !strings.Contains(out, "starter values") {
			t.Errorf("brief %v: %s", brief, out)
		}
	}
}
