package store

import (
	"context"
	"database/sql"
	"runtime"
	"sync"
)

// place is one transaction: where the SQL of a method works. It lives no longer than the method's call, whose context it carries.
type place struct {
	ctx context.Context
	tx  *sql.Tx
}

// exec runs one statement.
func (p place) exec(statement string, args ...any) error {
	_, err := p.tx.ExecContext(p.ctx, statement, args...)
	return err
}

// insert runs one statement and returns the id that its row was given.
func (p place) insert(statement string, args ...any) (int64, error) {
	done, err := p.tx.ExecContext(p.ctx, statement, args...)
	if err != nil {
		return 0, err
	}
	return done.LastInsertId()
}

// row returns the one row of a query.
func (p place) row(query string, args ...any) *sql.Row {
	return p.tx.QueryRowContext(p.ctx, query, args...)
}

// each calls scan on every row of a query.
func (p place) each(query string, scan func(rows *sql.Rows) error, args ...any) error {
	rows, err := p.tx.QueryContext(p.ctx, query, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	for rows.Next() {
		if err := scan(rows); err != nil {
			return err
		}
	}
	return rows.Err()
}

// query is a question to the file, and what is done by it, for an error.
type query struct{ doing, text string }

// collect returns what scan makes of every row of a query, read in one transaction.
func collect[T any](ctx context.Context, s *Store, q query, scan func(rows *sql.Rows) (T, error)) (items []T, err error) {
	err = s.read(ctx, q.doing, func(tx *sql.Tx) error {
		return place{ctx, tx}.each(q.text, func(rows *sql.Rows) error {
			item, err := scan(rows)
			items = append(items, item)
			return err
		})
	})
	if err != nil {
		return nil, err
	}
	return items, nil
}

// collectApart returns what decode makes of every row of a query, in the order of the rows. One goroutine reads them in one transaction,
// as many others as there are cores decode: long documents take longer to decode than to read.
func collectApart[R, T any](ctx context.Context, s *Store, q query, scan func(*sql.Rows) (R, error),
	decode func(R) (T, error)) (items []T, err error) {
	type made struct {
		item T
		err  error
	}
	var all []*made
	var busy sync.WaitGroup
	free := make(chan struct{}, runtime.GOMAXPROCS(0))
	_, err = collect(ctx, s, q, func(rows *sql.Rows) (struct{}, error) {
		row, err := scan(rows)
		if err != nil {
			return struct{}{}, err
		}
		m := new(made)
		all = append(all, m)
		free <- struct{}{}
		busy.Go(func() {
			m.item, m.err = decode(row)
			<-free
		})
		return struct{}{}, nil
	})
	busy.Wait()
	for _, m := range all {
		if err == nil && m.err != nil {
			err = wrapped(q.doing, m.err)
		}
		items = append(items, m.item)
	}
	if err != nil {
		return nil, err
	}
	return items, nil
}
