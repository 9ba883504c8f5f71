package album

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"walkline/store/plain"
)

// CopyTo copies every kept file that the other folder lacks, as it lies here: one that has changed is copied too, and told when it
// is read. Links, folders and whatever else bears no name of a kept file are left out.
// Errors: a file cannot be read or written, the context's; those copied before stay.
func (f Folder) CopyTo(ctx context.Context, other Folder) error {
	files, err := os.ReadDir(f.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, file := range files {
		to := filepath.Join(other.path, file.Name())
		if !file.Type().IsRegular() || strings.HasSuffix(file.Name(), ".tmp") || isThere(to) {
			continue
		}
		if err := plain.MakeFolder(other.path); err != nil {
			return err
		}
		if err := plain.Copy(ctx, filepath.Join(f.path, file.Name()), to, most); err != nil {
			return err
		}
	}
	return nil
}

func isThere(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// Clean removes what a crash left half written.
func (f Folder) Clean() {
	left, _ := filepath.Glob(filepath.Join(pattern.Replace(f.path), "*.tmp")) // the pattern is a good one
	for _, path := range left {
		_ = plain.Remove(path)
	}
}

// pattern takes from a path what it would mean in a pattern.
var pattern = strings.NewReplacer("*", `\*`, "?", `\?`, "[", `\[`, `\`, `\\`)
