package grid

import (
	"archive/zip"
	"bytes"
	"fmt"
	"slices"
)

// stylesPart is the part in which a workbook says how its cells look. It may be left out. Source: doc.go [4], part 1, 12.3.20.
const stylesPart = "xl/styles.xml"

// styled puts an empty part of styles into an archive without one, for the library reads no workbook that lacks it. No cell is a day by its
// style then. Errors: the part can't be made.
func styled(archive *zip.Reader) error {
	if slices.ContainsFunc(archive.File, func(f *zip.File) bool { return f.Name == stylesPart }) {
		return nil
	}
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	part, err := z.Create(stylesPart)
	if err != nil {
		return err
	}
	if _, err = fmt.Fprint(part, "<styleSheet/>"); err != nil {
		return err
	}
	if err = z.Close(); err != nil {
		return err
	}
	plain, err := zip.NewReader(bytes.NewReader(out.Bytes()), int64(out.Len()))
	if err == nil {
		archive.File = append(archive.File, plain.File...)
	}
	return err
}
