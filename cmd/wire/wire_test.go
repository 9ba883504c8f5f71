package wire_test

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"walkline/cmd/wire"
	"walkline/cmd/wire/trial"
	"walkline/store"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// open returns a desk over a store in a file of its own.
func open(t *testing.T) (*desk.Desk, *store.Store) {
	t.Helper()
	book := trial.Store(t)
	d, err := wire.NewDesk(book)
	if err != nil {
		t.Fatal(err)
	}
	return d, book
}

func TestDemoSaleIsValuedOnTheBoard(t *testing.T) {
	d, _ := open(t)
	s := d.Do(t.Context(), d.Load(t.Context()), desk.LoadDemo())
	if s.Trouble != "" || len(s.Entries) != 3 {
		t.Fatal(s.Trouble, len(s.Entries))
	}
	var decisions []string
	for _, e := range s.Entries {
		decisions = append(decisions, e.Answer.Decision)
	}
	if got := strings.Join(decisions, " "); got != "bid bid do_not_bid" {
		t.Errorf("the demo's lots say %s", got)
	}
}

func TestALotThatIsBidOnHasItsPredictionFrozen(t *testing.T) {
	ctx := t.Context()
	d, book := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.LoadDemo())
	id := s.Entries[0].ID
	for _, a := range []desk.Action{desk.MarkLots(lot.Bid, id), desk.OpenLot(id),
		desk.EditLot("model year", func(c *valuation.Case) { c.Lot.ModelYear = 2001 })} {
		if s = d.Do(ctx, s, a); s.Trouble != "" {
			t.Fatal(s.Trouble)
		}
		if frozen, doubts, err := book.FrozenCases(ctx); err != nil || len(frozen) != 1 || frozen[id].Lot.ModelYear != 2019 {
			t.Errorf("%q: frozen are %d, of %d, %v %v", a.Words(), len(frozen), frozen[id].Lot.ModelYear, doubts, err)
		}
	}
}

func TestATableIsImportedTwiceWithoutDoubling(t *testing.T) {
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.NewLot())
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "prices", "midsize2009_public.csv"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"293 rows read: 293 new, 0 the same, 0 changed, 0 refused.",
		"293 rows read: 0 new, 293 the same, 0 changed, 0 refused."} {
		sheet, err := d.OpenSheet(ctx, data, desk.Opening{Currency: "USD"})
		if err != nil {
			t.Fatal(err)
		}
		var refused []desk.Refusal
		if s, refused = takeIn(ctx, d, s, sheet); s.Notice != want || len(refused) > 0 {
			t.Errorf("%q %q %v, want %q", s.Notice, s.Trouble, refused, want)
		}
	}
	if n := len(s.Open.Case.Resale.Rows); n != 293 {
		t.Errorf("%d rows", n)
	}
}

func TestRefusedRowsSetRightComeInAsTheirTableDid(t *testing.T) {
	ctx := context.Background()
	d, _ := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.NewLot())
	sheet, err := d.OpenSheet(ctx, []byte("what;km;when\n12.500;95.300;03.11.2026\n-5;80.000;12.11.2026\n"), desk.Opening{Currency: "USD"})
	if err != nil {
		t.Fatal(err)
	}
	sheet.Stated = desk.Stated{Match: []string{"price", "mileage", "date"}, Marks: "1.234,50", Dates: "day first", Unit: "km",
		Distance: "km", Kind: "sold", Currency: "USD"}
	s, refused := takeIn(ctx, d, s, sheet)
	if len(refused) != 1 || len(s.Open.Case.Resale.Rows) != 1 {
		t.Fatalf("%q %q %v", s.Notice, s.Trouble, refused)
	}
	data, err := wire.Importer{}.Refused(sheet)
	if err != nil {
		t.Fatal(err)
	}
	again, err := d.OpenSheet(ctx, []byte(strings.Replace(string(data), "-5", "9.500", 1)), desk.Opening{Currency: "USD"})
	if err != nil || again.Stated.Dates != "day first" {
		t.Fatalf("%+v, %v", again, err)
	}
	s, refused = takeIn(ctx, d, s, again)
	if rows := s.Open.Case.Resale.Rows; len(refused) > 0 || len(rows) != 2 || rows[1].Price != 950000 {
		t.Errorf("%s\n%q %q %v %+v", data, s.Notice, s.Trouble, refused, rows)
	}
}

func TestATableInAnotherCurrencyIsRefused(t *testing.T) {
	d, _ := open(t)
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "prices", "hatch2004_public.csv"))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := d.OpenSheet(context.Background(), data, desk.Opening{Currency: "USD"}); err == nil || !strings.Contains(err.Error(), "EUR") {
		t.Errorf("prices in EUR were taken for a lot in USD: %v", err)
	}
}

// Photographs survive a restart, and so does their undo; their files lie in a folder beside the store.
func TestPhotosAreKeptBesideTheStore(t *testing.T) {
	ctx := context.Background()
	d, book := open(t)
	s := d.Do(ctx, d.Load(ctx), desk.NewLot())
	var data bytes.Buffer
	if err := png.Encode(&data, image.NewGray(image.Rect(0, 0, 40, 30))); err != nil {
		t.Fatal(err)
	}
	p, err := d.KeepPhoto("front.png", data.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	id := s.Open.ID
	s = d.Do(ctx, s, desk.AddPhotos(id, desk.Kept{Photos: []lot.Photo{p}}, "12", lot.Before))
	s = d.Do(ctx, s, desk.RemovePhoto(p.Hash))
	if s.Trouble != "" || len(s.Open.Photos) != 0 {
		t.Fatal(s.Trouble, s.Open.Photos)
	}
	again, err := wire.NewDesk(book)
	if err != nil {
		t.Fatal(err)
	}
	s = again.Do(ctx, again.Do(ctx, again.Load(ctx), desk.OpenLot(id)), desk.Undo())
	if s.Notice != "Undone: remove photo." || len(s.Open.Photos) != 1 || s.Open.Photos[0].Area != "12" {
		t.Fatalf("%q, %+v", s.Notice, s.Open.Photos)
	}
	file, err := again.PhotoFile(s.Open.Photos[0])
	if err != nil || !bytes.Equal(file, data.Bytes()) {
		t.Errorf("the file came back with %d bytes, %v", len(file), err)
	}
}

// takeIn takes the rows of a sheet in for the open lot as the window does, and returns those that are refused.
func takeIn(ctx context.Context, d *desk.Desk, s desk.State, sheet desk.Sheet) (desk.State, []desk.Refusal) {
	taken, err := d.Take(ctx, s, sheet)
	return d.TakenIn(ctx, s, taken, err), taken.Refused
}
