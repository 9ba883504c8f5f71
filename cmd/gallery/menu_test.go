package main

import (
	"runtime"
	"slices"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"walkline/ui/task"
	"walkline/ui/widgets/seen"
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
	for _, want := range []string{"New lot   Ctrl+N", "File for the rebuilt inspection…   Ctrl+Shift+P", "Undo   Ctrl+Z",
		"Remove   Ctrl+Del", "Larger text   Ctrl+=", "First steps and cautions   Ctrl+F1"} {
		if !slices.Contains(labels, want) {
			t.Errorf("no %q in %q", want, labels)
		}
	}
}

func TestTheKeysOfTheWindowAreHeardInAField(t *testing.T) {
	s, id := worksheet(t, "27", '4')
	key := func(k fyne.KeyName) {
		s.screen.Canvas().Focused().(fyne.Shortcutable).TypedShortcut(&desktop.CustomShortcut{KeyName: k,
			Modifier: fyne.KeyModifierShortcutDefault})
	}
	key(fyne.Key1)
	s.wants(t, "As the list and the door plate say.")
	key(fyne.KeyDelete) // a word of the text, not the lot
	if s.kept(t, id).Lot.Number != "27" || !seen.Says(s.screen.Content(), "Lot 27") {
		t.Error("Ctrl+Del in a field has removed the lot")
	}
	key(fyne.KeyF)
	s.wants(t, "3 lots")
	key(fyne.KeyN) // from the search, too
	s.wants(t, "(vehicle not entered)")
}
