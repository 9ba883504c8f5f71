// Package photo answers one question: is this file a photograph that can be kept, and how does it look the right way up?
//
// [Read] looks at the bytes of a file: the kind (JPEG, PNG, WebP, told by the bytes and not by the name), the size, whether it
// decodes to its end, which way up the camera held it and on which day it was taken. What cannot be kept is refused with the
// reason and the limit. [Small] returns a picture upright and no larger than a side, as JPEG, for thumbnails, the large view
// and print.
//
// Units: pixels; width and height are those of the upright picture.
// Limits: [MostBytes], [MostPixels], [LeastSide].
// Assumptions: a picture without an orientation is upright; the camera's clock is right.
//
// Sources: [1] Exif 2.32 (CIPA DC-008), tag 274 Orientation, its eight values, and tag 36867 DateTimeOriginal. The tags are read
// by github.com/bep/imagemeta.
//
// It keeps nothing and knows no window. HEIC is refused by name: nothing here decodes it.
package photo
