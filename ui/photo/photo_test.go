package photo_test

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"walkline/ui/photo"
)

// exif returns a TIFF block with an orientation and a day of taking, as Exif 2.32 section 4.5 and 4.6 lay it out: header, IFD0
// with tag 274 (SHORT) and the pointer 34665 to the Exif IFD, which holds tag 36867 (ASCII, 20 bytes).
func exif(order binary.AppendByteOrder, turn uint16, taken string) []byte {
	mark := "II"
	if order.AppendUint16(nil, 1)[0] == 0 {
		mark = "MM"
	}
	b := order.AppendUint32(order.AppendUint16([]byte(mark), 42), 8)
	b = order.AppendUint16(b, 2)
	b = append(order.AppendUint16(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, 274), 3), 1), turn), 0, 0)
	b = order.AppendUint32(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, 34665), 4), 1), 38)
	b = order.AppendUint32(b, 0)
	b = order.AppendUint16(b, 1)
	b = order.AppendUint32(order.AppendUint32(order.AppendUint16(order.AppendUint16(b, 36867), 2), 20), 56)
	b = order.AppendUint32(b, 0)
	return append(append(b, taken...), 0)
}

const taken = "2026:11:28 07:31:00"

// inJPEG puts a block behind the start of a JPEG, as APP1 (Exif 2.32, 4.7.2).
func inJPEG(data, block []byte) []byte {
	app := append([]byte("Exif\x00\x00"), block...)
	head := binary.BigEndian.AppendUint16([]byte{0xff, 0xd8, 0xff, 0xe1}, uint16(len(app)+2))
	return append(append(head, app...), data[2:]...)
}

// inPNG puts a block behind the head of a PNG, as an eXIf chunk (PNG third edition, 11.3.4.5).
func inPNG(data, block []byte) []byte {
	const afterIHDR = 8 + 25
	chunk := append([]byte("eXIf"), block...)
	full := binary.BigEndian.AppendUint32(nil, uint32(len(block)))
	full = binary.BigEndian.AppendUint32(append(full, chunk...), crc32.ChecksumIEEE(chunk))
	return append(append(append([]byte{}, data[:afterIHDR]...), full...), data[afterIHDR:]...)
}

// edges says at which edge of the upright picture row 0 and column 0 of the file lie. Source: Exif 2.32, tag 274.
var edges = map[uint16][2]string{1: {"top", "left"}, 2: {"top", "right"}, 3: {"bottom", "right"}, 4: {"bottom", "left"},
	5: {"left", "top"}, 6: {"right", "top"}, 7: {"right", "bottom"}, 8: {"left", "bottom"}}

// upright is a picture of 40 x 24 whose every pixel differs.
func upright() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 40, 24))
	for y := range 24 {
		for x := range 40 {
			img.SetRGBA(x, y, color.RGBA{uint8(6 * x), uint8(10 * y), uint8(3*x + 5*y), 255})
		}
	}
	return img
}

// stored returns the picture as a file with an orientation holds it.
func stored(img *image.RGBA, turn uint16) *image.RGBA {
	w, h := img.Rect.Dx(), img.Rect.Dy()
	cols, rows := w, h
	if turn >= 5 {
		cols, rows = h, w
	}
	out := image.NewRGBA(image.Rect(0, 0, cols, rows))
	for r := range rows {
		for c := range cols {
			x, y := 0, 0
			for edge, n := range map[string]int{edges[turn][0]: r, edges[turn][1]: c} {
				switch edge {
				case "left":
					x = n
				case "right":
					x = w - 1 - n
				case "top":
					y = n
				case "bottom":
					y = h - 1 - n
				}
			}
			out.Set(c, r, img.At(x, y))
		}
	}
	return out
}

func asPNG(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func asJPEG(t testing.TB, img image.Image) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: 100}); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestEveryOrientationComesOutUpright(t *testing.T) {
	want := upright()
	for turn := range edges {
		for name, order := range map[string]binary.AppendByteOrder{"little-endian": binary.LittleEndian, "big-endian": binary.BigEndian} {
			block := exif(order, turn, taken)
			for kind, data := range map[string][]byte{"png": inPNG(asPNG(t, stored(want, turn)), block),
				"jpeg": inJPEG(asJPEG(t, stored(want, turn)), block)} {
				where := fmt.Sprintf("%s, orientation %d, %s", kind, turn, name)
				info, err := photo.Read(data)
				if err != nil || info.Width != 40 || info.Height != 24 || info.Taken != "2026-11-28" || info.Kind != kind {
					t.Errorf("%s: %+v, %v", where, info, err)
				}
				got, err := photo.Upright(data, 1000)
				if err != nil || !like(got, want, map[string]int{"png": 0, "jpeg": 24}[kind]) {
					t.Errorf("%s: not upright (%v)", where, err)
				}
			}
		}
	}
}

// like reports whether two pictures are of one size and no channel is further off than slack.
func like(a, b *image.RGBA, slack int) bool {
	if a == nil || a.Rect != b.Rect {
		return false
	}
	for i := range a.Pix {
		if d := int(a.Pix[i]) - int(b.Pix[i]); d > slack || -d > slack {
			return false
		}
	}
	return true
}

func TestWithoutTagsAPictureIsUpright(t *testing.T) {
	for name, data := range map[string][]byte{"none": asPNG(t, upright()),
		"no such turn":    inPNG(asPNG(t, upright()), exif(binary.BigEndian, 9, "no date")),
		"tags broken off": inPNG(asPNG(t, upright()), exif(binary.BigEndian, 6, taken)[:11])} {
		info, err := photo.Read(data)
		if err != nil || info.Turn != 1 || info.Width != 40 || info.Taken != "" || len(info.Hash) != 64 {
			t.Errorf("%s: %+v, %v", name, info, err)
		}
	}
}

// withSize writes another size into the head of a PNG.
func withSize(data []byte, w, h uint32) []byte {
	out := append([]byte{}, data...)
	binary.BigEndian.PutUint32(out[16:], w)
	binary.BigEndian.PutUint32(out[20:], h)
	binary.BigEndian.PutUint32(out[29:], crc32.ChecksumIEEE(out[12:29]))
	return out
}

func TestWhatCannotBeKeptSaysWhy(t *testing.T) {
	whole := asJPEG(t, upright())
	for says, data := range map[string][]byte{
		"the file is empty":                nil,
		"no JPEG, PNG or WebP photo":       []byte("price,kind\n100,asked\n"),
		"HEIC photos cannot be read":       []byte("\x00\x00\x00\x18ftypheic\x00\x00\x00\x00mif1heic"),
		"breaks off or is damaged":         whole[:len(whole)/2],
		"100000 x 100000 pixels; the most": withSize(asPNG(t, upright()), 100000, 100000),
		"8 x 40 pixels; the least is 16":   asPNG(t, image.NewRGBA(image.Rect(0, 0, 8, 40))),
		"more than 40 MB":                  make([]byte, photo.MostBytes+1),
	} {
		if _, err := photo.Read(data); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
		if _, err := photo.Small(data, 100); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("small: %v, want %q", err, says)
		}
	}
}

// claiming returns the head of a file that says it holds 9000 x 6666 pixels, stored so that decoding it takes more than its pixels.
func claiming(t testing.TB, kind string) []byte {
	t.Helper()
	if kind == "interlaced" {
		data := asPNG(t, image.NewNRGBA64(image.Rect(0, 0, 20, 20)))
		data[28] = 1 // PNG third edition, 11.2.1: Adam7
		return withSize(data, 9000, 6666)
	}
	data := asJPEG(t, upright())
	// ITU-T T.81, table B.1: SOF0, and SOF2 for a progressive one; B.2.2: lines, then samples a line
	at := bytes.Index(data, []byte{0xff, 0xc0})
	data[at+1] = 0xc2
	binary.BigEndian.PutUint16(data[at+5:], 6666)
	binary.BigEndian.PutUint16(data[at+7:], 9000)
	return data
}

func TestWhatTakesTooMuchRoomIsRefusedByItsHead(t *testing.T) {
	for _, kind := range []string{"interlaced", "progressive"} {
		if _, err := photo.Read(claiming(t, kind)); err == nil || !strings.Contains(err.Error(), "MB to be read; the most is 512") {
			t.Errorf("%s: %v", kind, err)
		}
	}
	if _, err := photo.Read(withSize(asPNG(t, upright()), 9000, 6666)); err == nil || strings.Contains(err.Error(), "the most") {
		t.Errorf("a plain one of 60 million pixels is refused for its size: %v", err)
	}
}

func TestSmallKeepsTheShape(t *testing.T) {
	wide := image.NewRGBA(image.Rect(0, 0, 800, 200))
	for i := range wide.Pix {
		wide.Pix[i] = 255
	}
	for side, want := range map[int]image.Point{100: {X: 100, Y: 25}, 2000: {X: 800, Y: 200}, 1: {X: 1, Y: 1}} {
		small, err := photo.Small(asPNG(t, wide), side)
		if err != nil {
			t.Fatal(err)
		}
		img, err := jpeg.Decode(bytes.NewReader(small))
		if err != nil || img.Bounds().Size() != want {
			t.Errorf("%d: %v, want %v (%v)", side, img.Bounds().Size(), want, err)
		}
	}
}

// What is clear becomes white, for JPEG knows no clear.
func TestClearBecomesWhite(t *testing.T) {
	img, err := photo.Upright(asPNG(t, image.NewRGBA(image.Rect(0, 0, 20, 20))), 20)
	if err != nil || img.RGBAAt(10, 10) != (color.RGBA{255, 255, 255, 255}) {
		t.Errorf("%v, %v", img.RGBAAt(10, 10), err)
	}
}

// Whatever the bytes, nothing panics, and what is kept has a size and a turn that are its own.
func FuzzRead(f *testing.F) {
	f.Add(asPNG(f, upright()))
	f.Add(inJPEG(asJPEG(f, upright()), exif(binary.LittleEndian, 6, taken)))
	f.Add(inPNG(asPNG(f, upright()), exif(binary.BigEndian, 8, taken)))
	f.Add(claiming(f, "interlaced"))
	f.Add(claiming(f, "progressive"))
	f.Add([]byte("RIFF\x1a\x00\x00\x00WEBPVP8L"))
	f.Fuzz(func(t *testing.T, data []byte) {
		info, err := photo.Read(data)
		if err == nil && (info.Turn < 1 || info.Turn > 8 || info.Width < photo.LeastSide || info.Height < photo.LeastSide) {
			t.Errorf("kept: %+v", info)
		}
	})
}
