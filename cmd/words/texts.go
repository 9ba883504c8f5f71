package main

import (
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
)

// text is something that a user may read, and where it is written.
type text struct {
	path  string
	line  int
	words string
}

// shown are the folders whose texts a user may see; spoken are the keys of the catalogue's and the jurisdictions' texts.
var (
	shown  = []string{"ui", "valuation", "cmd/walk", "cmd/walkline", "cmd/wire", "store", "assets"}
	spoken = regexp.MustCompile(`^(text|look|name|job|why|note|where|caution|tools|words|title)$`)
	prose  = regexp.MustCompile(`[a-z][\p{L}'’-]*[,.:;?!]? \S`)
	// aliases are the words by which headings and cells of people's tables are known: read, never shown.
	aliases = regexp.MustCompile(`\|.*\|`)
)

// texts lists every text below root, file by file.
func texts(root string) ([]text, error) {
	var all []text
	for _, dir := range shown {
		err := filepath.WalkDir(filepath.Join(root, dir), func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			found, err := of(path)
			all = append(all, found...)
			return err
		})
		if err != nil {
			return nil, err
		}
	}
	return all, nil
}

// of lists the texts of one file.
func of(path string) ([]text, error) {
	switch {
	case strings.HasSuffix(path, ".go") && !strings.HasSuffix(path, "_test.go"):
		return ofGo(path)
	case strings.HasSuffix(path, ".json") && (strings.Contains(path, "catalogue") || strings.Contains(path, "jurisdictions")):
		return ofJSON(path)
	}
	return nil, nil
}

// ofGo lists the literals of a Go file, those that plus signs join as one.
func ofGo(path string) ([]text, error) {
	set := token.NewFileSet()
	file, err := parser.ParseFile(set, path, nil, parser.SkipObjectResolution)
	if err != nil {
		return nil, err
	}
	var out []text
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec, *ast.Field: // paths and tags
			return false
		case *ast.BinaryExpr, *ast.BasicLit:
			words, whole := joined(n.(ast.Expr))
			if whole && prose.MatchString(words) && !aliases.MatchString(words) {
				out = append(out, text{path, set.Position(n.Pos()).Line, words})
			}
			return !whole
		}
		return true
	})
	return out, nil
}

// joined returns what an expression of literals and plus signs says; false where anything else is in it.
func joined(e ast.Expr) (string, bool) {
	switch e := e.(type) {
	case *ast.BasicLit:
		words, err := strconv.Unquote(e.Value)
		return words, e.Kind == token.STRING && err == nil
	case *ast.BinaryExpr:
		left, ok := joined(e.X)
		right, also := joined(e.Y)
		return left + right, ok && also && e.Op == token.ADD
	}
	return "", false
}

// ofJSON lists the texts of a catalogue or a jurisdiction.
func ofJSON(path string) ([]text, error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	d := json.NewDecoder(strings.NewReader(string(data)))
	var out []text
	key := ""
	for {
		t, err := d.Token()
		if err != nil {
			break
		}
		words, ok := t.(string)
		if ok && spoken.MatchString(key) {
			out = append(out, text{path, 1 + strings.Count(string(data[:d.InputOffset()]), "\n"), words})
		}
		key = words
	}
	return out, nil
}
