package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"

	"walkline/store/plain"
)

// ErrClaimed says that a window has the lots open already.
var ErrClaimed = errors.New("the lots are open in another window")

// claiming holds a file against every other claim. It lies beside the lots, so that these can still be read and backed up.
var claiming = pool{"exclusive", "rwc", []string{"busy_timeout(0)"}, 1, false}

// claimEnding is put behind the name of the file of the lots.
const claimEnding = ".open"

// Claim takes the file of the lots at path for one window, until release is called or the program ends, however it ends: the
// lock is the operating system's. A second window would show what the first has long changed, and meet a clash at every turn.
// What a program that was killed left half written beside the lots is removed.
// The file that is claimed stays, but beside what is no book of ours it is removed again if it was not there before.
// Where the folder can't be written nothing is claimed; [Open] says what is wrong with it. Errors: [ErrClaimed].
func Claim(ctx context.Context, path string) (release func(), err error) {
	unclaimed := func() {}
	absolute, err := filepath.Abs(path)
	if err != nil {
		return unclaimed, nil
	}
	if real, err := filepath.EvalSymlinks(absolute); err == nil {
		absolute = real // the same file by another name
	}
	_, err = os.Stat(absolute + claimEnding)
	ours := errors.Is(err, fs.ErrNotExist)
	db, err := claiming.open(ctx, absolute+claimEnding)
	if err != nil {
		return unclaimed, claimFault(err)
	}
	tx, err := db.BeginTx(ctx, nil)
	if err != nil {
		db.Close()
		return unclaimed, claimFault(err)
	}
	clean(absolute)
	end := func() { _, _ = tx.Rollback(), db.Close() }
	if !ours {
		return end, nil
	}
	return func() { unclaim(absolute, end) }, nil
}

// unclaim ends a claim and, where nobody's lots lie, removes its file: before the end, so that it is never that of the next who claims.
// Windows removes no open file, and one that another has opened meanwhile stays.
func unclaim(path string, end func()) {
	remove := func() {
		if errors.Is(startsAsDatabase(path), ErrNotDatabase) {
			_ = plain.Remove(path + claimEnding)
		}
	}
	if runtime.GOOS == "windows" {
		end()
		remove()
		return
	}
	remove()
	end()
}

// claimFault keeps only that somebody else holds the claim.
func claimFault(err error) error {
	if errors.Is(wrapped("claiming the lots", err), ErrBusy) {
		return ErrClaimed
	}
	return nil
}
