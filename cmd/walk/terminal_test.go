package main

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

func TestControlCharactersOfACaseNeverReachTheTerminal(t *testing.T) {
	data, err := os.ReadFile(demo("front.json"))
	if err != nil {
		t.Fatal(err)
	}
	data = bytes.Replace(data, []byte(`"make": "`), []byte(`"make": "\u001b]0;owned\u0007\u009b31m\u007f`), 1)
	data = bytes.Replace(data, []byte(`"currency": "`), []byte(`"currency": "\u001b[2J`), 1)
	_, out, errs := ran("value", kept(t, "case.json", data))
	_, out2, errs2 := ran("\x1b[31mvalue")
	for _, text := range []string{out, errs, out2, errs2} {
		if strings.ContainsAny(text, "\x1b\a\x7f\u009b\r") {
			t.Errorf("%q", text)
		}
	}
	var b bytes.Buffer
	document := map[string]string{"make": "a\u0085\x7f\tb"}
	if err := json.NewEncoder(terminal{&b}).Encode(document); err != nil {
		t.Fatal(err)
	}
	var got map[string]string
	if err := json.Unmarshal(b.Bytes(), &got); err != nil || !maps.Equal(got, document) {
		t.Errorf("%q, %v", b.String(), err)
	}
}

// Reading for learning once brought an old file up to date and put a waiting backup in its place.
func TestReadingAShopChangesNothingBesideIt(t *testing.T) {
	path := shopStore(t)
	if err := os.WriteFile(path+".restore", []byte("a backup that waits"), 0o600); err != nil {
		t.Fatal(err)
	}
	before := filesOf(t, path)
	for _, args := range [][]string{{"tune", path, "--dry-run"}, {"replay", path}} {
		code, out, errs := ran(args...)
		if code != done || !strings.Contains(out, "A backup waits") {
			t.Errorf("%v: %d %s %s", args, code, out, errs)
		}
	}
	if after := filesOf(t, path); !maps.Equal(before, after) {
		t.Errorf("from %v to %v", slices.Sorted(maps.Keys(before)), slices.Sorted(maps.Keys(after)))
	}
}

// filesOf returns the files of a folder with what they hold.
func filesOf(t *testing.T, path string) map[string]string {
	t.Helper()
	all := map[string]string{}
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		data, err := os.ReadFile(filepath.Join(filepath.Dir(path), f.Name()))
		if err != nil {
			t.Fatal(err)
		}
		all[f.Name()] = string(data)
	}
	return all
}

// The edits in a write-ahead file whose file was moved away are spoken of, not passed over.
func TestALogWithoutItsFileIsExplained(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	if err := os.WriteFile(path+"-wal", []byte("edits"), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"tune", path, "--dry-run"}, {"replay", path}} {
		if code, _, errs := ran(args...); code != failed || !strings.Contains(errs, "put that back beside it") {
			t.Errorf("%v: %d %s", args, code, errs)
		}
	}
	os.Remove(path + "-wal")
	if code, _, errs := ran("replay", path); code != failed || !strings.Contains(errs, "there is no such file") {
		t.Errorf("%d %s", code, errs)
	}
}
