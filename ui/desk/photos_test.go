package desk_test

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/png"
	"slices"
	"strings"
	"testing"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// album keeps photographs in memory; full is what every write then fails with.
type album struct {
	lots   map[int64][]lot.Photo
	labels []string
	files  map[string][]byte
	full   error
}

func (a *album) Photos(_ context.Context, id int64) ([]lot.Photo, error) {
	return slices.Clone(a.lots[id]), nil
}

func (a *album) SavePhotos(_ context.Context, id int64, label string, photos []lot.Photo) error {
	if a.full == nil {
		a.lots[id], a.labels = photos, append(a.labels, label)
	}
	return a.full
}

func (a *album) KeepFile(hash, kind string, data []byte) error {
	if a.full == nil {
		a.files[hash+kind] = data
	}
	return a.full
}

func (a *album) KeptFile(hash, kind string) ([]byte, error) {
	data, there := a.files[hash+kind]
	if !there {
		return nil, errors.New("gone")
	}
	return data, nil
}

func withAlbum(t *testing.T) (*desk.Desk, *album, desk.State) {
	t.Helper()
	d, _ := newDesk()
	a := &album{lots: map[int64][]lot.Photo{}, files: map[string][]byte{}}
	d.Album = a
	return d, a, d.NewLot(t.Context(), d.Load(t.Context()))
}

// pictureOf returns a PNG, another one for each n.
func pictureOf(t *testing.T, n int) []byte {
	t.Helper()
	img := image.NewGray(image.Rect(0, 0, 600, 300))
	img.Pix[n] = 255
	var out bytes.Buffer
	if err := png.Encode(&out, img); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

func kept(t *testing.T, d *desk.Desk, numbers ...int) desk.Kept {
	t.Helper()
	var k desk.Kept
	for _, n := range numbers {
		p, err := d.KeepPhoto("a.png", pictureOf(t, n))
		if err != nil {
			t.Fatal(err)
		}
		k.Photos = append(k.Photos, p)
	}
	return k
}

func TestPhotosAreAddedOnceAndPinned(t *testing.T) {
	d, a, s := withAlbum(t)
	k := kept(t, d, 1, 2)
	k.Refused = []string{"c.heic: HEIC.", "d: no."}
	s = d.AddPhotos(t.Context(), s, s.Open.ID, k, "12", lot.After)
	if len(s.Open.Photos) != 2 || s.Open.Photos[1].Area != "12" || s.Open.Photos[0].Stage != lot.After || s.Open.Photos[0].Width != 600 {
		t.Fatalf("%+v", s.Open.Photos)
	}
	if want := "2 photos added. Not added: c.heic: HEIC. (and 1 more)"; s.Trouble != want || a.labels[0] != "add 2 photos" {
		t.Errorf("%q, %q", s.Trouble, a.labels)
	}
	s = d.AddPhotos(t.Context(), s, s.Open.ID, kept(t, d, 2, 3), "", lot.Before)
	if want := "1 photo added. 1 photo the lot had already."; s.Notice != want || len(s.Open.Photos) != 3 {
		t.Errorf("%q, %d photos", s.Notice, len(s.Open.Photos))
	}
	if again := d.OpenLot(t.Context(), s, s.Open.ID); len(again.Open.Photos) != 3 {
		t.Errorf("opened again: %d photos", len(again.Open.Photos))
	}
}

// Photographs that come after the lot was closed or another opened are kept all the same, and do not show there.
func TestLatePhotosGoToTheirLot(t *testing.T) {
	d, a, s := withAlbum(t)
	first := s.Open.ID
	s = d.NewLot(t.Context(), s)
	s = d.AddPhotos(t.Context(), s, first, kept(t, d, 1), "", lot.Before)
	if len(s.Open.Photos) != 0 || len(a.lots[first]) != 1 {
		t.Errorf("open: %d, its own: %d", len(s.Open.Photos), len(a.lots[first]))
	}
	if s = d.AddPhotos(t.Context(), d.CloseLot(t.Context(), s), first, kept(t, d, 2), "", lot.Before); len(a.lots[first]) != 2 {
		t.Errorf("with no lot open: %+v", s)
	}
}

func TestWhatIsSaidOfAPhoto(t *testing.T) {
	d, a, s := withAlbum(t)
	ctx := t.Context()
	s = d.AddPhotos(ctx, s, s.Open.ID, kept(t, d, 1, 2), "12", lot.Before)
	before, hash := s, s.Open.Photos[0].Hash
	s = d.Caption(ctx, s, hash, "bent")
	s = d.Pin(ctx, s, hash, "engine_bay")
	s = d.SetStage(ctx, s, hash, lot.After)
	if p := s.Open.Photos[0]; p.Caption != "bent" || p.Area != "engine_bay" || p.Stage != lot.After || before.Open.Photos[0].Caption != "" {
		t.Errorf("%+v, before %+v", p, before.Open.Photos[0])
	}
	s = d.RemovePhoto(ctx, s, hash)
	if len(s.Open.Photos) != 1 || s.Open.Photos[0].Hash == hash {
		t.Errorf("%+v", s.Open.Photos)
	}
	if want := "add 2 photos, caption of a photo, photo of engine bay, photo taken after the work, remove photo"; strings.Join(a.labels, ", ") != want {
		t.Errorf("steps %q", a.labels)
	}
	if s = d.Caption(ctx, s, hash, "gone"); !strings.Contains(s.Trouble, "no such photo") {
		t.Errorf("%q", s.Trouble)
	}
}

func TestPhotosThatCannotBeSavedAreNotShown(t *testing.T) {
	d, a, s := withAlbum(t)
	k := kept(t, d, 1)
	a.full = errors.New("the disk is full")
	if after := d.AddPhotos(t.Context(), s, s.Open.ID, k, "", lot.Before); !strings.Contains(after.Trouble, "the disk is full") || len(after.Open.Photos) != 0 {
		t.Errorf("%+v", after)
	}
	if _, err := d.KeepPhoto("b.png", pictureOf(t, 9)); err == nil {
		t.Error("kept on a full disk")
	}
	a.full = nil
	k = desk.Kept{}
	for n := range desk.MostPhotos + 1 {
		k.Photos = append(k.Photos, lot.Photo{Hash: strings.Repeat("x", n)})
	}
	if after := d.AddPhotos(t.Context(), s, s.Open.ID, k, "", lot.Before); !strings.Contains(after.Trouble, "a lot can have 300") {
		t.Errorf("%q", after.Trouble)
	}
	if _, err := d.KeepPhoto("table.csv", []byte("price")); err == nil || !strings.Contains(err.Error(), "no JPEG") {
		t.Errorf("%v", err)
	}
	d.Album = nil
	if _, err := d.KeepPhoto("a.png", pictureOf(t, 1)); err == nil {
		t.Error("kept without an album")
	}
}

func TestASmallPictureIsMadeAnewWhereItIsGone(t *testing.T) {
	d, a, _ := withAlbum(t)
	p := kept(t, d, 1).Photos[0]
	for range 2 {
		data, err := d.SmallPhoto(p)
		if err != nil {
			t.Fatal(err)
		}
		if size, kind, err := image.DecodeConfig(bytes.NewReader(data)); err != nil || kind != "jpeg" || size.Width != 240 || size.Height != 120 {
			t.Errorf("%s %+v, %v", kind, size, err)
		}
		delete(a.files, p.Hash+"small")
	}
	clear(a.files)
	if _, err := d.SmallPhoto(p); err == nil || !strings.Contains(err.Error(), "gone") {
		t.Errorf("without its file: %v", err)
	}
}

func TestABillIsKeptAsPictureOrPDF(t *testing.T) {
	d, a, s := withAlbum(t)
	p := &press{}
	d.Press = p
	hash, err := d.KeepBill(pictureOf(t, 5))
	if err != nil || a.files[hash+"png"] == nil {
		t.Fatalf("%q, %v", hash, err)
	}
	pdf, err := d.KeepBill([]byte("%PDF-1.7 and so on"))
	if err != nil || a.files[pdf+"pdf"] == nil {
		t.Fatalf("%q, %v", pdf, err)
	}
	for says, data := range map[string][]byte{"it is no PDF, and as a photo: this is no JPEG": []byte("hello"), "more than 40 MB": append([]byte("%PDF-"), make([]byte, 40<<20)...)} {
		if _, err := d.KeepBill(data); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
	o := desk.OpenBuild{Case: s.Open.Case}
	o.ID, o.Build.Receipts = s.Open.ID, []build.Receipt{{What: "Hood", Hash: hash}, {What: "Lamp", Hash: pdf}, {What: "Gas"}}
	if _, err := d.RebuiltFile(t.Context(), o, desk.Builder{Name: "Harrow Flats Works"}); err != nil || len(p.papers[0].Bills) != 1 || p.papers[0].Bills[hash] == nil {
		t.Errorf("%v, %d pictures of bills", err, len(p.papers[0].Bills))
	}
}
