package photo

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // registers the decoder
	_ "image/png"  // registers the decoder
	"time"

	"github.com/bep/imagemeta"
	_ "golang.org/x/image/webp" // registers the decoder

	"walkline/valuation/lot"
)

// The limits of what is kept. Ours: several times what the cameras of phones write.
const (
	MostBytes  = 40 << 20
	MostPixels = 60_000_000
	LeastSide  = 16
)

// Info is what a photograph's file says.
type Info struct {
	Hash          string // SHA-256 of the bytes, in hexadecimal
	Kind          string // jpeg | png | webp
	Width, Height int    // upright
	Turn          Turn
	Taken         lot.Date // empty: the file does not say
}

// Turn is how a picture has to be turned to stand upright: the value of Exif's Orientation, 1 to 8; 1 is upright.
type Turn int

// sideways reports whether width and height change places.
func (t Turn) sideways() bool { return t >= 5 && t <= 8 }

// Read returns what the bytes of a file say of the photograph in it.
// Errors: each says why the file cannot be kept, with the limit that it breaks.
func Read(data []byte) (Info, error) {
	one.Lock()
	defer one.Unlock()
	info, _, err := decoded(data)
	return info, err
}

// decoded returns a photograph with its picture as the file holds it, not yet turned.
func decoded(data []byte) (Info, image.Image, error) {
	info, err := headed(data)
	if err != nil {
		return info, nil, err
	}
	img, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return info, nil, fmt.Errorf("the photo breaks off or is damaged (%w)", err)
	}
	return info, img, nil
}

// headed reads the head of a file: enough to refuse what is too large before any of it is decoded.
func headed(data []byte) (Info, error) {
	switch {
	case len(data) == 0:
		return Info{}, errors.New("the file is empty")
	case len(data) > MostBytes:
		return Info{}, fmt.Errorf("the file has more than %d MB", MostBytes>>20)
	case isHEIC(data):
		return Info{}, errors.New("HEIC photos cannot be read: have the phone write JPEG, or save it as JPEG")
	}
	size, kind, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Info{}, errors.New("this is no JPEG, PNG or WebP photo")
	}
	if size.Width < LeastSide || size.Height < LeastSide {
		return Info{}, fmt.Errorf("the photo is %d x %d pixels; the least is %d a side", size.Width, size.Height, LeastSide)
	}
	if size.Width > MostPixels/size.Height {
		return Info{}, fmt.Errorf("the photo is %d x %d pixels; the most is %d million in all", size.Width, size.Height, MostPixels/1_000_000)
	}
	if room := size.Width * size.Height * bytesEach(data, kind, size.ColorModel); room > mostRoom {
		return Info{}, fmt.Errorf("the photo takes %d MB to be read; the most is %d: save it as a plain JPEG, or smaller", room>>20, mostRoom>>20)
	}
	sum := sha256.Sum256(data)
	info := Info{Hash: hex.EncodeToString(sum[:]), Kind: kind, Width: size.Width, Height: size.Height, Turn: 1}
	info.tags(data)
	if info.Turn.sideways() {
		info.Width, info.Height = info.Height, info.Width
	}
	return info, nil
}

// isHEIC reports whether the bytes open as an ISO media file of the HEIF family.
func isHEIC(data []byte) bool {
	if len(data) < 12 || string(data[4:8]) != "ftyp" {
		return false
	}
	switch string(data[8:12]) {
	case "heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1":
		return true
	}
	return false
}

// metaFormats are the kinds whose tags are read.
var metaFormats = map[string]imagemeta.ImageFormat{"jpeg": imagemeta.JPEG, "png": imagemeta.PNG, "webp": imagemeta.WebP}

// tags takes the turn and the day from the file's tags. Tags that cannot be read leave the picture as the file holds it: it
// can still be kept.
func (i *Info) tags(data []byte) {
	format, known := metaFormats[i.Kind]
	if !known {
		return
	}
	wanted := func(t imagemeta.TagInfo) bool { return t.Tag == "Orientation" || t.Tag == "DateTimeOriginal" }
	_, _ = imagemeta.Decode(imagemeta.Options{R: bytes.NewReader(data), ImageFormat: format, Sources: imagemeta.EXIF,
		ShouldHandleTag: wanted, HandleTag: func(t imagemeta.TagInfo) error { i.tag(t); return nil }})
}

// tag takes one tag. Those of the thumbnail inside the file do not count.
func (i *Info) tag(t imagemeta.TagInfo) {
	switch value := t.Value.(type) {
	case uint16:
		if t.Tag == "Orientation" && t.Namespace == "IFD0" && value >= 1 && value <= 8 {
			i.Turn = Turn(value)
		}
	case string:
		const layout = "2006:01:02" // Exif writes a day with colons
		if t.Tag != "DateTimeOriginal" || len(value) < len(layout) {
			return
		}
		if day, err := time.Parse(layout, value[:len(layout)]); err == nil {
			i.Taken = lot.Date(day.Format(time.DateOnly))
		}
	}
}
