package album

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"regexp"

	"walkline/store/plain"
)

// Folder is where files are kept. It is made when the first file comes.
type Folder struct{ path string }

// At returns the folder at a path.
func At(path string) Folder { return Folder{path} }

// Small is the kind of a small picture made of a file.
const Small = "small"

// most is the size of the largest file that is read, in bytes. Ours: no photograph and no bill comes near.
const most = 256 << 20

// What can be wrong with a kept file.
var (
	ErrGone    = errors.New("the file is gone from the photos folder")
	ErrChanged = errors.New("the file has changed since it was kept")
	ErrName    = errors.New("no file can be kept under that name")
)

var (
	hashes = regexp.MustCompile(`^[0-9a-f]{64}$`)
	kinds  = regexp.MustCompile(`^[a-z]{1,8}$`)
)

// Path returns where a file is kept, or would be. Errors: [ErrName].
func (f Folder) Path(hash, kind string) (string, error) {
	if !hashes.MatchString(hash) || !kinds.MatchString(kind) {
		return "", fmt.Errorf("%w: %q, %q", ErrName, hash, kind)
	}
	ending := map[string]string{"jpeg": "jpg", Small: "small.jpg"}[kind]
	if ending == "" {
		ending = kind
	}
	return filepath.Join(f.path, hash+"."+ending), nil
}

// Keep keeps a file; one that is there already is left alone.
// Errors: [ErrName]; [ErrChanged] when the hash is not that of the content; the folder cannot be written.
func (f Folder) Keep(hash, kind string, data []byte) error {
	path, err := f.Path(hash, kind)
	if err != nil {
		return err
	}
	if err := check(hash, kind, data); err != nil {
		return err
	}
	if have, err := plain.Read(context.Background(), path, most); err == nil && check(hash, kind, have) == nil {
		return nil
	}
	if err := plain.MakeFolder(f.path); err != nil {
		return err
	}
	return plain.Place(path, bytes.NewReader(data))
}

// File returns a kept file. Errors: [ErrName], [ErrGone], [ErrChanged]; the file cannot be read.
func (f Folder) File(hash, kind string) ([]byte, error) {
	path, err := f.Path(hash, kind)
	if err != nil {
		return nil, err
	}
	data, err := plain.Read(context.Background(), path, most)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("%w: %s", ErrGone, path)
	}
	if err != nil {
		return nil, err
	}
	if err := check(hash, kind, data); err != nil {
		return nil, fmt.Errorf("%w: %s", err, path)
	}
	return data, nil
}

// check compares a file's content with its name.
func check(hash, kind string, data []byte) error {
	if kind == Small {
		return nil
	}
	if sum := sha256.Sum256(data); hex.EncodeToString(sum[:]) != hash {
		return ErrChanged
	}
	return nil
}
