package store

import (
	"context"
	"database/sql"
)

// place is one lot inside one transaction: where the SQL of a method works. It lives no longer than the method's call,
// whose context it carries.
type place struct {
	ctx context.Context
	tx  *sql.Tx
	lot int64
}

// exec runs one statement.
func (p place) exec(statement string, args ...any) error {
	_, err := p.tx.ExecContext(p.ctx, statement, args...)
	return err
}

// row returns the one row of a query on the lot, whose id is the query's only argument.
func (p place) row(query string) *sql.Row { return p.tx.QueryRowContext(p.ctx, query, p.lot) }

// each calls scan on every row of a query on the lot, whose id is the query's only argument.
func (p place) each(query string, scan func(rows *sql.Rows) error) error {
	rows, err := p.tx.QueryContext(p.ctx, query, p.lot)
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
