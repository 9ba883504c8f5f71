package main

import (
	"path/filepath"
	"strings"
	"testing"
)

func TestOptions(t *testing.T) {
	here, missing := "main.go", filepath.Join(t.TempDir(), "none.db")
	for _, c := range []struct {
		args  []string
		store string
		says  string // of the words, or of the error
	}{
		{nil, "", ""}, {[]string{here}, here, ""}, {[]string{"--store", missing}, missing, ""}, {[]string{"-store", missing}, missing, ""},
		{[]string{"--store=" + missing}, missing, ""}, {[]string{"--help"}, "", "walkline FILE"}, {[]string{"help"}, "", "walkline FILE"},
		{[]string{"--version"}, "", "walkline unstamped (walkline-engine/"}, {[]string{here, "--version"}, "", "walkline unstamped"},
		{[]string{missing}, "", "there is no file " + missing}, {[]string{"--fast"}, "", "no option --fast"},
		{[]string{"--store"}, "", "wants a file"}, {[]string{here, here}, here, "one file at a time"},
	} {
		o, err := readOptions(c.args)
		says := o.words
		if err != nil {
			says = err.Error()
		}
		if o.store != c.store || !strings.Contains(says, c.says) || (c.says == "") != (says == "") {
			t.Errorf("%q: %+v, %v", c.args, o, err)
		}
	}
}

func TestCallsThatOpenNoWindow(t *testing.T) {
	for args, want := range map[string]int{"--version": done, "--help": done, "help": done, "--fast": faulty} {
		var out, errs strings.Builder
		if code := execute([]string{args}, &out, &errs); code != want || (out.Len() > 0) != (want == done) || (errs.Len() > 0) == (want == done) {
			t.Errorf("%s: exit %d, %q, %q", args, code, out.String(), errs.String())
		}
	}
}
