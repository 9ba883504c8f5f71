package lot

// Photo is what is known of one photograph of a lot. Its file is kept elsewhere, by its hash.
type Photo struct {
	Hash    string `json:"hash"` // SHA-256 of the file, in hexadecimal
	Kind    string `json:"kind"` // jpeg | png | webp
	Name    string `json:"name"` // of the file as it came
	Width   int    `json:"width"`
	Height  int    `json:"height"`  // pixels, upright
	Taken   Date   `json:"taken"`   // empty: the file does not say
	Area    string `json:"area"`    // the damage area that it is pinned to; empty: the whole vehicle
	Stage   Stage  `json:"stage"`   // of the work
	Caption string `json:"caption"` // the buyer's words
}

// Stage says whether a photograph shows the vehicle as bought or as rebuilt.
type Stage string

// The stages of a photograph.
const (
	Before Stage = "before"
	After  Stage = "after"
)

// Stages lists every stage in order.
var Stages = []Stage{Before, After}
