package assets

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"path"
)

//go:embed catalogue/*.json priors/*.json jurisdictions/*.json demo
var documents embed.FS

//go:embed icon/walkline-256.png
var icon []byte

//go:embed THIRD_PARTY_NOTICES.md
var notices string

// Icon returns the program's icon, a PNG of 256 pixels.
func Icon() []byte { return icon }

// Notices returns the licences of all that is built into the programs, as Markdown.
func Notices() string { return notices }

// Jobs returns the job catalogue as JSON, format walkline-jobs/1.
func Jobs() []byte { return known("catalogue/jobs.json") }

// Risks returns the catalogue of hidden risks and findings as JSON, format walkline-risks/1.
func Risks() []byte { return known("catalogue/risks.json") }

// Assemblies returns the catalogue of what a lot is parted out into as JSON, format walkline-assemblies/1.
func Assemblies() []byte { return known("catalogue/assemblies.json") }

// Edition names the job catalogue and the catalogue of risks that this build ships: their SHA-256, in hexadecimal.
func Edition() string {
	h := sha256.New()
	h.Write(Jobs())
	h.Write(Risks())
	h.Write(Assemblies())
	return hex.EncodeToString(h.Sum(nil))
}

// ResalePrior returns the market's prior for resale prices as JSON.
func ResalePrior() []byte { return known("priors/resale.json") }

// Jurisdictions returns the jurisdiction packs as JSON, format walkline-jurisdiction/1, one document each, in the order of
// their file names.
func Jurisdictions() [][]byte {
	entries, err := documents.ReadDir("jurisdictions")
	if err != nil {
		panic(err) // the folder is part of the build
	}
	var packs [][]byte
	for _, e := range entries {
		packs = append(packs, known(path.Join("jurisdictions", e.Name())))
	}
	return packs
}

// Demo returns a document of the demo sale: a case file (front.json, side.json, flood.json) or a table of comparables
// that a case names. Errors: there is no document of that name.
func Demo(name string) ([]byte, error) {
	data, err := documents.ReadFile(path.Join("demo", path.Base(name)))
	if err != nil {
		return nil, fmt.Errorf("the demo has no document %q: %w", name, err)
	}
	return data, nil
}

// DemoCases returns the names of the demo's case files, in the order of the sale.
func DemoCases() []string { return []string{"front.json", "side.json", "flood.json"} }

// known returns a document that is part of the build.
func known(name string) []byte {
	data, err := documents.ReadFile(name)
	if err != nil {
		panic(err)
	}
	return data
}
