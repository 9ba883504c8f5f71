package valuation_test

import (
	"fmt"
	"go/ast"
	"go/token"
	"path"
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"
)

// rule names one rule of the house and finds the faults against it.
type rule struct {
	name   string
	faults func([]source) []string
}

var rules = []rule{
	{"floors of valuation", each(floorFaults)},
	{"valuation is pure", each(purityFaults)},
	{"gonum only in prob", each(gonumFaults)},
	{"ui knows neither app nor store", each(uiImportFaults)},
	{"goroutines and fyne.Do only in ui/task", each(threadFaults)},
	{"no Fyne in desk, view, damage, sheet and photo", each(deskFaults)},
	{"pages stand alone", each(pageFaults)},
	{"buttons are our own", each(buttonFaults)},
	{"every package has its comment", packageCommentFaults},
	{"sizes", each(sizeFaults)},
	{"no path of a machine", each(machinePathFaults)},
	{"nothing left for later", each(leftoverFaults)},
}

// each makes a rule of what is checked file by file.
func each(check func(source) []string) func([]source) []string {
	return func(files []source) []string {
		var faults []string
		for _, s := range files {
			faults = append(faults, check(s)...)
		}
		return faults
	}
}

// floorOf orders the packages of valuation: each imports lower floors only, never its own, never its parent.
var floorOf = map[string]int{
	"valuation/money": 0, "valuation/prob": 0, "valuation/memory": 0,
	"valuation/lot": 1, "valuation/invoice": 1, "valuation/hedonic": 1, "valuation/belief": 1, "valuation/score": 1,
	"valuation/resale": 2, "valuation/repair": 2, "valuation/hidden": 2, "valuation/build": 2, "valuation/sale": 2, "valuation/hammer": 2,
	"valuation/donor":    2,
	"valuation/patterns": 2,
	"valuation/scenario": 3, "valuation/learn": 3,
	"valuation/bid": 4, "valuation/hindsight": 4, "valuation/ways": 4,
	"valuation/checks": 5,
	"valuation":        6,
}

func floorFaults(s source) []string {
	if !s.shipsGo() || !s.in("valuation") {
		return nil
	}
	own, known := floorOf[s.dir()]
	if !known {
		return []string{s.path + ": package " + s.dir() + " has no floor"}
	}
	var faults []string
	for _, imported := range s.imports() {
		local, ours := strings.CutPrefix(imported, "walkline/")
		if !ours {
			continue
		}
		if floor, known := floorOf[local]; !known || floor >= own {
			faults = append(faults, s.path+": imports "+local+", which is no lower floor")
		}
	}
	return faults
}

// impure are the packages that reach outside the program, or draw without a seed. A folder stands for all below it.
var impure = []string{"os", "io/fs", "io/ioutil", "net", "log", "syscall", "flag", "path/filepath", "math/rand",
	"crypto/rand", "database/sql", "modernc.org", "fyne.io", "golang.org/x/sys"}

// refusedOf names what may not be used of a package otherwise allowed: what reads a clock, draws without a seed or writes to a terminal.
var refusedOf = map[string]*regexp.Regexp{
	"time":         regexp.MustCompile(`^(Now|Since|Until|Sleep|After|AfterFunc|Tick|NewTimer|NewTicker|Local)$`),
	"math/rand/v2": regexp.MustCompile(`^(Int|Uint|Float|Norm|Exp|Perm|Shuffle|N$)`),
	"fmt":          regexp.MustCompile(`^(Print|Scan)`),
}

func purityFaults(s source) []string {
	if !s.shipsGo() || !s.in("valuation") {
		return nil
	}
	var faults []string
	for name, imported := range s.imports() {
		if imported != "math/rand/v2" && slices.ContainsFunc(impure, func(p string) bool { return within(imported, p) }) {
			faults = append(faults, s.path+": imports "+imported)
		}
		if strings.HasPrefix(name, ".") {
			faults = append(faults, s.path+": imports "+imported+" by a dot")
		}
	}
	for use := range uses(s) {
		if refused := refusedOf[use.imported]; refused != nil && refused.MatchString(use.name) {
			faults = append(faults, fmt.Sprintf("%s:%d: uses %s.%s", s.path, s.line(use.at), use.imported, use.name))
		}
	}
	return faults
}

// use is one mention of an imported package's name.
type use struct {
	imported, name string
	at             token.Pos
}

// uses yields every mention of an imported name in the file. A local variable that hides an import is left out.
func uses(s source) func(yield func(use) bool) {
	imports := s.imports()
	return func(yield func(use) bool) {
		for node := range ast.Preorder(s.tree) {
			selector, ok := node.(*ast.SelectorExpr)
			if !ok {
				continue
			}
			name, ok := selector.X.(*ast.Ident)
			if !ok || name.Obj != nil || imports[name.Name] == "" {
				continue
			}
			if !yield(use{imports[name.Name], selector.Sel.Name, selector.Pos()}) {
				return
			}
		}
	}
}

// importFaults lists the imports of a file that lie at or below one of the folders.
func importFaults(s source, folders ...string) []string {
	var faults []string
	for _, imported := range s.imports() {
		if slices.ContainsFunc(folders, func(f string) bool { return within(imported, f) }) {
			faults = append(faults, s.path+": imports "+imported)
		}
	}
	return faults
}

func gonumFaults(s source) []string {
	if !s.isGo() || s.in("valuation/prob") {
		return nil
	}
	return importFaults(s, "gonum.org")
}

// uiImportFaults lets shipped code of ui know of store only its plain data; its tests run over the real store.
func uiImportFaults(s source) []string {
	if !s.isGo() || !s.in("ui") {
		return nil
	}
	faults := importFaults(s, "fyne.io/fyne/v2/app", "database/sql", "modernc.org")
	for _, imported := range s.imports() {
		if s.shipsGo() && imported != "walkline/store/book" && (within(imported, "walkline/store") || within(imported, "walkline/cmd")) {
			faults = append(faults, s.path+": imports "+imported)
		}
	}
	return faults
}

func threadFaults(s source) []string {
	if !s.shipsGo() || s.in("ui/task") {
		return nil
	}
	var faults []string
	for node := range ast.Preorder(s.tree) {
		if started, ok := node.(*ast.GoStmt); ok {
			faults = append(faults, fmt.Sprintf("%s:%d: starts a goroutine", s.path, s.line(started.Pos())))
		}
	}
	for use := range uses(s) {
		if use.imported == "fyne.io/fyne/v2" && strings.HasPrefix(use.name, "Do") {
			faults = append(faults, fmt.Sprintf("%s:%d: uses fyne.%s", s.path, s.line(use.at), use.name))
		}
	}
	return faults
}

// windowless are the packages of ui that know no window, so that the terminal side can use them too.
var windowless = []string{"ui/desk", "ui/view", "ui/damage", "ui/sheet", "ui/photo"}

func deskFaults(s source) []string {
	if !s.isGo() || !slices.ContainsFunc(windowless, s.in) {
		return nil
	}
	return importFaults(s, "fyne.io")
}

// spaceOnly are makers of buttons that Enter doesn't press.
var spaceOnly = map[string][]string{
	"fyne.io/fyne/v2/widget": {"Button", "NewButton", "NewButtonWithIcon"},
	"fyne.io/fyne/v2/dialog": {"NewConfirm", "NewCustom", "NewCustomConfirm", "NewForm", "NewInformation", "NewError",
		"ShowConfirm", "ShowCustom", "ShowCustomConfirm", "ShowForm", "ShowInformation", "ShowError",
		"NewFileOpen", "NewFileSave", "NewFolderOpen", "ShowFileOpen", "ShowFileSave", "ShowFolderOpen"},
}

func buttonFaults(s source) []string {
	if !s.shipsGo() || s.dir() == "ui/widgets" {
		return nil
	}
	var faults []string
	for use := range uses(s) {
		if slices.Contains(spaceOnly[use.imported], use.name) {
			faults = append(faults, fmt.Sprintf("%s:%d: Enter doesn't press the button of %s", s.path, s.line(use.at), use.name))
		}
	}
	return faults
}

var pages = []string{"ui/board", "ui/listing", "ui/worksheet", "ui/live", "ui/builds", "ui/record", "ui/bench"}

func pageFaults(s source) []string {
	if !s.isGo() {
		return nil
	}
	var others []string
	own := false
	for _, page := range pages {
		if s.in(page) {
			own = true
		} else {
			others = append(others, "walkline/"+page)
		}
	}
	if !own {
		return nil
	}
	return importFaults(s, others...)
}

// packageCommentFaults lists the packages none of whose files has a comment that opens as Go's do.
func packageCommentFaults(files []source) []string {
	commented := map[string]bool{}
	for _, s := range files {
		if !s.shipsGo() {
			continue
		}
		opening := "Package " + s.tree.Name.Name + " "
		if s.tree.Name.Name == "main" {
			opening = "Command " + path.Base(s.dir()) + " "
		}
		commented[s.dir()] = commented[s.dir()] || strings.HasPrefix(s.tree.Doc.Text(), opening)
	}
	var faults []string
	for dir, has := range commented {
		if !has {
			faults = append(faults, dir+": no package comment (\"Package NAME ...\", \"Command NAME ...\" for a program)")
		}
	}
	return faults
}

const (
	longestFile     = 400 // lines
	longestFunction = 60  // lines, from func to its closing brace
	widestLine      = 140 // characters
)

func sizeFaults(s source) []string {
	if !s.isGo() {
		return nil
	}
	var faults []string
	if strings.Count(s.text, "\n") > longestFile {
		faults = append(faults, fmt.Sprintf("%s: longer than %d lines", s.path, longestFile))
	}
	for number, line := range strings.Split(s.text, "\n") {
		if utf8.RuneCountInString(line) > widestLine {
			faults = append(faults, fmt.Sprintf("%s:%d: wider than %d characters", s.path, number+1, widestLine))
		}
	}
	for _, declared := range s.tree.Decls {
		function, ok := declared.(*ast.FuncDecl)
		if ok && s.line(function.End())-s.line(function.Pos())+1 > longestFunction {
			faults = append(faults, fmt.Sprintf("%s: func %s is longer than %d lines", s.path, function.Name.Name, longestFunction))
		}
	}
	return faults
}

// machinePath finds a path that only one machine has: somebody's home, or a folder at the root that no system brings.
var machinePath = regexp.MustCompile(`(?m)(^|[^\w./~-])/(home|root|work|Users|private)/\w[^\s"']*|[A-Z]:\\Users\\`)

func machinePathFaults(s source) []string { return lineFaults(s, machinePath) }

// leftover finds the marks that stand for work put off.
var leftover = regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME)\b`)

func leftoverFaults(s source) []string { return lineFaults(s, leftover) }

func lineFaults(s source, pattern *regexp.Regexp) []string {
	var faults []string
	for number, line := range strings.Split(s.text, "\n") {
		if found := pattern.FindString(line); found != "" {
			faults = append(faults, fmt.Sprintf("%s:%d: %q", s.path, number+1, strings.TrimSpace(found)))
		}
	}
	return faults
}
