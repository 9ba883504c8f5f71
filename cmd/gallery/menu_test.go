package main

import (
	"runtime"
	"slices"
	"testing"

	"walkline/ui/task"
)

func TestMenusNameTheirKeysInWordsOfTheirOwn(t *testing.T) {
	if runtime.GOOS == "darwin" {
		t.Skip("macOS writes the keys of its menus itself")
	}
	var labels []string
	for _, m := range opened(t, task.Inline{}).screen.MainMenu().Items {
		for _, i := range m.Items {
			labels = append(labels, i.Label)
		}
	}
	for _, want := range []string{"New lot   Ctrl+N", "File for the rebuilt inspection…   Ctrl+Shift+P", "Undo   Ctrl+Z", "Remove   Ctrl+Del", "Larger text   Ctrl+=", "First steps and cautions   Ctrl+F1"} {
		if !slices.Contains(labels, want) {
			t.Errorf("no %q in %q", want, labels)
		}
	}
}
