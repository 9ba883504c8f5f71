package album_test

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/store/album"
)

// The SHA-256 of "abc", from FIPS 180-4's example values (NIST CSRC, "SHA256.pdf").
const abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"

func TestAFileIsKeptByItsHash(t *testing.T) {
	at := filepath.Join(t.TempDir(), "walkline.db.photos")
	f := album.At(at)
	for range 2 {
		if err := f.Keep(abc, "jpeg", []byte("abc")); err != nil {
			t.Fatal(err)
		}
	}
	if err := f.Keep(abc, album.Small, []byte("smaller")); err != nil {
		t.Fatal(err)
	}
	for kind, want := range map[string]string{"jpeg": "abc", album.Small: "smaller"} {
		if data, err := f.File(abc, kind); err != nil || string(data) != want {
			t.Errorf("%s: %q, %v", kind, data, err)
		}
	}
	names, _ := filepath.Glob(filepath.Join(at, "*"))
	if len(names) != 2 || filepath.Base(names[0]) != abc+".jpg" {
		t.Errorf("the folder holds %q", names)
	}
}

func TestWhatIsWrongIsTold(t *testing.T) {
	f := album.At(t.TempDir())
	if err := f.Keep(abc, "jpeg", []byte("abd")); !errors.Is(err, album.ErrChanged) {
		t.Errorf("another content: %v", err)
	}
	if _, err := f.File(abc, "jpeg"); !errors.Is(err, album.ErrGone) {
		t.Errorf("no such file: %v", err)
	}
	for _, name := range [][2]string{{"../" + abc[3:], "jpeg"}, {abc, "jp/g"}, {strings.ToUpper(abc), "png"}, {"", ""}} {
		if err := f.Keep(name[0], name[1], []byte("abc")); !errors.Is(err, album.ErrName) {
			t.Errorf("%q: %v", name, err)
		}
		if _, err := f.File(name[0], name[1]); !errors.Is(err, album.ErrName) {
			t.Errorf("%q: %v", name, err)
		}
	}
}

// A file that was changed by hand is told when it is read, and made good when the same photograph comes again.
func TestAChangedFileIsToldAndMadeGood(t *testing.T) {
	f := album.At(t.TempDir())
	if err := f.Keep(abc, "png", []byte("abc")); err != nil {
		t.Fatal(err)
	}
	path, err := f.Path(abc, "png")
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("painted over"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := f.File(abc, "png"); !errors.Is(err, album.ErrChanged) {
		t.Errorf("%v", err)
	}
	if err := f.Keep(abc, "png", []byte("abc")); err != nil {
		t.Fatal(err)
	}
	if data, err := f.File(abc, "png"); err != nil || string(data) != "abc" {
		t.Errorf("%q, %v", data, err)
	}
}

func TestAFolderThatCannotBeMadeIsAnError(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := album.At(filepath.Join(file, "photos")).Keep(abc, "jpeg", []byte("abc")); err == nil {
		t.Error("kept below a file")
	}
}

func TestACopyFollowsNoLinkAndWhatWasLeftHalfWrittenIsCleaned(t *testing.T) {
	from, to := filepath.Join(t.TempDir(), "a [1]*"), filepath.Join(t.TempDir(), "b")
	f := album.At(from)
	if err := f.Keep(abc, "jpeg", []byte("abc")); err != nil {
		t.Fatal(err)
	}
	secret := filepath.Join(t.TempDir(), "secret")
	half := filepath.Join(from, "x.coming.tmp")
	os.WriteFile(secret, []byte("of another folder"), 0o600)
	os.WriteFile(half, nil, 0o600)
	if err := os.Symlink(secret, filepath.Join(from, strings.Repeat("0", 64)+".jpg")); err != nil {
		t.Fatal(err)
	}
	if err := f.CopyTo(t.Context(), album.At(to)); err != nil {
		t.Fatal(err)
	}
	if names, _ := os.ReadDir(to); len(names) != 1 {
		t.Errorf("copied %v", names)
	}
	f.Clean()
	if _, err := os.Lstat(half); err == nil {
		t.Error("what a crash left stays")
	}
}
