package main

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
)

// dataFolder returns the folder of the user's data: XDG_DATA_HOME or ~/.local/share on Unix (XDG Base Directory
// Specification), the platform's own elsewhere.
func dataFolder() (string, error) {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" {
		dir, err := os.UserConfigDir()
		return filepath.Join(dir, "Walkline"), err
	}
	if dir := os.Getenv("XDG_DATA_HOME"); filepath.IsAbs(dir) {
		return filepath.Join(dir, "walkline"), nil
	}
	home, err := os.UserHomeDir()
	return filepath.Join(home, ".local", "share", "walkline"), err
}

// homeless says why the folder of the user's data can't be had, and what to do.
type homeless struct{ why error }

func (h homeless) Error() string {
	name := "HOME, or XDG_DATA_HOME,"
	switch runtime.GOOS {
	case "windows":
		name = "APPDATA"
	case "darwin":
		name = "HOME"
	}
	return fmt.Sprintf("the data folder can't be made (%v).\nHave the variable %s name a folder that you can write to.", h.why, name)
}

// madeFolder returns the folder of the user's data, which it makes: the lots lie there, the log, and what is known of crashes.
// Errors: [homeless].
func madeFolder() (string, error) {
	dir, err := dataFolder()
	if err == nil {
		err = os.MkdirAll(dir, 0o700)
	}
	if err != nil {
		return "", homeless{err}
	}
	return dir, nil
}
