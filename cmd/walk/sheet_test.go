package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestSheetWritesAFile(t *testing.T) {
	dir := t.TempDir()
	var files [][]byte
	for _, name := range []string{"one.pdf", "two.pdf"} {
		path := filepath.Join(dir, name)
		code, out, errs := ran("sheet", demo("front.json"), "-o", path, "--date", "2026-11-25")
		if code != done || errs != "" || !strings.Contains(out, path) {
			t.Fatalf("exit %d, %q, %q", code, out, errs)
		}
		data, err := os.ReadFile(path)
		if err != nil || !bytes.HasPrefix(data, []byte("%PDF-")) {
			t.Fatalf("%v, %.20q", err, data)
		}
		files = append(files, data)
	}
	if !bytes.Equal(files[0], files[1]) {
		t.Error("the same case and date give two different files")
	}
}

func TestSheetCalls(t *testing.T) {
	out := filepath.Join(t.TempDir(), "s.pdf")
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"sheet"}, faulty, "which case, and where to?"},
		{[]string{"sheet", demo("front.json")}, faulty, "which case, and where to?"},
		{[]string{"sheet", demo("front.json"), "-o"}, faulty, "-o wants a value"},
		{[]string{"sheet", demo("front.json"), "-o", out, "--paper", "foolscap"}, faulty, `no paper "foolscap"; there are a4 and letter`},
		{[]string{"sheet", demo("front.json"), "-o", out, "--date", "tomorrow"}, faulty, `"tomorrow", is no date like 2026-11-28`},
		{[]string{"sheet", demo("front.json"), "-o", out, "--ink", "red"}, faulty, "no option --ink"},
		{[]string{"sheet", "a.json", "b.json", "-o", out}, faulty, "one case at a time"},
		{[]string{"sheet", filepath.Join(t.TempDir(), "none.json"), "-o", out}, failed, "walk sheet: reading the case"},
		{[]string{"sheet", demo("front.json"), "-o", filepath.Join(out, "below")}, failed, "writing the sheet"},
	} {
		if code, wrote, errs := ran(c.args...); code != c.code || !strings.Contains(errs, c.says) || wrote != "" {
			t.Errorf("walk %v: exit %d, want %d; wrote %q and %q, want %q", c.args, code, c.code, wrote, errs, c.says)
		}
	}
}
