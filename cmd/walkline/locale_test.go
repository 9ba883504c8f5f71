package main

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/lang"
)

// TestNoLanguageNoComplaint starts this program under locales that name no language, and one that names another: the toolkit says
// nothing on stderr, and its dialogs speak the program's language.
func TestNoLanguageNoComplaint(t *testing.T) {
	if os.Getenv("WALKLINE_SPEAKS") != "" {
		speakEnglish()
		fmt.Print(lang.L("Cancel"), lang.X("file.name", "?"), " ", os.Getenv("LANG"), os.Getenv("LC_CTYPE"))
		_ = lang.SystemLocale()
		os.Exit(0)
	}
	for _, c := range []struct{ env, says string }{
		{"LANG=C.UTF-8", "CancelName C.UTF-8"}, {"LC_ALL=C.UTF-8", "CancelName C.UTF-8"}, {"LANG=C", "CancelName C"},
		{"LC_MESSAGES=C.utf8", "CancelName "}, {"LANG=xx_YY", "CancelName xx_YY"}, {"LC_ALL=english", "CancelName english"},
		{"LANG=sr_RS@latin", "CancelName sr_RS"}, {"LANGUAGE=xx:yy", "CancelName "},
		{"LC_ALL=POSIX", "CancelName "}, {"LANG=", "CancelName "}, {"LANG=de_DE.UTF-8", "CancelName de_DE.UTF-8"},
		{"LANG=en_US.UTF-8", "CancelName en_US.UTF-8"},
	} {
		cmd := exec.Command(os.Args[0], "-test.run=^TestNoLanguageNoComplaint$")
		cmd.Env = []string{"WALKLINE_SPEAKS=1", "HOME=" + t.TempDir(), c.env}
		var errs strings.Builder
		cmd.Stderr = &errs
		out, err := cmd.Output()
		if err != nil || string(out) != c.says || errs.Len() > 0 {
			t.Errorf("%s: %q, %v, stderr %q, want %q", c.env, out, err, errs.String(), c.says)
		}
	}
}

func TestOldSettingsMoveAlong(t *testing.T) {
	folder := t.TempDir()
	old, now := filepath.Join(folder, oldID), filepath.Join(folder, appID)
	keep := func(in, text string) {
		t.Helper()
		if err := os.MkdirAll(in, 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(in, "preferences.json"), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	moveSettings(folder) // nothing is there yet
	keep(old, `{"layout":1}`)
	moveSettings(folder)
	if got, err := os.ReadFile(filepath.Join(now, "preferences.json")); err != nil || string(got) != `{"layout":1}` {
		t.Errorf("%q, %v", got, err)
	}
	keep(old, `{"layout":2}`)
	moveSettings(folder)
	if got, _ := os.ReadFile(filepath.Join(now, "preferences.json")); string(got) != `{"layout":1}` {
		t.Errorf("newer settings were overwritten: %q", got)
	}
}
