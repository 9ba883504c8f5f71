package store

import (
	"context"
	"database/sql"
	"net/url"
	"path/filepath"
	"strings"

	_ "modernc.org/sqlite" // the driver named "sqlite"
)

// pool says what one kind of connection is for.
type pool struct {
	lock        string   // how a transaction begins
	mode        string   // rw and create: "rwc"; never write: "ro"
	pragmas     []string // in the order they are to run
	connections int
	immutable   bool // nothing else is read or made: no write-ahead file, no lock
}

var (
	// writing is the one connection that writes. The busy timeout comes first, so that switching to WAL waits its turn.
	writing = pool{"immediate", "rwc", []string{"busy_timeout(5000)", "foreign_keys(1)", "journal_mode(WAL)", "synchronous(FULL)"}, 1, false}
	// reading connections can't write; the file is in WAL mode by the time they open.
	reading = pool{"deferred", "rw", []string{"busy_timeout(5000)", "foreign_keys(1)", "query_only(1)", "synchronous(FULL)"}, 4, false}
	// inspecting leaves a file that may not be ours as it is.
	inspecting = pool{"deferred", "ro", []string{"busy_timeout(5000)", "query_only(1)"}, 1, false}
	// folding takes a file out of WAL mode, its log folded in, which only who is alone with it may.
	folding = pool{"immediate", "rw", []string{"busy_timeout(1000)", "synchronous(FULL)", "journal_mode(DELETE)"}, 1, false}
	// salvaging reads what it can of a copy that is ours, damaged or not.
	salvaging = pool{"deferred", "rw", []string{"busy_timeout(1000)", "query_only(1)", "cell_size_check(1)"}, 2, false}
	// still reads the file alone, as it lies there, also where nothing can be written.
	still = pool{"deferred", "ro", []string{"query_only(1)"}, 1, true}
)

// dsn returns the address of the file at an absolute path. The path goes through url.URL because "#", "?" and "%" would
// otherwise end or change it.
func (p pool) dsn(path string) string {
	slashed := filepath.ToSlash(path)
	if !strings.HasPrefix(slashed, "/") {
		slashed = "/" + slashed // a drive letter
	}
	query := url.Values{"_pragma": p.pragmas, "_txlock": {p.lock}, "mode": {p.mode}}
	if p.immutable {
		query.Set("immutable", "1")
	}
	return (&url.URL{Scheme: "file", Path: slashed, RawQuery: query.Encode()}).String()
}

// open returns a pool of connections to the file at an absolute path, after one has answered.
func (p pool) open(ctx context.Context, path string) (*sql.DB, error) {
	db, err := sql.Open("sqlite", p.dsn(path))
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(p.connections)
	db.SetMaxIdleConns(p.connections)
	if err := db.PingContext(ctx); err != nil {
		db.Close()
		return nil, err
	}
	return db, nil
}
