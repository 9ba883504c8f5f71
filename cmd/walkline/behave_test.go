package main

import (
	"context"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"
)

// ended runs the program until it ends, with variables of its own, and returns its exit code and what it wrote to stderr. No program
// that shows messages is on its path: nobody is there to close one.
func ended(t *testing.T, store string, env ...string) (code int, errs string) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, os.Getenv("WALKLINE_BIN"), "--store", store)
	var said strings.Builder
	cmd.Stderr = &said
	cmd.Env = append(append(os.Environ(), "PATH=/nowhere", "XDG_DATA_HOME="+filepath.Dir(store)), env...)
	err := cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		t.Fatal(err)
	}
	return cmd.ProcessState.ExitCode(), said.String()
}

// TestBehavesWithoutAWindow: with no display, one that is not there, and a driver that gives no OpenGL, the program says so and ends
// with 3; with no folder of the user's, with 1. It leaves the lots alone.
func TestBehavesWithoutAWindow(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	for _, c := range []struct {
		env, says string
		code      int
	}{
		{"DISPLAY=", "there is no display", noWindow}, {"DISPLAY=:7653", "the display cannot be opened", noWindow},
		{"LIBGL_DRIVERS_PATH=/nowhere", "the graphics driver gives no OpenGL 2.1", noWindow},
		{"XDG_DATA_HOME=/proc/nowhere", "the data folder can't be made", failed},
	} {
		store := filepath.Join(t.TempDir(), "lots.db")
		code, errs := ended(t, store, c.env)
		if code != c.code || !strings.Contains(errs, "walkline: "+c.says) {
			t.Errorf("%s: exit %d, %q", c.env, code, errs)
		}
		if found, _ := filepath.Glob(store + "*"); len(found) > 0 {
			t.Errorf("%s: the lots were touched: %q", c.env, found)
		}
	}
}

// TestBehavesOnSignals sends each signal that asks a program to end while a field has the keyboard: it ends by itself, says nothing on
// stderr under a locale that names no language, and what was typed is kept. TORTURE says how often; without it each signal comes once.
func TestBehavesOnSignals(t *testing.T) {
	if os.Getenv("WALKLINE_E2E") == "" {
		t.Log("the window test runs under a virtual display: .ci/e2e")
		return
	}
	t.Setenv("LANG", "C.UTF-8")
	signals := []syscall.Signal{syscall.SIGHUP, syscall.SIGTERM, syscall.SIGINT}
	rounds, survived := len(signals), 0
	if asked, err := strconv.Atoi(os.Getenv("TORTURE")); err == nil {
		rounds = asked
	}
	for round := range rounds {
		signal := signals[round%len(signals)]
		s := newScreen(t, "lots.db")
		var said strings.Builder
		s.errs = &said
		s.start()
		s.keys("ctrl+n", "ctrl+1")
		s.typed("2016")
		if err := s.running.Process.Signal(signal); err != nil {
			t.Fatal(err)
		}
		if err := s.running.Wait(); err != nil || said.Len() > 0 {
			t.Errorf("%v: %v, said %q", signal, err, said.String())
		}
		if year := s.lotCase().Lot.ModelYear; year != 2016 {
			t.Errorf("%v: the model year is %v", signal, year)
		} else {
			survived++
		}
	}
	t.Logf("signal after a key      survived %d of %d", survived, rounds)
}
