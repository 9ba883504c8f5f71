package album

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// CopyTo copies every file that the other folder lacks, as it lies here: one that has changed is copied too, and told when it is
// read. Errors: a file cannot be read or written; those copied before stay.
func (f Folder) CopyTo(other Folder) error {
	files, err := os.ReadDir(f.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, file := range files {
		if file.IsDir() || strings.HasSuffix(file.Name(), ".tmp") {
			continue
		}
		to := filepath.Join(other.path, file.Name())
		if _, err := os.Lstat(to); err == nil {
			continue
		}
		data, err := os.ReadFile(filepath.Join(f.path, file.Name()))
		if err != nil {
			return err
		}
		if err := os.MkdirAll(other.path, 0o777); err != nil {
			return err
		}
		if err := place(to, data); err != nil {
			return err
		}
	}
	return nil
}
