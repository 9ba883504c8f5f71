//go:build unix && !race

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/jpeg"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"walkline/ui/photo"
	"walkline/ui/sheet"
)

// most is the memory that nothing may take, in bytes.
const most = 1000 << 20

// peaked runs a part of this test in a program of its own, under the limit that the programs set themselves, and returns what it said and
// the most memory that it had.
func peaked(t *testing.T, role ...string) (said string, peak int64) {
	t.Helper()
	cmd := exec.Command(os.Args[0], "-test.run=^TestPlaysARole$", "-test.v")
	cmd.Env = append(os.Environ(), "BOUNDS_ROLE="+strings.Join(role, "\n"))
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Errorf("%q: %v: %.600s", role, err, out)
	}
	peak = cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss
	if runtime.GOOS != "darwin" { // which counts bytes, the others kilobytes
		peak <<= 10
	}
	return string(out), peak
}

// TestPlaysARole is what [peaked] runs.
func TestPlaysARole(t *testing.T) {
	role := strings.Split(os.Getenv("BOUNDS_ROLE"), "\n")
	debug.SetMemoryLimit(mostMemory)
	switch role[0] {
	case "":
		t.Skip("a part of the tests of bounds")
	case "run":
		run(role[1:], os.Stdout, os.Stdout)
	case "photo":
		data := pixels(t, role[1])
		_, err := photo.Small(data, 1600)
		fmt.Println("shrunk:", err)
	case "file":
		n, _ := strconv.Atoi(role[1])
		fmt.Println("printed:", inspected(t, n))
	}
}

// pixels returns a photograph of 60 million pixels.
func pixels(t *testing.T, kind string) []byte {
	t.Helper()
	var out bytes.Buffer
	var err error
	size := image.Rect(0, 0, 9000, 6666)
	switch kind {
	case "jpeg":
		err = jpeg.Encode(&out, image.NewYCbCr(size, image.YCbCrSubsampleRatio420), nil)
	case "png":
		fast := png.Encoder{CompressionLevel: png.BestSpeed}
		err = fast.Encode(&out, image.NewNRGBA(size))
	default:
		fast := png.Encoder{CompressionLevel: png.BestSpeed}
		err = fast.Encode(&out, image.NewNRGBA64(size))
	}
	if err != nil {
		t.Fatal(err)
	}
	debug.FreeOSMemory()
	return out.Bytes()
}

// inspected prints the file for the inspection with so many photographs of 60 million pixels.
func inspected(t *testing.T, n int) error {
	t.Helper()
	path := kept(t, "large.jpg", pixels(t, "jpeg"))
	r := sheet.Rebuilt{Currency: "USD", Printed: "2027-01-20"}
	for range n {
		r.Before = append(r.Before, sheet.Picture{Read: func() ([]byte, error) { return os.ReadFile(path) }})
	}
	pdf, err := sheet.RebuiltFile(r)
	if got := bytes.Count(pdf, []byte("/Subtype /Image")); err == nil && got == 0 {
		return fmt.Errorf("no picture is in it")
	}
	return err
}

// heavy returns a file with the demo's case after a change.
func heavy(t *testing.T, change func(c map[string]any)) string {
	t.Helper()
	data, err := os.ReadFile(demo("front.json"))
	if err != nil {
		t.Fatal(err)
	}
	c := map[string]any{}
	if err := json.Unmarshal(data, &c); err != nil {
		t.Fatal(err)
	}
	delete(c["resale"].(map[string]any), "comparables") // they lie elsewhere; the guess carries the price
	change(c)
	if data, err = json.Marshal(c); err != nil {
		t.Fatal(err)
	}
	return kept(t, "heavy.json", data)
}

// drawing sets the scenarios and the number of repair lines.
func drawing(scenarios, lines int) func(c map[string]any) {
	return func(c map[string]any) {
		c["run"].(map[string]any)["scenarios"] = scenarios
		all := []any{}
		for i := range lines {
			three := map[string]any{"low": 0.1, "likely": 0.2, "high": 0.3}
			all = append(all, map[string]any{"id": fmt.Sprint("l", i), "job": fmt.Sprint("job ", i), "materials": three,
				"hours": map[string]any{"body": three}})
		}
		c["repair"].(map[string]any)["lines"] = all
	}
}

// bound is something far too large, what is done with it and what that is to say.
type bound struct {
	name string
	role []string
	says string
}

// TestBounds holds what is far too large to less than a gigabyte; where a bound is met, a sentence says which. TORTURE plays all of it.
func TestBounds(t *testing.T) {
	digits := strings.Repeat("9", 1_000_000)
	lot := func(key, value string) func(c map[string]any) {
		return func(c map[string]any) { c["lot"].(map[string]any)[key] = value }
	}
	value := func(change func(c map[string]any)) []string { return []string{"run", "value", heavy(t, change)} }
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	cases := []bound{
		{"a word of 200,000 letters on a sheet", []string{"run", "sheet", heavy(t, lot("model", strings.Repeat("W", 200_000))), "-o", pdf}, pdf},
		{"an amount of a million digits", value(func(c map[string]any) {
			c["buying"].(map[string]any)["fixed"] = []any{map[string]any{"name": "Gate", "amount": digits}}
		}), "larger than any price"},
		{"a cell of a million digits", []string{"run", "comps", "check", kept(t, "digits.csv",
			[]byte("year,price,mileage\n2019,"+digits+",5\n"))},
			"1 refused"},
		{"10,000 repair lines, 2^20 scenarios", value(drawing(1<<20, 10_000)), "want at most 26843 with 10000 lines"},
		{"10,000 repair lines", value(drawing(256, 10_000)), "Do not bid"},
		{"2^18 scenarios", value(drawing(1<<18, 0)), "Walk-away bid"},
		{"a photo of 60 million pixels", []string{"photo", "jpeg"}, "shrunk: <nil>"},
		{"2 of them in a file", []string{"file", "2"}, "printed: <nil>"},
	}
	if rounds, _ := strconv.Atoi(os.Getenv("TORTURE")); rounds > 1 {
		cases = append(cases, bound{"10,000 repair lines, 16,384 scenarios", value(drawing(16_384, 10_000)), "Do not bid"},
			bound{"2^20 scenarios, 40 lines", value(drawing(1<<20, 40)), "Walk-away bid"},
			bound{"a PNG of 60 million pixels", []string{"photo", "png"}, "shrunk: <nil>"},
			bound{"one of 16 bits a color", []string{"photo", "deep"}, "shrunk: <nil>"},
			bound{"60 photos in a file", []string{"file", "60"}, "printed: <nil>"})
	}
	for _, c := range cases {
		said, peak := peaked(t, c.role...)
		t.Logf("%-40s %4d MB", c.name, peak>>20)
		if !strings.Contains(said, c.says) || peak > most || len(said) > 100_000 {
			t.Errorf("%s: %d MB, says %d characters: %.300s", c.name, peak>>20, len(said), said)
		}
	}
}
