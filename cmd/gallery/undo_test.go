package main

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"fyne.io/fyne/v2"

	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/ui/task"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/valuation/build"
	"walkline/valuation/lot"
	"walkline/valuation/money"
	"walkline/valuation/prob"
)

// deed is one action.
type deed struct {
	name   string
	action desk.Action
}

// deeds are one action of each kind that a build has.
func deeds(photo lot.Photo, id int64) []deed {
	price := money.Amount(1_200_000)
	edit := func(change func(*build.Build)) desk.Action { return desk.EditBuild("a deed", change) }
	return []deed{
		{"a bill", edit(func(b *build.Build) {
			b.Receipts = append(b.Receipts, build.Receipt{Kind: "part", What: "Door", Amount: 9000})
		})},
		{"a file", edit(func(b *build.Build) { b.Receipts[0].SetFiles([]build.File{{Name: "a.pdf", Hash: "a"}}) })},
		{"hours", edit(func(b *build.Build) { b.Hours = append(b.Hours, build.Work{Trade: "body", Hours: 2}) })},
		{"work finished", edit(func(b *build.Build) { b.Finish("another", true) })},
		{"damage answered", edit(func(b *build.Build) { b.See("another", build.Found) })},
		{"a find", edit(func(b *build.Build) {
			b.Unlisted = append(b.Unlisted, build.Unlisted{ID: b.FreeID(), Name: "Mount", Trade: "body", Cost: prob.Certain(90)})
		})},
		{"photos", desk.AddPhotos(id, desk.Kept{Photos: []lot.Photo{photo}}, "", lot.After)},
		{"a charge", edit(func(b *build.Build) { b.Charges = append(b.Charges, build.Charge{Name: "Late", Amount: 2500}) })},
		{"the hammer price", desk.SetHammer(&price)},
		{"a day", edit(func(b *build.Build) { b.Dates.Finished = "2026-11-20" })},
		{"another way out", edit(func(b *build.Build) { b.Otherwise.AsIs = &prob.Three{Low: 1, Likely: 2, High: 3} })},
		{"the sale", edit(func(b *build.Build) { b.Outcome, b.Sale.Price = build.Sold, &price })},
		{"an answer", desk.AnswerAll(desk.Question{About: desk.OpenLines, IDs: []string{"x"}})},
		{"closed as it is", desk.CloseAsItIs()},
	}
}

// A decision on a factor and an import are taken back on their own pages after every kind of action of a build, which all stay; and those
// are taken back on the build's page, one by one.
func TestADecisionAndAnImportAreTakenBackOnTheirPages(t *testing.T) {
	s := opened(t, task.Inline{})
	s.window.LoadDemo()
	if err := s.past(side); err != nil {
		t.Fatal(err)
	}
	id, err := s.won("14")
	if err != nil {
		t.Fatal(err)
	}
	photo, err := s.desk.KeepPhoto("a.jpg", sample(t, 1))
	if err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(t.TempDir(), "past.csv")
	if err := os.WriteFile(path, []byte("id,make,bought,price_paid,sold_for\n1,Morrowby,2025-03-01,4200,11900\n"), 0o600); err != nil {
		t.Fatal(err)
	}
	s.press(fyne.KeyU)
	s.tap(t, "Import past buys…")
	seen.All[*widgets.TextEntry](s.top())[0].SetText(path)
	s.tap(t, "Read")
	s.tap(t, "Import")
	s.press(fyne.KeyT)
	s.window.Do(desk.Accept("hours/body"))
	s.wants(t, "is in force")
	s.window.Do(desk.GoToBuild(id))
	stages := []book.Lot{s.lotOf(t, id)}
	for _, do := range deeds(photo, id) {
		s.window.Do(do.action)
		now := s.lotOf(t, id)
		if last := stages[len(stages)-1]; reflect.DeepEqual(now.Build, last.Build) && len(now.Photos) == len(last.Photos) {
			t.Fatalf("%s changes nothing", do.name)
		}
		stages = append(stages, now)
	}
	done := stages[len(stages)-1]
	s.press(fyne.KeyT)
	s.undo()
	if now := s.desk.Load(t.Context()).Factors; !now.Empty() {
		t.Errorf("the factor is still in force: %+v", now)
	}
	s.press(fyne.KeyU)
	s.window.Do(desk.CloseBuild())
	s.undo()
	if list, err := s.book.Builds(t.Context()); err != nil || len(list) != pastBuys+1 {
		t.Errorf("after undo there are %d buys, %v", len(list), err)
	}
	if now := s.lotOf(t, id); !reflect.DeepEqual(now.Build, done.Build) || len(now.Photos) != len(done.Photos) {
		t.Errorf("the build was changed with them: %+v", now.Build)
	}
	s.window.Do(desk.ShowBuild(id))
	for i := len(stages) - 2; i >= 0; i-- {
		s.undo()
		if now := s.lotOf(t, id); !reflect.DeepEqual(now.Build, stages[i].Build) || len(now.Photos) != len(stages[i].Photos) {
			t.Errorf("undone, step %d is not as it was: %+v", i, now.Build)
		}
	}
}
