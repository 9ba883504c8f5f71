//go:build !windows

package main

import (
	"context"
	"os/exec"
	"runtime"
	"time"
)

// boxes are programs that show a message, in the order in which they are tried.
func boxes(title, words string) [][]string {
	if runtime.GOOS == "darwin" {
		const script = `on run argv
display alert (item 1 of argv) message (item 2 of argv)
end run`
		return [][]string{{"osascript", "-e", script, title, words}}
	}
	return [][]string{
		{"zenity", "--error", "--no-markup", "--title", title, "--text", words},
		{"kdialog", "--title", title, "--error", words},
		{"xmessage", "-center", title + "\n\n" + words},
	}
}

// box shows a message with whatever of the desktop's own programs is there; where none is, the terminal has it already.
func box(title, words string) {
	const patience = 2 * time.Minute // nobody may be there to close it
	ctx, cancel := context.WithTimeout(context.Background(), patience)
	defer cancel()
	for _, b := range boxes(title, words) {
		if path, err := exec.LookPath(b[0]); err == nil {
			_ = exec.CommandContext(ctx, path, b[1:]...).Run()
			return
		}
	}
}
