package sheet

import (
	"bytes"
	"fmt"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"

	"walkline/ui/damage"
	"walkline/valuation/lot"
)

// style is how words look.
type style struct {
	size float64 // points
	bold bool
	gray int // 0 black .. 255 white
}

// The type of a page: three sizes, and the verdict's figure.
var (
	titleType  = style{size: 15, bold: true, gray: ink}
	bodyType   = style{size: 9, gray: ink}
	strongType = style{size: 9, bold: true, gray: ink}
	smallType  = style{size: 7.5, gray: muted}
	figureType = style{size: 30, bold: true, gray: ink}
)

// The greys of a page.
const (
	ink    = 20
	muted  = 85 // 7.5 : 1 on white
	hair   = 170
	ground = 238
)

const (
	margin   = 12.0 // mm
	footRoom = 6.0
	pointMM  = 25.4 / 72
	leading  = 1.28 // line height in sizes of type
)

// line returns the height of a line, in mm.
func (s style) line() float64 { return s.size * pointMM * leading }

// press keeps the orders for each page until all is laid out, so that a column may go back to an earlier page.
type press struct {
	pdf    *fpdf.Fpdf
	paper  Paper
	pages  [][]func()
	lacked bool
	photos int // pictures put in so far
}

// newPress returns a press with its fonts. Title and date go into the file's properties.
func newPress(paper Paper, title string, printed lot.Date) (*press, error) {
	day, err := time.Parse(time.DateOnly, string(printed))
	if err != nil {
		return nil, fmt.Errorf("the date to print, %q, is no date like 2026-11-28", printed)
	}
	pdf := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: paper.Width, Ht: paper.Height}})
	pdf.AddUTF8FontFromBytes("go", "", goregular.TTF)
	pdf.AddUTF8FontFromBytes("go", "B", gobold.TTF)
	pdf.SetAutoPageBreak(false, 0)
	pdf.SetMargins(0, 0, 0)
	pdf.SetCellMargin(0)
	pdf.SetCreationDate(day)
	pdf.SetModificationDate(day)
	pdf.SetCatalogSort(true)
	pdf.SetTitle(title, true)
	pdf.SetCreator("Walkline", true)
	pdf.SetLang("en")
	return &press{pdf: pdf, paper: paper}, nil
}

// at keeps an order for a page, counted from 0.
func (p *press) at(page int, order func()) {
	for len(p.pages) <= page {
		p.pages = append(p.pages, nil)
	}
	p.pages[page] = append(p.pages[page], order)
}

// dress puts a style on the pen.
func (p *press) dress(s style) {
	face := ""
	if s.bold {
		face = "B"
	}
	p.pdf.SetFont("go", face, s.size)
	p.pdf.SetTextColor(s.gray, s.gray, s.gray)
}

// words returns what the fonts can show of a text, and remembers that something was lacking.
func (p *press) words(text string) string {
	out, lack := shown(text)
	p.lacked = p.lacked || lack
	return out
}

// width returns how wide words stand, in mm.
func (p *press) width(text string, s style) float64 {
	p.dress(s)
	return p.pdf.GetStringWidth(text)
}

// write puts one line of words on a page; y is the top of the line, along is 0 when they begin at x, 1 when they end there.
func (p *press) write(page int, x, y, along float64, text string, s style) {
	text = p.words(text)
	x -= along * p.width(text, s)
	base := y + s.size*pointMM*1.02
	p.at(page, func() {
		p.dress(s)
		p.pdf.Text(x, base, text)
	})
}

// wrap breaks a text into lines no wider than a width; a word that is wider is broken where it must be, a
// no-break space keeps what it joins together. An empty text has no line.
func (p *press) wrap(text string, width float64, s style) []string {
	var lines []string
	line := ""
	for _, word := range strings.FieldsFunc(p.words(bounded(text)), func(r rune) bool { return r == ' ' }) {
		joined := word // which may be a blank that joins, and stays
		if line != "" {
			joined = line + " " + word
		}
		if p.narrow(joined, width, s) {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		letters := []rune(word)
		for line = ""; len(letters) > 0; {
			head := p.fits(letters, width, s)
			if head == len(letters) {
				line = string(letters)
				break
			}
			lines, letters = append(lines, string(letters[:head])), letters[head:]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// mostLetters is how long a text may be that is printed whole: some four pages. Ours.
const mostLetters = 20_000

// bounded cuts a text that is too long to print, and says so.
func bounded(text string) string {
	if len(text) <= mostLetters {
		return text
	}
	letters := []rune(text[:mostLetters])
	return fmt.Sprintf("%s… (The rest of this text is not printed: it has more than %d letters.)", string(letters[:len(letters)-1]),
		mostLetters)
}

// narrow reports whether words fit into a width; what has far too many letters is not measured.
func (p *press) narrow(words string, width float64, s style) bool {
	return len(words) < mostLetters && p.width(words, s) <= width
}

// fits returns how many of some letters fit into a width, at least one.
func (p *press) fits(letters []rune, width float64, s style) int {
	n := 1
	for n < len(letters) && p.width(string(letters[:n+1]), s) <= width {
		n++
	}
	return n
}

// rule draws a thin line across.
func (p *press) rule(page int, x, y, width float64) {
	p.at(page, func() {
		p.pdf.SetDrawColor(hair, hair, hair)
		p.pdf.SetLineWidth(0.2)
		p.pdf.Line(x, y, x+width, y)
	})
}

// box draws a rectangle: filled when fill is not below 0, edged when edge is not below 0 (greys).
func (p *press) box(page int, x, y, w, h float64, fill, edge int, line float64) {
	p.at(page, func() {
		how := ""
		if fill >= 0 {
			p.pdf.SetFillColor(fill, fill, fill)
			how += "F"
		}
		if edge >= 0 {
			p.pdf.SetDrawColor(edge, edge, edge)
			p.pdf.SetLineWidth(line)
			how += "D"
		}
		p.pdf.Rect(x, y, w, h, how)
	})
}

// points returns an outline as the pen takes it, scaled and moved.
func points(line damage.Path, x, y, scale float64) []fpdf.PointType {
	out := make([]fpdf.PointType, len(line))
	for i, at := range line {
		out[i] = fpdf.PointType{X: x + float64(at.X)*scale, Y: y + float64(at.Y)*scale}
	}
	return out
}

// print plays every page with its foot and returns the file.
func (p *press) print(foot string) ([]byte, error) {
	for i := range p.pages {
		p.foot(i, foot)
	}
	for _, orders := range p.pages {
		p.pdf.AddPage()
		for _, order := range orders {
			order()
		}
	}
	var out bytes.Buffer
	if err := p.pdf.Output(&out); err != nil {
		return nil, fmt.Errorf("writing the PDF: %w", err)
	}
	return out.Bytes(), nil
}

// foot writes what the sheet is of, and the page's number, at the foot of a page.
func (p *press) foot(page int, words string) {
	number := fmt.Sprintf("page %d of %d", page+1, len(p.pages))
	if p.lacked {
		number = string(lacking) + " stands for a character that the font lacks · " + number
	}
	y := p.paper.Height - margin - smallType.line() + 2
	right := p.paper.Width - margin
	room := right - margin - p.width(number, smallType) - 4
	for i, l := range p.wrap(words, room, smallType) {
		if i == 0 {
			p.write(page, margin, y, 0, l, smallType)
		}
	}
	p.write(page, right, y, 1, number, smallType)
}
