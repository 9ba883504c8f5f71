package main

import (
	"errors"
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

// storePath returns where the lots are kept, and makes its folder.
func storePath(chosen string) (string, error) {
	if chosen != "" {
		return chosen, nil
	}
	dir, err := dataFolder()
	if err != nil {
		return "", fmt.Errorf("finding the data folder: %w", err)
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", fmt.Errorf("making the data folder: %w", err)
	}
	return filepath.Join(dir, "walkline.db"), nil
}

// errNoDisplay says what to do where no window can be opened.
var errNoDisplay = errors.New(`there is no display, so no window can be opened.
On a desktop, start it from a terminal there. Here, "walk value case.json" values a lot in the terminal`)

// display returns errNoDisplay on a Unix desktop without an X server.
func display() error {
	if runtime.GOOS == "windows" || runtime.GOOS == "darwin" || os.Getenv("DISPLAY") != "" {
		return nil
	}
	return errNoDisplay
}
