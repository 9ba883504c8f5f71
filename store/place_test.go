package store

import (
	"database/sql"
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"time"
)

// numbers are the numbers 0 to 499, as a query.
var numbers = query{"reading the numbers",
	`WITH RECURSIVE n(i) AS (VALUES (0) UNION ALL SELECT i + 1 FROM n WHERE i < 499) SELECT i FROM n`}

func scanNumber(rows *sql.Rows) (n int, err error) { return n, rows.Scan(&n) }

// Builds are decoded by several goroutines at once, the first rows slower than the later ones; the list is in the order of the rows.
func TestRowsOfBuildsReadApartStayInOrder(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(4))
	list, err := collectApart(t.Context(), opened(t), numbers, scanNumber, func(n int) (string, error) {
		if n%50 == 0 {
			time.Sleep(2 * time.Millisecond)
		}
		return fmt.Sprint(n), nil
	})
	if err != nil || len(list) != 500 {
		t.Fatalf("%d, %v", len(list), err)
	}
	for i, said := range list {
		if said != fmt.Sprint(i) {
			t.Fatalf("row %d is %q", i, said)
		}
	}
}

func TestAFaultInOneOfTheBuildsReadApartIsSaid(t *testing.T) {
	fault := errors.New("this one cannot be read")
	list, err := collectApart(t.Context(), opened(t), numbers, scanNumber, func(n int) (int, error) {
		if n == 37 || n == 400 {
			return 0, fmt.Errorf("%d: %w", n, fault)
		}
		return n, nil
	})
	if list != nil || !errors.Is(err, fault) || !strings.Contains(err.Error(), "37") || !strings.Contains(err.Error(), numbers.doing) {
		t.Errorf("%d rows, %v", len(list), err)
	}
	list, err = collectApart(t.Context(), opened(t), numbers, func(*sql.Rows) (int, error) { return 0, fault },
		func(n int) (int, error) { return n, nil })
	if list != nil || !errors.Is(err, fault) {
		t.Errorf("%d rows, %v", len(list), err)
	}
}
