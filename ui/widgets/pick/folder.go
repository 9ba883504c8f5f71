package pick

import (
	"cmp"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// entry is one row: a folder or a file of the folder on show.
type entry struct {
	name    string
	path    string
	folder  bool
	size    int64 // bytes
	changed time.Time
}

// above is the name of the row that leads to the folder above.
const above = ".. (the folder above)"

// entriesOf returns the folders of a folder, then its files with one of the endings, both by name; the folder above stands first.
// Errors: the folder cannot be read.
func entriesOf(folder string, files bool, endings []string) ([]entry, error) {
	inside, err := os.ReadDir(folder)
	if err != nil {
		return nil, err
	}
	var all []entry
	for _, f := range inside {
		if strings.HasPrefix(f.Name(), ".") {
			continue
		}
		path := filepath.Join(folder, f.Name())
		info, err := os.Stat(path) // what a link leads to
		if err != nil || (!info.IsDir() && !(files && hasEnding(f.Name(), endings))) {
			continue
		}
		all = append(all, entry{name: f.Name(), path: path, folder: info.IsDir(), size: info.Size(), changed: info.ModTime()})
	}
	slices.SortStableFunc(all, byName)
	if up := filepath.Dir(folder); up != folder {
		all = slices.Insert(all, 0, entry{name: above, path: up, folder: true})
	}
	return all, nil
}

// hasEnding says whether a file has one of the endings, in whatever case; no ending asked for: any file has.
func hasEnding(name string, endings []string) bool {
	return len(endings) == 0 || slices.Contains(endings, strings.ToLower(filepath.Ext(name)))
}

// byName orders folders before files, and both as people count: photo 9 before photo 10.
func byName(a, b entry) int {
	if a.folder != b.folder {
		return cmp.Compare(btoi(b.folder), btoi(a.folder))
	}
	return counting(strings.ToLower(a.name), strings.ToLower(b.name))
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// counting compares words in which runs of figures count as numbers.
func counting(a, b string) int {
	for a != "" && b != "" {
		na, nb := figures(a), figures(b)
		if na > 0 && nb > 0 {
			x, y := strings.TrimLeft(a[:na], "0"), strings.TrimLeft(b[:nb], "0")
			if c := cmp.Or(cmp.Compare(len(x), len(y)), strings.Compare(x, y)); c != 0 {
				return c
			}
			a, b = a[na:], b[nb:]
			continue
		}
		if a[0] != b[0] {
			return cmp.Compare(a[0], b[0])
		}
		a, b = a[1:], b[1:]
	}
	return cmp.Compare(len(a), len(b))
}

// figures returns how many figures a text begins with.
func figures(s string) int { return len(s) - len(strings.TrimLeft(s, "0123456789")) }

// sizeWords writes the size of a file, as 3.4 MB (1 MB = 1,000,000 bytes, as the SI has it).
func sizeWords(bytes int64) string {
	switch {
	case bytes < 1000:
		return fmt.Sprintf("%d bytes", bytes)
	case bytes < 1e6:
		return fmt.Sprintf("%.0f kB", float64(bytes)/1e3)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

// place is a folder that people look for files in.
type place struct{ name, path string }

// places returns the folders of this machine that files are looked for in: the user's own, and the disks and cards.
func places() []place {
	var all []place
	add := func(name, path string) {
		if info, err := os.Stat(path); err == nil && info.IsDir() {
			all = append(all, place{name, path})
		}
	}
	if home, err := os.UserHomeDir(); err == nil {
		add("Home", home)
		for _, name := range []string{"Pictures", "Downloads", "Documents", "Desktop"} {
			add(name, filepath.Join(home, name))
		}
	}
	for letter := 'A'; letter <= 'Z' && os.PathSeparator == '\\'; letter++ {
		add("Disk "+string(letter)+":", string(letter)+`:\`)
	}
	for _, mounted := range []string{"/media/*/*", "/run/media/*/*", "/Volumes/*"} { // disks, sticks and cards of cameras
		found, err := filepath.Glob(mounted)
		for _, path := range found {
			if err == nil {
				add(filepath.Base(path), path)
			}
		}
	}
	if os.PathSeparator == '/' {
		add("Whole disk", "/")
	}
	return all
}
