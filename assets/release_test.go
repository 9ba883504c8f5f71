package assets

import (
	"fmt"
	"image/png"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// read returns a file of the module.
func read(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(filepath.FromSlash(path))
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// TestVersionIsANumber: the resource of a Windows program takes three numbers and no more (VERSIONINFO of the Windows SDK, from memory).
func TestVersionIsANumber(t *testing.T) {
	if v := read(t, "VERSION"); !regexp.MustCompile(`^\d+\.\d+\.\d+\n$`).MatchString(v) {
		t.Errorf("%q", v)
	}
}

// TestOneID: the desktop entry is found by the id of the AppStream component and of the window (AppStream 1.0, section 2.1.2).
func TestOneID(t *testing.T) {
	const id = "app.walkline.Walkline"
	for path, want := range map[string]string{
		"desktop/" + id + ".metainfo.xml": "<id>" + id + "</id>", "desktop/" + id + ".desktop": "\nIcon=" + id + "\n",
		"desktop/" + id + ".xml":     `<icon name="` + id + `"/>`,
		"../cmd/walkline/toolkit.go": `appID = "` + id + `"`, "../.ci/packaging/Info.plist": "<string>" + id + "</string>",
		"../.ci/packaging/winres.json": `"` + id + `"`,
	} {
		if !strings.Contains(read(t, path), want) {
			t.Errorf("%s lacks %s", path, want)
		}
	}
}

// TestABookIsKnownByItsMark: the type of a file is told by the application id that the store writes, at byte 68 (SQLite, "Database File
// Format", section 1.3).
func TestABookIsKnownByItsMark(t *testing.T) {
	mark := regexp.MustCompile(`applicationID = (0x\w+)`).FindStringSubmatch(read(t, "../store/migrate.go"))
	if mark == nil || !strings.Contains(read(t, "desktop/app.walkline.Walkline.xml"), `type="big32" offset="68" value="`+mark[1]+`"`) {
		t.Errorf("the store marks its file %q", mark)
	}
	for _, kind := range []string{"app.walkline.Walkline.desktop", "app.walkline.Walkline.metainfo.xml", "app.walkline.Walkline.xml"} {
		if !strings.Contains(read(t, "desktop/"+kind), "application/x-walkline-book") {
			t.Errorf("%s does not name the type of a book", kind)
		}
	}
}

func TestIconsHaveTheSizesOfTheirNames(t *testing.T) {
	for _, size := range []int{16, 24, 32, 48, 64, 128, 256, 512} {
		picture, err := png.Decode(strings.NewReader(read(t, fmt.Sprintf("icon/walkline-%d.png", size))))
		if err != nil || picture.Bounds().Dx() != size || picture.Bounds().Dy() != size {
			t.Errorf("%d: %v, %v", size, picture.Bounds(), err)
		}
	}
}
