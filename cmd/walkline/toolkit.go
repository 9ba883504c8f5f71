package main

import (
	_ "embed"
	"log/slog"
	"os"
	"path/filepath"
	"runtime"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/lang"
)

// The ids of the program toward the toolkit and the desktop; the older one named the folder of the toolkit's settings before.
const (
	appID = "app.walkline.Walkline"
	oldID = "walkline.desktop"
)

// toolkitFolder is where the toolkit keeps the settings of its programs. Source: the toolkit's internal/app/config_desktop*.go, v2.7.1.
func toolkitFolder() string {
	home, err := os.UserHomeDir()
	if err != nil {
		return ""
	}
	switch runtime.GOOS {
	case "windows":
		return filepath.Join(home, "AppData", "Roaming", "fyne")
	case "darwin":
		return filepath.Join(home, "Library", "Preferences", "fyne")
	}
	config, err := os.UserConfigDir()
	if err != nil {
		return ""
	}
	return filepath.Join(config, "fyne")
}

// moveSettings gives the settings that the toolkit kept under the older id to the present one, unless that has its own.
func moveSettings(folder string) {
	old, now := filepath.Join(folder, oldID), filepath.Join(folder, appID)
	if _, err := os.Stat(old); err != nil {
		return
	}
	if _, err := os.Stat(now); err == nil {
		return
	}
	if err := os.Rename(old, now); err != nil {
		slog.Warn("the toolkit's older settings stay where they are", "error", err)
	}
}

//go:embed english.json
var english []byte

// translated are the languages that the toolkit brings its own words in. Source: its lang/translations, v2.7.1.
var translated = []string{"cs", "de", "el", "es", "fr", "pl", "pt", "pt_BR", "ru", "sv", "ta", "uk", "zh_Hans"}

// speakEnglish has the toolkit's dialogs speak the language of the program, whatever the system's.
func speakEnglish() {
	names := []string{"en"}
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		names = append(names, translated...) // the system is asked there, not the environment
	} else if before, set := os.LookupEnv("LANGUAGE"); set {
		defer os.Setenv("LANGUAGE", before)
	} else {
		defer os.Unsetenv("LANGUAGE")
	}
	os.Setenv("LANGUAGE", "en")
	for _, name := range names {
		if err := lang.AddTranslations(fyne.NewStaticResource("base."+name+".json", english)); err != nil {
			slog.Warn("the toolkit's words", "language", name, "error", err)
		}
	}
}
