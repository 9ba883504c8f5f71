package sheet

import (
	"bytes"
	"fmt"

	"codeberg.org/go-pdf/fpdf"

	"walkline/ui/damage"
	"walkline/ui/photo"
	"walkline/ui/view"
)

// Photographs stand two in a row. Their sides are brought down to what prints at about 300 dots an inch.
const (
	photoSide   = 1100 // pixels
	photoHeight = 66.0 // mm, at most
)

// photographs prints pictures two in a row, from a new page on, each with its number, area, day and caption.
func (p *press) photographs(title string, all []Picture) {
	if len(all) == 0 {
		return
	}
	c := &column{press: p, page: len(p.pages), x: margin, w: p.paper.Width - 2*margin, y: margin, top: margin}
	c.text(title, titleType, 0)
	c.gap(gapInner)
	for i := 0; i < len(all); i += 2 {
		pair := all[i:min(i+2, len(all))]
		height := 0.0
		cells := make([]*column, len(pair))
		for k := range pair {
			cells[k] = &column{press: p, w: (c.w - gutter) / 2, top: margin}
			height = max(height, photoHeight+gapLine+cells[k].height(photoWords(i+k, pair[k]), smallType, 0))
		}
		c.need(height + gapPart)
		for k, cell := range cells {
			cell.page, cell.x, cell.y, cell.begun = c.page, c.x+float64(k)*(cell.w+gutter), c.y, true
			cell.photograph(pair[k], photoWords(i+k, pair[k]))
		}
		c.gap(height + gapPart)
		c.begun = true
	}
}

// photoWords says what a photograph shows.
func photoWords(i int, pic Picture) string {
	words := fmt.Sprintf("%d.", i+1)
	if pic.Area != "" {
		words += " " + damage.Area(pic.Area) + "."
	}
	if pic.Taken != "" {
		words += " Taken " + view.Day(pic.Taken) + "."
	}
	return words + " " + or(pic.Caption, "")
}

// photograph prints one picture in its cell with its words below.
func (c *column) photograph(pic Picture, words string) {
	data, err := pic.Read()
	if err == nil {
		data, err = photo.Small(data, photoSide)
	}
	if err != nil {
		c.press.box(c.page, c.x, c.y, c.w, photoHeight, ground, hair, 0.2)
		in := &column{press: c.press, page: c.page, x: c.x + gapPart, w: c.w - 2*gapPart, y: c.y + photoHeight/3, top: margin}
		in.text("This photo cannot be shown: "+err.Error()+".", bodyType, 0)
	} else {
		c.picture(data)
	}
	c.gap(photoHeight + gapLine)
	c.text(words, smallType, 0)
}

// picture puts a JPEG into the cell's frame, as large as fits, its top left corner in place.
func (c *column) picture(jpeg []byte) {
	pdf := c.press.pdf
	name := fmt.Sprintf("photo%d", c.press.photos)
	c.press.photos++
	kind := fpdf.ImageOptions{ImageType: "JPG"}
	info := pdf.RegisterImageOptionsReader(name, kind, bytes.NewReader(jpeg))
	if info == nil || info.Width() == 0 || info.Height() == 0 {
		return // the press keeps the fault, and printing reports it
	}
	scale := min(c.w/info.Width(), photoHeight/info.Height())
	x, y, w, h := c.x, c.y, info.Width()*scale, info.Height()*scale
	c.press.at(c.page, func() { pdf.ImageOptions(name, x, y, w, h, false, kind, 0, "") })
}
