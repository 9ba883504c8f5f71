package photo

import "image"

// Upright returns the photograph in a file upright, no side longer than side pixels, before it is written as JPEG.
func Upright(data []byte, side int) (*image.RGBA, error) {
	info, img, err := decoded(data)
	if err != nil {
		return nil, err
	}
	return turned(scaled(img, side), info.Turn), nil
}
