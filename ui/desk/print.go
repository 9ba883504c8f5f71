package desk

import (
	"context"
	"errors"
	"strings"
	"unicode"

	"walkline/store/book"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/checks"
	"walkline/valuation/lot"
)

// Press makes files to print.
type Press interface {
	// Decision returns the decision sheet of a lot as PDF; printed is the date on it. The paper is a4 or letter;
	// empty: the one that is usual for the currency.
	Decision(c valuation.Case, a valuation.Answer, printed lot.Date, paper string) ([]byte, error)
	// Rebuilt returns the file for the rebuilt inspection of a build as PDF.
	Rebuilt(p BuildPaper) ([]byte, error)
	// Ledger returns every entry of the bought lots as CSV.
	Ledger(list []book.Bought) []byte
	Lists
}

// Lists makes lists of several lots to print.
type Lists interface {
	// Shopping returns a shopping list as PDF; printed is the date on it.
	Shopping(list []valuation.Wanted, printed lot.Date) ([]byte, error)
	// Table returns a shopping list as CSV.
	Table(list []valuation.Wanted) []byte
	// Plan returns the plan of a sale day as PDF, on a paper as in Press.
	Plan(p DayPlan, printed lot.Date, paper string) ([]byte, error)
}

// BuildPaper is what the file for the rebuilt inspection is made of.
type BuildPaper struct {
	Case    valuation.Case
	Build   build.Build
	Jobs    map[string]string // what each line of work is called
	Packs   []checks.Pack     // what jurisdictions ask
	Photos  []PhotoFile
	Bills   map[string]func() ([]byte, error) // pictures of bills, by the hash in the receipt
	Builder Builder
	Printed lot.Date
}

// PhotoFile is a photograph with what reads its file.
type PhotoFile struct {
	lot.Photo
	Read func() ([]byte, error)
}

// RebuiltFile returns the file for the rebuilt inspection of a build, with every photograph of its lot. It touches no state and
// may run on any goroutine. Errors: the list of photographs cannot be read.
func (d *Desk) RebuiltFile(ctx context.Context, o OpenBuild, by Builder) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	l, err := d.Book.Lot(ctx, o.ID)
	if err != nil {
		return nil, err
	}
	p := BuildPaper{Case: o.Case, Build: o.Build, Jobs: map[string]string{}, Packs: d.Knowledge().Packs,
		Bills:   map[string]func() ([]byte, error){},
		Builder: by, Printed: d.Today()}
	for _, l := range o.Plan {
		p.Jobs[l.ID] = l.Job
	}
	for _, u := range o.Build.Unlisted {
		p.Jobs[u.ID] = u.Name
	}
	for _, r := range o.Risks {
		p.Jobs[r.ID] = r.Name
	}
	for _, x := range l.Photos {
		p.Photos = append(p.Photos, PhotoFile{x, func() ([]byte, error) { return d.PhotoFile(x) }})
	}
	for _, r := range o.Build.Receipts {
		for _, f := range r.Files() {
			if _, kind, err := d.BillFile(f.Hash); err == nil && kind != "pdf" {
				p.Bills[f.Hash] = func() ([]byte, error) {
					data, _, err := d.BillFile(f.Hash)
					return data, err
				}
			}
		}
	}
	return d.Press.Rebuilt(p)
}

// DecisionSheet returns the decision sheet of a lot as it stands, on a paper as in Press; a lot whose answer is not fresh is valued first.
// It touches no state and may run on any goroutine. Errors: the lot cannot be valued, with the first reason.
func (d *Desk) DecisionSheet(ctx context.Context, o Open, paper string) ([]byte, error) {
	if d.Press == nil {
		return nil, errors.New("this desk has no press")
	}
	if o.Fresh && o.Valued != nil && len(o.Tried) == 0 {
		return d.Press.Decision(o.Case, o.Valued.Answer, d.Today(), paper)
	}
	v, err := d.ValueLot(ctx, o.ID, o.Case)
	if err != nil {
		return nil, err
	}
	return d.Press.Decision(o.Case, v.Answer, d.Today(), paper)
}

// FileName returns the name under which something about a lot is saved: "lot 14 Ostrane Pell decision.pdf". What file systems
// refuse in a name is left out.
func FileName(l lot.Lot, kind, ending string) string {
	words := []string{"lot", l.Number, l.Make, l.Model, kind}
	name := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || strings.ContainsRune(`/\:*?"<>|`, r) {
			return ' '
		}
		return r
	}, strings.Join(words, " "))
	const longest = 120 // runes; file systems take 255 bytes
	short := []rune(strings.Join(strings.Fields(name), " "))
	return string(short[:min(len(short), longest)]) + ending
}
