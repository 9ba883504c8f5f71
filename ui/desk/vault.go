package desk

import "context"

// Vault copies all that is kept, and puts a copy back.
type Vault interface {
	// Path returns the file that everything is kept in.
	Path() string
	// Backup writes a whole copy to a new file. Errors: there is a file of that name; it can't be written.
	Backup(ctx context.Context, path string) error
	// Stage checks a backup and makes it ready to take the place of what is here at the next start. Errors: what the file is, by name.
	Stage(ctx context.Context, path string) error
	// Staged reports whether a backup waits for the next start.
	Staged() bool
	// Unstage lets it go.
	Unstage() error
}

// Backup copies all that is kept to a new file. It touches no state and may run on any goroutine.
func (d *Desk) Backup(ctx context.Context, path string) error {
	return d.Vault.Backup(ctx, path)
}

// StageRestore makes a backup ready for the next start. It touches no state and may run on any goroutine.
func (d *Desk) StageRestore(ctx context.Context, path string) error {
	return d.Vault.Stage(ctx, path)
}

// Staged is the state after a backup was made ready, or could not be.
func (d *Desk) Staged(s State, path string, err error) State {
	if err != nil {
		return d.kept(s.troubled("restore the backup", err))
	}
	return d.kept(s.said("The backup " + path +
		" takes the place of what is here when the program starts next. Until then all goes on as it is; what is here then is set aside " +
		"whole, beside it."))
}

// Unstage lets a backup go that waits for the next start.
func Unstage() Action {
	return shows(func(_ context.Context, d *Desk, s State) State {
		if err := d.Vault.Unstage(); err != nil {
			return d.kept(s.troubled("let the restore go", err))
		}
		return d.kept(s.said("Nothing is restored. The backup stays where it is."))
	})
}

// Keeping is where everything is kept.
type Keeping struct {
	Path   string // empty: in no file
	Staged bool   // a backup takes its place at the next start
}

// kept is the state with where everything is kept.
func (d *Desk) kept(s State) State {
	s.Keeping = Keeping{d.Vault.Path(), d.Vault.Staged()}
	return s
}
