package valuation_test

import "strings"

// sample is a small source, as if it stood at the path.
type sample struct{ path, text string }

// importing is a file of the folder that imports one package.
func importing(file, imported string) sample {
	return sample{file, "package x\n\nimport _ \"" + imported + "\"\n"}
}

// calling is a file that imports one package and evaluates one expression.
func calling(file, imported, expression string) sample {
	return sample{file, "package x\n\nimport \"" + imported + "\"\n\nvar _ = " + expression + "\n"}
}

// broken holds, by rule, sources that the rule must find at fault.
var broken = map[string][]sample{
	"floors of valuation": {
		importing("valuation/money/a.go", "walkline/valuation/lot"),
		importing("valuation/money/a.go", "walkline/valuation/prob"),
		importing("valuation/invoice/a.go", "walkline/valuation/lot"),
		importing("valuation/scenario/a.go", "walkline/valuation/bid"),
		importing("valuation/bid/a.go", "walkline/valuation"),
		importing("valuation/bid/a.go", "walkline/store"),
		importing("valuation/a.go", "walkline/ui/view"),
		{"valuation/helpers/a.go", "package helpers\n"},
	},
	"valuation is pure": {
		importing("valuation/lot/a.go", "os"),
		importing("valuation/lot/a.go", "os/exec"),
		importing("valuation/lot/a.go", "io/fs"),
		importing("valuation/lot/a.go", "net/http"),
		importing("valuation/lot/a.go", "log"),
		importing("valuation/lot/a.go", "log/slog"),
		importing("valuation/lot/a.go", "database/sql"),
		importing("valuation/lot/a.go", "modernc.org/sqlite"),
		importing("valuation/lot/a.go", "fyne.io/fyne/v2"),
		importing("valuation/prob/a.go", "math/rand"),
		importing("valuation/prob/a.go", "crypto/rand"),
		calling("valuation/prob/a.go", "math/rand/v2", "rand.Float64()"),
		calling("valuation/prob/a.go", "math/rand/v2", "rand.N(3)"),
		calling("valuation/lot/a.go", "time", "time.Now()"),
		calling("valuation/a.go", "time", "time.Since"),
		calling("valuation/a.go", "fmt", "fmt.Println"),
		{"valuation/a.go", "package x\n\nimport clock \"time\"\n\nvar _ = clock.Now\n"},
		{"valuation/a.go", "package x\n\nimport . \"time\"\n\nvar _ = Now\n"},
	},
	"gonum only in prob": {
		importing("valuation/resale/a.go", "gonum.org/v1/gonum/mat"),
		importing("ui/view/a_test.go", "gonum.org/v1/gonum/stat/distuv"),
	},
	"ui knows neither app nor store": {
		importing("ui/a.go", "fyne.io/fyne/v2/app"),
		importing("ui/board/a.go", "walkline/store"),
		importing("ui/board/a.go", "walkline/store/csvfile"),
		importing("ui/desk/a.go", "walkline/store/bookkeeping"),
		importing("ui/desk/a.go", "walkline/cmd/wire"),
		importing("ui/desk/a.go", "database/sql"),
		importing("ui/desk/a_test.go", "modernc.org/sqlite"),
	},
	"goroutines and fyne.Do only in ui/task": {
		{"ui/board/a.go", "package x\n\nfunc f() { go f() }\n"},
		{"valuation/bid/a.go", "package x\n\nfunc f() { go func() {}() }\n"},
		calling("ui/worksheet/a.go", "fyne.io/fyne/v2", "fyne.Do"),
		calling("ui/worksheet/a.go", "fyne.io/fyne/v2", "fyne.DoAndWait"),
	},
	"no Fyne in desk, view, damage, sheet and photo": {
		importing("ui/desk/a.go", "fyne.io/fyne/v2"),
		importing("ui/view/a.go", "fyne.io/fyne/v2/theme"),
		importing("ui/damage/a.go", "fyne.io/fyne/v2"),
		importing("ui/sheet/a.go", "fyne.io/fyne/v2/theme"),
		importing("ui/photo/a.go", "fyne.io/fyne/v2/canvas"),
	},
	"pages stand alone": {
		importing("ui/board/a.go", "walkline/ui/worksheet"),
		importing("ui/bench/a_test.go", "walkline/ui/record"),
	},
	"buttons are our own": {
		calling("ui/board/a.go", "fyne.io/fyne/v2/widget", "widget.NewButton(words, nil)"),
		calling("ui/a.go", "fyne.io/fyne/v2/dialog", "dialog.NewConfirm(words, words, nil, nil)"),
	},
	"every package has its comment": {
		{"store/a.go", "package store\n"},
		{"store/a.go", "// Here be rows.\npackage store\n"},
		{"cmd/walk/a.go", "package main\n"},
	},
	"sizes": {
		{"store/a.go", "package store\n" + strings.Repeat("\n", longestFile)},
		{"store/a.go", "package store\n\nfunc f() {\n" + strings.Repeat("\tf()\n", longestFunction-1) + "}\n"},
		{"store/a.go", "package store\n\n// " + strings.Repeat("a", widestLine-2) + "\n"},
	},
	"no path of a machine": {
		{"store/a.go", "package store\n\nconst file = \"/ho" + "me/anna/lots.db\"\n"},
		{"README.md", "cd /ro" + "ot/lots\n"},
		{"README.md", "open C:\\Us" + "ers\\anna\n"},
	},
	"nothing left for later": {
		{"store/a.go", "package store\n\n// TO" + "DO: rows\n"},
		{"README.md", "FIX" + "ME\n"},
	},
}

// sound holds, by rule, neighbors of the broken sources that the rule must let pass.
var sound = map[string][]sample{
	"floors of valuation": {
		importing("valuation/lot/a.go", "walkline/valuation/money"),
		importing("valuation/a.go", "walkline/valuation/checks"),
		importing("valuation/money/a_test.go", "walkline/valuation/lot"),
		importing("store/a.go", "walkline/valuation"),
	},
	"valuation is pure": {
		calling("valuation/prob/a.go", "math/rand/v2", "rand.New(rand.NewPCG(1, 2))"),
		calling("valuation/lot/a.go", "time", "time.Parse"),
		calling("valuation/lot/a.go", "fmt", "fmt.Errorf"),
		importing("valuation/lot/a_test.go", "os"),
		importing("store/a.go", "os"),
		{"valuation/a.go", "package x\n\nimport \"time\"\n\nvar _ time.Month\n\nfunc f(time struct{ Now int }) int { return time.Now }\n"},
	},
	"gonum only in prob":             {importing("valuation/prob/a.go", "gonum.org/v1/gonum/mat")},
	"ui knows neither app nor store": {importing("cmd/walkline/a.go", "fyne.io/fyne/v2/app")},
	"goroutines and fyne.Do only in ui/task": {
		{"ui/task/a.go", "package x\n\nfunc f() { go f() }\n"},
		calling("ui/task/a.go", "fyne.io/fyne/v2", "fyne.Do"),
	},
	"no Fyne in desk, view, damage, sheet and photo": {importing("ui/widgets/a.go", "fyne.io/fyne/v2/canvas")},
	"pages stand alone": {
		importing("ui/a.go", "walkline/ui/board"),
		importing("ui/board/a.go", "walkline/ui/view"),
	},
	"buttons are our own": {
		calling("ui/widgets/a.go", "fyne.io/fyne/v2/widget", "widget.NewButton(words, nil)"),
		calling("ui/board/a.go", "walkline/ui/widgets", "widgets.NewButton(words, nil)"),
		calling("ui/a.go", "fyne.io/fyne/v2/dialog", "dialog.NewCustomWithoutButtons(words, nil, nil)"),
	},
	"every package has its comment": {
		{"store/a.go", "// Package store keeps lots.\npackage store\n"},
		{"cmd/walk/a.go", "// Command walk values lots in a terminal.\npackage main\n"},
	},
	"sizes": {
		{"store/a.go", "package store\n" + strings.Repeat("\n", longestFile-1)},
		{"store/a.go", "package store\n\nfunc f() {\n" + strings.Repeat("\tf()\n", longestFunction-2) + "}\n"},
		{"store/a.go", "package store\n\n// " + strings.Repeat("a", widestLine-3) + "\n"},
	},
	"no path of a machine":   {{"README.md", "see [pictures](pictures/board.png) and https://example.org/front/page\n"}},
	"nothing left for later": {{"README.md", "TODOS of the day\n"}},
}
