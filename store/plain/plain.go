package plain

import (
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
)

// What can be wrong with a file that is named.
var (
	ErrNoFile   = errors.New("it is no plain file")
	ErrTooLarge = errors.New("the file is too large")
)

// chunk is how much is read between two looks at the context.
const chunk = 1 << 20

// Read returns a whole file of at most limit bytes. A link is followed: who names a file means what it leads to.
// Errors: [ErrNoFile], [ErrTooLarge]; the context's; the file can't be read.
func Read(ctx context.Context, path string, limit int64) ([]byte, error) {
	f, err := open(path, limit)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(&guarded{ctx, f}, limit+1))
	if err == nil && int64(len(data)) > limit {
		return nil, tooLarge(path, limit)
	}
	return data, err
}

// Head returns the first bytes of a plain file, which may have fewer. Errors: [ErrNoFile]; the file can't be read.
func Head(path string, size int) ([]byte, error) {
	f, err := open(path, math.MaxInt64)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, int64(size)))
}

// open opens a plain file.
func open(path string, limit int64) (*os.File, error) {
	info, err := os.Stat(path)
	switch {
	case err != nil:
		return os.Open(path) // the same fault in the words of opening
	case !info.Mode().IsRegular():
		return nil, fmt.Errorf("%w: %s", ErrNoFile, path)
	case info.Size() > limit:
		return nil, tooLarge(path, limit)
	}
	return os.Open(path)
}

func tooLarge(path string, limit int64) error {
	return fmt.Errorf("%w: %s has more than %d MB", ErrTooLarge, path, limit>>20)
}

// guarded is a reader that stops when its context ends.
type guarded struct {
	ctx context.Context
	r   io.Reader
}

func (g *guarded) Read(p []byte) (int, error) {
	if err := g.ctx.Err(); err != nil {
		return 0, err
	}
	return g.r.Read(p[:min(len(p), chunk)])
}

// Copy copies a plain file to a place, over what is there. Errors: as [Read], and the place can't be written; nothing is left then.
func Copy(ctx context.Context, from, to string, limit int64) error {
	f, err := open(from, limit)
	if err != nil {
		return err
	}
	defer f.Close()
	return Place(to, &guarded{ctx, f})
}

// Ending is that of a file that is still being written: one that is found at the start of the program was left by a crash.
const Ending = ".coming.tmp"
