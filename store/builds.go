package store

import (
	"bytes"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"

	"walkline/valuation/build"
)

// buildChange is all that differs between two builds, both ways.
type buildChange struct {
	Head     swap                  `json:"head"`
	Charges  splice[build.Charge]  `json:"charges"`
	Receipts splice[build.Receipt] `json:"receipts"`
	Hours    splice[build.Work]    `json:"hours"`
	Risks    splice[build.Seen]    `json:"risks"`
	Done     splice[string]        `json:"done"`
}

// head returns what of a build is no list, as a document.
func head(b build.Build) (json.RawMessage, error) {
	b.Charges, b.Receipts, b.Hours, b.Risks, b.Done = nil, nil, nil, nil, nil
	text, err := json.Marshal(b)
	if err != nil {
		return nil, fmt.Errorf("%w: a judgement of the build (%w)", ErrRefused, err)
	}
	return text, nil
}

// buildDifference returns what turns a into b. Errors: [ErrRefused] when b holds a number that can't be kept.
func buildDifference(a, b build.Build) (buildChange, error) {
	if !keepable(b) {
		return buildChange{}, fmt.Errorf("%w: hours of one entry must lie between 0 and %d", ErrRefused, maxHours)
	}
	before, err := head(a)
	if err != nil {
		return buildChange{}, err
	}
	after, err := head(b)
	if err != nil {
		return buildChange{}, err
	}
	return buildChange{Head: swap{before, after}, Charges: spliceOf(a.Charges, b.Charges, alike), Receipts: spliceOf(a.Receipts, b.Receipts, alike),
		Hours: spliceOf(a.Hours, b.Hours, alike), Risks: spliceOf(a.Risks, b.Risks, alike), Done: spliceOf(a.Done, b.Done, alike)}, nil
}

func (c buildChange) empty() bool {
	return bytes.Equal(c.Head.Before, c.Head.After) && c.Charges.empty() && c.Receipts.empty() && c.Hours.empty() && c.Risks.empty() && c.Done.empty()
}

// inverse returns the change that takes c back.
func (c buildChange) inverse() buildChange {
	return buildChange{swap{c.Head.After, c.Head.Before}, c.Charges.inverse(), c.Receipts.inverse(), c.Hours.inverse(), c.Risks.inverse(), c.Done.inverse()}
}

// apply returns a with c done to it; a is left alone. Errors: [ErrDamaged] when the history does not fit a.
func (c buildChange) apply(a build.Build) (b build.Build, err error) {
	if err := decode("build", c.Head.After, &b); err != nil {
		return b, err
	}
	var problems [5]error
	b.Charges, problems[0] = c.Charges.apply(a.Charges)
	b.Receipts, problems[1] = c.Receipts.apply(a.Receipts)
	b.Hours, problems[2] = c.Hours.apply(a.Hours)
	b.Risks, problems[3] = c.Risks.apply(a.Risks)
	b.Done, problems[4] = c.Done.apply(a.Done)
	for _, err := range problems {
		if err != nil {
			return b, err
		}
	}
	return b, nil
}

// write writes what c alters; b is the build after it.
func (c buildChange) write(p place, b build.Build) error {
	if err := writeHead(p, b); err != nil {
		return err
	}
	if err := c.Charges.write(p, chargeList.table, chargeList.insert); err != nil {
		return err
	}
	if err := c.Receipts.write(p, receiptList.table, receiptList.insert); err != nil {
		return err
	}
	if err := c.Hours.write(p, hoursList.table, hoursList.insert); err != nil {
		return err
	}
	if err := c.Risks.write(p, riskList.table, riskList.insert); err != nil {
		return err
	}
	return c.Done.write(p, doneList.table, doneList.insert)
}

// loadBuild reads what came of a lot; the zero build when nothing was entered. Errors: there is no such lot.
func loadBuild(p place) (b build.Build, err error) {
	var there int
	if err := p.row(`SELECT 1 FROM lots WHERE id = ? AND removed_at IS NULL`).Scan(&there); err != nil {
		return b, err
	}
	err = p.each(`SELECT `+headColumns+` FROM builds b WHERE b.lot = ?`, func(rows *sql.Rows) error {
		_, b, err = scanHead(rows)
		return err
	})
	for _, l := range listings {
		if err == nil {
			err = l.read(p.ctx, p.tx, oneLot(p.lot), func(int64) *build.Build { return &b })
		}
	}
	return b, err
}

// Build returns what came of a lot, empty when nothing was entered. Errors: [ErrNotFound].
func (s *Store) Build(ctx context.Context, id int64) (b build.Build, err error) {
	err = s.read(ctx, fmt.Sprintf("reading what came of lot %d", id), func(tx *sql.Tx) error {
		b, err = loadBuild(place{ctx, tx, id})
		return err
	})
	return b, err
}

// SaveBuild writes what came of a lot, and only what differs, with a step of the lot's history that label names.
// Errors: as [Store.Save].
func (s *Store) SaveBuild(ctx context.Context, id int64, label string, b build.Build) error {
	return s.write(ctx, fmt.Sprintf("saving what came of lot %d", id), func(tx *sql.Tx) error {
		p := place{ctx, tx, id}
		stored, err := loadBuild(p)
		if err != nil {
			return err
		}
		ch, err := buildDifference(stored, b)
		if err != nil || ch.empty() {
			return err
		}
		if err := s.remember(p, label, change{Build: &ch}); err != nil {
			return err
		}
		return ch.write(p, b)
	})
}

// stepBuild does a change of history to what came of a lot, and returns it as it stands then.
func (s *Store) stepBuild(p place, ch *buildChange) (build.Build, error) {
	stored, err := loadBuild(p)
	if err != nil || ch == nil {
		return stored, err
	}
	after, err := ch.apply(stored)
	if err != nil {
		return after, err
	}
	return after, ch.write(p, after)
}
