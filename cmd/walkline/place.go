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

// madeFolder returns the folder of the user's data, which it makes: the lots lie there, the log, and what is known of crashes.
func madeFolder() (string, error) {
	dir, err := dataFolder()
	if err != nil {
		return "", fmt.Errorf("finding the data folder: %w", err)
	}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return "", fmt.Errorf("making the data folder: %w", err)
	}
	return dir, nil
}
