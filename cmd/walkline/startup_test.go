package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"testing"

	"walkline/cmd/wire"
	"walkline/store"
	"walkline/store/book"
)

// Rounds of starting each program, and lots in the store of the second measure.
const (
	rounds   = 7
	manyLots = 1000
)

// start is one start of a program: milliseconds until its window is painted, and the memory that it then holds.
type start struct{ ms, kb int }

// TestStartUpAndMemory prints how the window compares with an empty one of the same toolkit: time until it is painted, and
// memory, with no lot and with 1,000. It measures and judges nothing; .ci/bench-window runs it.
func TestStartUpAndMemory(t *testing.T) {
	if os.Getenv("WALKLINE_BENCH") == "" {
		t.Log("start-up is measured under a virtual display: make bench-window")
		return
	}
	full := filepath.Join(t.TempDir(), "full.db")
	fill(t, full)
	programs := []struct {
		name string
		args []string
	}{
		{"empty window of the toolkit (baseline)", []string{os.Getenv("WALKLINE_EMPTY")}},
		{"Walkline, no lot", []string{os.Getenv("WALKLINE_BIN"), "--store", filepath.Join(t.TempDir(), "none.db")}},
		{fmt.Sprintf("Walkline, %d lots", manyLots), []string{os.Getenv("WALKLINE_BIN"), "--store", full}},
	}
	measured := make([][]start, len(programs))
	for range rounds {
		for i, p := range programs { // in turn, so that a busy machine is busy for all
			measured[i] = append(measured[i], begin(t, p.args))
		}
	}
	base := middle(measured[0])
	fmt.Printf("%-40s %8s %6s %8s %6s\n", "", "painted", "ratio", "memory", "ratio")
	for i, p := range programs {
		m := middle(measured[i])
		fmt.Printf("%-40s %5d ms %6.2f %5d MB %6.2f\n", p.name, m.ms, float64(m.ms)/float64(base.ms), m.kb/1024, float64(m.kb)/float64(base.kb))
	}
}

// begin starts a program and measures it.
func begin(t *testing.T, args []string) (s start) {
	t.Helper()
	out, err := exec.Command("/usr/bin/python3", append([]string{"testdata/measure.py"}, args...)...).Output()
	if err != nil {
		t.Fatalf("%v: %v %s", args, err, out)
	}
	if _, err := fmt.Sscan(string(out), &s.ms, &s.kb); err != nil {
		t.Fatalf("%v printed %q", args, out)
	}
	return s
}

// middle returns the medians.
func middle(all []start) start {
	var ms, kb []int
	for _, s := range all {
		ms, kb = append(ms, s.ms), append(kb, s.kb)
	}
	slices.Sort(ms)
	slices.Sort(kb)
	return start{ms[len(ms)/2], kb[len(kb)/2]}
}

// fill keeps many lots in a new store.
func fill(t *testing.T, path string) {
	t.Helper()
	ctx := context.Background()
	s, err := store.Open(ctx, path)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	d, err := wire.NewDesk(s)
	if err != nil {
		t.Fatal(err)
	}
	demo, step := d.Demo(), book.Step{Subject: book.Board, Label: "many lots"}
	for i := range manyLots {
		c := demo[i%len(demo)]
		c.Lot.Number = fmt.Sprint(i + 1)
		step.New = append(step.New, book.New{Case: c})
	}
	if _, err := s.Do(ctx, step); err != nil {
		t.Fatal(err)
	}
}
