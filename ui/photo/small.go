package photo

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"sync"

	"golang.org/x/image/draw"
)

// quality of the JPEGs that are made, 1..100: at 85 no block is to be seen in print at 300 dots an inch.
const quality = 85

// Small returns the photograph in a file upright, no side longer than side pixels, as JPEG; a smaller one keeps its size.
// Errors: as [Read].
func Small(data []byte, side int) ([]byte, error) {
	_, small, err := ReadSmall(data, side)
	return small, err
}

// ReadSmall returns what [Read] and [Small] return, and decodes the file once.
// Errors: as [Read].
func ReadSmall(data []byte, side int) (Info, []byte, error) {
	info, small, err := shrunk(data, side)
	if err != nil {
		return info, nil, err
	}
	var out bytes.Buffer
	if err := jpeg.Encode(&out, turned(small, info.Turn), &jpeg.Options{Quality: quality}); err != nil {
		return info, nil, fmt.Errorf("writing the small picture: %w", err)
	}
	return info, out.Bytes(), nil
}

// one lets one photograph at a time be decoded: a large one takes hundreds of megabytes, and a page may ask for many at once.
var one sync.Mutex

// shrunk returns a photograph as the file holds it, not yet turned, no side longer than side.
func shrunk(data []byte, side int) (Info, *image.RGBA, error) {
	one.Lock()
	defer one.Unlock()
	info, img, err := decoded(data)
	if err != nil {
		return info, nil, err
	}
	return info, scaled(img, side), nil
}

// scaled returns a picture on white, no side longer than side. It is scaled down by areas, so that fine lines do not flicker out.
func scaled(img image.Image, side int) *image.RGBA {
	b := img.Bounds()
	w, h := b.Dx(), b.Dy()
	if longest := max(w, h); longest > side {
		w, h = max(1, w*side/longest), max(1, h*side/longest)
	}
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.Draw(out, out.Rect, image.NewUniform(color.White), image.Point{}, draw.Src)
	// First by a whole number, for the scaler's room grows with the rows that it is given.
	if from, ok := img.(image.RGBA64Image); ok && min(b.Dx()/w, b.Dy()/h) > 1 {
		img = boxed(from, min(b.Dx()/w, b.Dy()/h))
	}
	draw.BiLinear.Scale(out, out.Rect, img, img.Bounds(), draw.Over, nil)
	return out
}

// boxed returns a picture of the means of k x k pixels, which are fewer at the right and lower edge.
func boxed(img image.RGBA64Image, k int) *image.RGBA64 {
	b := img.Bounds()
	out := image.NewRGBA64(image.Rect(0, 0, (b.Dx()+k-1)/k, (b.Dy()+k-1)/k))
	for y := range out.Rect.Max.Y {
		for x := range out.Rect.Max.X {
			cell := image.Rect(x*k, y*k, x*k+k, y*k+k).Add(b.Min).Intersect(b)
			out.SetRGBA64(x, y, mean(img, cell))
		}
	}
	return out
}

// mean returns the mean colour of a cell that is not empty.
func mean(img image.RGBA64Image, cell image.Rectangle) color.RGBA64 {
	var r, g, b, a, n uint64
	for y := cell.Min.Y; y < cell.Max.Y; y++ {
		for x := cell.Min.X; x < cell.Max.X; x++ {
			c := img.RGBA64At(x, y)
			r, g, b, a, n = r+uint64(c.R), g+uint64(c.G), b+uint64(c.B), a+uint64(c.A), n+1
		}
	}
	return color.RGBA64{R: uint16(r / n), G: uint16(g / n), B: uint16(b / n), A: uint16(a / n)}
}

// turned returns a picture turned upright. Source: [1]; the value says at which edges row 0 and column 0 of the file lie.
func turned(img *image.RGBA, t Turn) *image.RGBA {
	if t <= 1 || t > 8 {
		return img
	}
	w, h := img.Rect.Dx(), img.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	if t.sideways() {
		out = image.NewRGBA(image.Rect(0, 0, h, w))
	}
	for y := range h {
		for x := range w {
			to := t.place(x, y, w, h)
			copy(out.Pix[out.PixOffset(to.X, to.Y):][:4], img.Pix[img.PixOffset(x, y):][:4])
		}
	}
	return out
}

// place returns where a pixel of a w x h picture goes.
func (t Turn) place(x, y, w, h int) image.Point {
	switch t {
	case 2: // top right: mirrored left to right
		return image.Pt(w-1-x, y)
	case 3: // bottom right: half a turn
		return image.Pt(w-1-x, h-1-y)
	case 4: // bottom left: mirrored top to bottom
		return image.Pt(x, h-1-y)
	case 5: // left top: mirrored along the falling diagonal
		return image.Pt(y, x)
	case 6: // right top: a quarter turn clockwise
		return image.Pt(h-1-y, x)
	case 7: // right bottom: mirrored along the rising diagonal
		return image.Pt(h-1-y, w-1-x)
	case 8: // left bottom: a quarter turn counter-clockwise
		return image.Pt(y, w-1-x)
	}
	return image.Pt(x, y)
}
