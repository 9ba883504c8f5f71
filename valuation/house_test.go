package valuation_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// The rules of the house, held over every file of the module. They are policy: when one fails, change the code, not the
// rule. Each rule is shown able to fail on the small broken sources in house_samples_test.go.

// source is one file of the module. Only Go files have a syntax tree.
type source struct {
	path string // from the module's root, with slashes
	text string
	fset *token.FileSet
	tree *ast.File
}

func (s source) dir() string      { return path.Dir(s.path) }
func (s source) isGo() bool       { return s.tree != nil }
func (s source) isTest() bool     { return strings.HasSuffix(s.path, "_test.go") }
func (s source) shipsGo() bool    { return s.isGo() && !s.isTest() }
func (s source) in(d string) bool { return within(s.dir(), d) }

func (s source) line(at token.Pos) int { return s.fset.Position(at).Line }

// imports gives the path behind each name that the file imports.
func (s source) imports() map[string]string {
	byName := map[string]string{}
	for _, spec := range s.tree.Imports {
		imported := strings.Trim(spec.Path.Value, `"`)
		name := path.Base(imported)
		if version := strings.TrimPrefix(name, "v"); version != name && strings.Trim(version, "0123456789") == "" {
			name = path.Base(path.Dir(imported))
		}
		if spec.Name != nil {
			name = spec.Name.Name
		}
		if name == "_" || name == "." {
			name += imported
		}
		byName[name] = imported
	}
	return byName
}

// within says whether a path is the folder or lies below it.
func within(p, folder string) bool { return p == folder || strings.HasPrefix(p, folder+"/") }

func parsed(t *testing.T, name, text string) source {
	t.Helper()
	s := source{path: name, text: text}
	if !strings.HasSuffix(name, ".go") {
		return s
	}
	s.fset = token.NewFileSet()
	tree, err := parser.ParseFile(s.fset, name, text, parser.ParseComments)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	s.tree = tree
	return s
}

// moduleRoot is the nearest folder above the test that holds go.mod.
func moduleRoot(t *testing.T) string {
	t.Helper()
	folder, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(folder, "go.mod")); err == nil {
			return folder
		}
		parent := filepath.Dir(folder)
		if parent == folder {
			t.Fatal("no go.mod above the test")
		}
		folder = parent
	}
}

// module reads every text file of the module but what git ignores (bin, pictures, and what fuzzing leaves).
func module(t *testing.T) []source {
	t.Helper()
	root := moduleRoot(t)
	var all []source
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.Name() == ".git" && !entry.IsDir() { // in a linked working tree it is a file
			return nil
		}
		if entry.IsDir() {
			if slices.Contains([]string{".git", "bin", "pictures"}, entry.Name()) {
				return fs.SkipDir
			}
			return nil
		}
		text, err := os.ReadFile(name)
		if err != nil || strings.ContainsRune(string(text), 0) {
			return err
		}
		relative, err := filepath.Rel(root, name)
		all = append(all, parsed(t, filepath.ToSlash(relative), string(text)))
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// knownGaps are faults that stand for now, word for word, each with its reason. One that is gone must leave the list.
var knownGaps = map[string]string{}

func TestHouse(t *testing.T) {
	files := module(t)
	seen := map[string]bool{}
	for _, r := range rules {
		t.Run(r.name, func(t *testing.T) {
			for _, fault := range r.faults(files) {
				seen[fault] = true
				if _, known := knownGaps[fault]; !known {
					t.Error(fault)
				}
			}
		})
	}
	for gap := range knownGaps {
		if !seen[gap] {
			t.Errorf("no longer a gap, take it off the list: %s", gap)
		}
	}
}

// TestHouseCanFail shows that each rule finds what it is there for, and lets the allowed neighbor pass.
func TestHouseCanFail(t *testing.T) {
	for _, r := range rules {
		t.Run(r.name, func(t *testing.T) {
			if len(broken[r.name]) == 0 {
				t.Fatal("no broken source shows that this rule can fail")
			}
			for _, sample := range broken[r.name] {
				if r.faults([]source{parsed(t, sample.path, sample.text)}) == nil {
					t.Errorf("no fault found in %s:\n%s", sample.path, sample.text)
				}
			}
			for _, sample := range sound[r.name] {
				if faults := r.faults([]source{parsed(t, sample.path, sample.text)}); faults != nil {
					t.Errorf("fault found in a sound %s: %v", sample.path, faults)
				}
			}
		})
	}
}
