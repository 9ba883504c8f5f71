package photo

import "image"

// Upright returns the photograph in a file upright, no side longer than side pixels, before it is written as JPEG.
func Upright(data []byte, side int) (*image.RGBA, error) {
	info, small, err := shrunk(data, side)
	if err != nil {
		return nil, err
	}
	return turned(small, info.Turn), nil
}
