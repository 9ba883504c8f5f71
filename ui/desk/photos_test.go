package desk_test

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"os"
	"strings"
	"testing"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

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

func (u *user) labels(subject book.Subject) string {
	u.t.Helper()
	r, err := u.kept.Reach(u.t.Context(), subject)
	if err != nil {
		u.t.Fatal(err)
	}
	return r.Undo
}

// lose takes a kept file away.
func (u *user) lose(hash, kind string) {
	u.t.Helper()
	path, err := u.kept.Album().Path(hash, kind)
	if err == nil {
		err = os.Remove(path)
	}
	if err != nil {
		u.t.Fatal(err)
	}
}

func TestPhotosAreAddedOnceAndPinned(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	k := kept(t, u.Desk, 1, 2)
	k.Refused = []string{"c.heic: HEIC.", "d: no."}
	s := u.do(desk.AddPhotos(id, k, "12", lot.After))
	if len(s.Open.Photos) != 2 || s.Open.Photos[1].Area != "12" || s.Open.Photos[0].Stage != lot.After || s.Open.Photos[0].Width != 600 {
		t.Fatalf("%+v", s.Open.Photos)
	}
	if want := "2 photos added. Not added: c.heic: HEIC. (and 1 more)"; s.Trouble != want || s.Reach.Undo != "add 2 photos" {
		t.Errorf("%q, %+v", s.Trouble, s.Reach)
	}
	s = u.well(desk.AddPhotos(id, kept(t, u.Desk, 2, 3), "", lot.Before))
	if want := "1 photo added. 1 photo the lot had already."; s.Notice != want || len(s.Open.Photos) != 3 {
		t.Errorf("%q, %d photos", s.Notice, len(s.Open.Photos))
	}
	if s = u.well(desk.OpenLot(id)); len(s.Open.Photos) != 3 {
		t.Errorf("opened again: %d photos", len(s.Open.Photos))
	}
}

// Photographs that come after the lot was closed or another opened are kept all the same, and do not show there.
func TestLatePhotosGoToTheirLot(t *testing.T) {
	u := newUser(t)
	first := u.newLot()
	s := u.well(desk.NewLot(), desk.AddPhotos(first, kept(t, u.Desk, 1), "", lot.Before))
	if len(s.Open.Photos) != 0 || len(u.lot(first).Photos) != 1 {
		t.Errorf("open: %d, its own: %d", len(s.Open.Photos), len(u.lot(first).Photos))
	}
	if u.well(desk.Go(desk.Board), desk.AddPhotos(first, kept(t, u.Desk, 2), "", lot.Before)); len(u.lot(first).Photos) != 2 {
		t.Errorf("with no lot open: %d", len(u.lot(first).Photos))
	}
	if got := u.labels(book.Worksheet(first)); got != "add 1 photo" {
		t.Errorf("the lot's own history has %q", got)
	}
}

func TestWhatIsSaidOfAPhoto(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	u.well(desk.AddPhotos(id, kept(t, u.Desk, 1, 2), "12", lot.Before))
	before, hash := u.s, u.s.Open.Photos[0].Hash
	for words, action := range map[string]desk.Action{"caption of a photo": desk.Caption(hash, "bent"),
		"photo of engine bay": desk.Pin(hash, "engine_bay"), "photo taken after the work": desk.SetStage(hash, lot.After)} {
		if s := u.well(action); s.Reach.Undo != words {
			t.Errorf("the step is %q, want %q", s.Reach.Undo, words)
		}
	}
	if p := u.s.Open.Photos[0]; p.Caption != "bent" || p.Area != "engine_bay" || p.Stage != lot.After ||
		before.Open.Photos[0].Caption != "" {
		t.Errorf("%+v, before %+v", p, before.Open.Photos[0])
	}
	if s := u.well(desk.RemovePhoto(hash)); len(s.Open.Photos) != 1 || s.Open.Photos[0].Hash == hash || s.Reach.Undo != "remove photo" {
		t.Errorf("%+v", s.Open.Photos)
	}
	if s := u.do(desk.Caption(hash, "gone")); !strings.Contains(s.Trouble, "no such photo") {
		t.Errorf("%q", s.Trouble)
	}
}

func TestPhotosThatCannotBeSavedAreNotShown(t *testing.T) {
	u := newUser(t)
	id := u.newLot()
	k := kept(t, u.Desk, 1)
	u.kept.broken = errors.New("the disk is full")
	if s := u.do(desk.AddPhotos(id, k, "", lot.Before)); !strings.Contains(s.Trouble, "the disk is full") || len(s.Open.Photos) != 0 {
		t.Errorf("%+v", s)
	}
	if _, err := u.KeepPhoto("b.png", pictureOf(t, 9)); err == nil {
		t.Error("kept on a full disk")
	}
	u.kept.broken, k = nil, desk.Kept{}
	for n := range desk.MostPhotos + 1 {
		k.Photos = append(k.Photos, lot.Photo{Hash: strings.Repeat("x", n)})
	}
	if s := u.do(desk.AddPhotos(id, k, "", lot.Before)); !strings.Contains(s.Trouble, "a lot can have 300") {
		t.Errorf("%q", s.Trouble)
	}
	if _, err := u.KeepPhoto("table.csv", []byte("price")); err == nil || !strings.Contains(err.Error(), "no JPEG") {
		t.Errorf("%v", err)
	}
}

func TestASmallPictureIsMadeAnewWhereItIsGone(t *testing.T) {
	u := newUser(t)
	p := kept(t, u.Desk, 1).Photos[0]
	for range 2 {
		data, err := u.SmallPhoto(p)
		if err != nil {
			t.Fatal(err)
		}
		if size, kind, err := image.DecodeConfig(bytes.NewReader(data)); err != nil || kind != "jpeg" || size.Width != 240 ||
			size.Height != 120 {
			t.Errorf("%s %+v, %v", kind, size, err)
		}
		u.lose(p.Hash, "small")
	}
	u.lose(p.Hash, p.Kind)
	if _, err := u.SmallPhoto(p); err == nil || !strings.Contains(err.Error(), "gone") {
		t.Errorf("without its file: %v", err)
	}
}

func TestABillIsKeptAsPictureOrPDF(t *testing.T) {
	u := newUser(t)
	p := &press{}
	u.Press = p
	keeps := func(data []byte, kind string) string {
		hash, err := u.KeepBill(data)
		if err == nil {
			_, err = u.kept.KeptFile(hash, kind)
		}
		if err != nil {
			t.Fatal(err)
		}
		return hash
	}
	hash, pdf := keeps(pictureOf(t, 5), "png"), keeps([]byte("%PDF-1.7 and so on"), "pdf")
	for says, data := range map[string][]byte{"it is no PDF, and as a photo: this is no JPEG": []byte("hello"),
		"more than 40 MB": append([]byte("%PDF-"), make([]byte, 40<<20)...)} {
		if _, err := u.KeepBill(data); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
	o := desk.OpenBuild{}
	o.ID, o.Build.Receipts = u.newLot(), []build.Receipt{{What: "Hood", Hash: hash}, {What: "Lamp", Hash: pdf}, {What: "Gas"}}
	if _, err := u.RebuiltFile(t.Context(), o, desk.Builder{Name: "Harrow Flats Works"}); err != nil || len(p.papers[0].Bills) != 1 ||
		p.papers[0].Bills[hash] == nil {
		t.Errorf("%v, %d pictures of bills", err, len(p.papers[0].Bills))
	}
}

// Photographs arrive when they are read: the step is of the build whose they are, whatever is open by then.
func TestPhotosThatArriveLateAreAStepOfTheirOwnBuild(t *testing.T) {
	u := newUser(t)
	ids := u.add(sound("1"), sound("2"))
	u.well(desk.MarkLots(lot.Won, ids...), desk.Go(desk.Builds), desk.ShowBuild(ids[0]))
	late := kept(t, u.Desk, 1)
	late.Of = u.s.Photographing()
	arrive := desk.AddPhotos(ids[0], late, "", lot.After)
	for name, away := range map[string][]desk.Action{
		"another build": {desk.ShowBuild(ids[1])}, "a worksheet": {desk.OpenLot(ids[1])}, "the list": {desk.CloseBuild()},
	} {
		u.well(append(away, arrive)...)
		if u.s.Reach.Undo == "add 1 photo" || len(u.lot(ids[0]).Photos) != 1 {
			t.Errorf("%s: undo would %q", name, u.s.Reach.Undo)
		}
		u.well(desk.Go(desk.Builds), desk.ShowBuild(ids[0]))
		if u.well(desk.Undo()); len(u.lot(ids[0]).Photos) != 0 || u.s.Reach.Redo != "add 1 photo" {
			t.Errorf("%s: their own build's undo leaves %d photos, redo would %q", name, len(u.lot(ids[0]).Photos), u.s.Reach.Redo)
		}
		if u.well(desk.Redo()); len(u.lot(ids[0]).Photos) != 1 {
			t.Errorf("%s: done again, there are %d photos", name, len(u.lot(ids[0]).Photos))
		}
		u.well(desk.Undo())
	}
}
