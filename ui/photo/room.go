package photo

import (
	"encoding/binary"
	"image/color"
)

// mostRoom is how many bytes a photograph may take while it is decoded. Ours: what 60 million pixels of a camera's JPEG take, twice.
const mostRoom = 512 << 20

// bytesEach returns how many bytes each pixel takes while a file is decoded, at most.
func bytesEach(data []byte, kind string, model color.Model) int {
	switch {
	case kind == "jpeg" && progressive(data): // the decoder keeps what it has of each component, four bytes each, and the picture beside it
		return 5 * components(model)
	case kind == "jpeg":
		return components(model)
	case kind == "png" && len(data) > interlaceAt && data[interlaceAt] != 0: // each pass is a picture of its own, the last of half the size
		return deep(model) * 3 / 2
	case kind == "png":
		return deep(model)
	}
	return 2 * deep(model)
}

// interlaceAt is where a PNG says how it is interlaced. Source: PNG third edition, 11.2.1 (IHDR).
const interlaceAt = 8 + 8 + 12

// components returns how many a JPEG of that colour model has.
func components(model color.Model) int {
	switch model {
	case color.GrayModel:
		return 1
	case color.CMYKModel:
		return 4
	}
	return 3
}

// deep returns how many bytes a pixel of a colour model takes.
func deep(model color.Model) int {
	switch model {
	case color.RGBA64Model, color.NRGBA64Model:
		return 8
	case color.Gray16Model:
		return 2
	case color.GrayModel, color.AlphaModel:
		return 1
	}
	if _, indexed := model.(color.Palette); indexed {
		return 1
	}
	return 4
}

// progressive reports whether a JPEG is stored in passes over the whole picture: its frame begins with the marker SOF2.
// Source: ITU-T T.81, table B.1 and B.1.1.4.
func progressive(data []byte) bool {
	for at := 2; at+4 <= len(data) && data[at] == 0xff; {
		switch marker := data[at+1]; {
		case marker == 0xff: // a fill byte
			at++
			continue
		case marker == 0xc2:
			return true
		case marker == 0xc0 || marker == 0xc1 || marker == 0xda:
			return false
		}
		at += 2 + int(binary.BigEndian.Uint16(data[at+2:]))
	}
	return false
}
