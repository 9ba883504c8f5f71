package desk_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"walkline/cmd/wire/trial"
	"walkline/store/book"
	"walkline/ui/desk"
	"walkline/valuation"
	"walkline/valuation/build"
	"walkline/valuation/learn"
	"walkline/valuation/lot"
	"walkline/valuation/prob"
	"walkline/valuation/repair"
	"walkline/valuation/resale"
)

// The two lots of the matrix: one to be bid for, one that is won.
const (
	tobid = 1
	built = 2
)

// scenes are the places in which every deed is tried, and whose history undo walks there.
var scenes = []struct {
	name    string
	subject book.Subject
	way     []desk.Action
}{
	{"Board", book.Board, []desk.Action{desk.Go(desk.Board)}},
	{"Worksheet", book.Worksheet(tobid), []desk.Action{desk.OpenLot(tobid)}},
	{"Why", book.Worksheet(tobid), []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Why)}},
	{"Live", book.Sale, []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Live), desk.Call(250000)}},
	{"Builds", book.Buys, []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Builds), desk.CloseBuild()}},
	{"one build", book.Build(built), []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Builds), desk.ShowBuild(built)}},
	{"Track record", book.Record, []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Record)}},
	{"House rules", book.Bench("House rules"), []desk.Action{desk.OpenLot(tobid), desk.Go(desk.Bench), desk.ShowSection("House rules")}},
	{"Jurisdictions", book.Bench("Jurisdictions"), []desk.Action{desk.Go(desk.Board), desk.Go(desk.Bench),
		desk.ShowSection("Jurisdictions")}},
	{"Comparables", book.Bench(desk.ShelfSection), []desk.Action{desk.Go(desk.Board), desk.Go(desk.Bench),
		desk.ShowSection(desk.ShelfSection)}},
	{"Sale plan", desk.Planning, []desk.Action{desk.OpenLot(tobid), desk.Go(desk.SalePlan)}},
}

// deed is something that a user does; n tells one time from the next.
type deed struct {
	name string
	do   func(u *user, n int)
}

// deeds are all that a user can do that is kept, undo and redo apart.
func deeds() []deed {
	three := 3
	photo := lot.Photo{Hash: strings.Repeat("a", 64), Kind: "png", Name: "a.png", Width: 6, Height: 3, Stage: lot.Before}
	first := strings.Repeat("b", 64)
	second := photo // two of them: the step says so, and is told from the one before it, which added one
	second.Hash = strings.Repeat("c", 64)
	var list []deed
	for name, action := range map[string]desk.Action{
		"new lot": desk.NewLot(), "demo": desk.LoadDemo(), "duplicate": desk.DuplicateLots(tobid), "archive": desk.ArchiveLots(true, tobid),
		"archive two": desk.ArchiveLots(true, tobid, built), "move": desk.MoveLots("Lower Pans", "2026-12-11", tobid, built),
		"remove": desk.RemoveLots(tobid), "mark passed": desk.MarkLots(lot.Passed, tobid), "mark won": desk.MarkLots(lot.Won, tobid),
		"mark lost": desk.MarkLots(lot.Lost, built), "edit": rename("make", "Tarn"), "take terms": desk.TakeTerms(),
		"keep terms": desk.KeepTerms(),
		"record won": desk.RecordResult(lot.Won), "record lost": desk.RecordResult(lot.Lost),
		"add photos": desk.AddPhotos(tobid, desk.Kept{Photos: []lot.Photo{photo, second}}, "12", lot.Before),
		"caption":    desk.Caption(first, "bent"), "pin": desk.Pin(first, "06"), "stage": desk.SetStage(first, lot.After),
		"remove photo": desk.RemovePhoto(first),
		"bill":         bill("bill", 18000), "hammer": desk.SetHammer(at(510000)), "rivals": rivals(10), "currency": desk.SetCurrency("EUR"),
		"charge":   desk.EditBuild("charge", func(b *build.Build) { b.Charges[0].Amount++ }),
		"own job":  desk.EditOwn("own job", func(o *valuation.Own) { o.Jobs = append(o.Jobs, hood(250)) }),
		"add pack": desk.AddPack([]byte(strings.ReplaceAll(harrowPack, "Harrow", "Other"))), "remove pack": desk.RemovePack("US-XX"),
		"sold":       desk.SetSold(&three),
		"typed row":  desk.AddComparable(resale.Row{Price: 900000, ModelYear: 2016, Make: "Tarn", Model: "Vole"}),
		"mended row": desk.TypeComparable(1, map[string]string{"price": "9,100", "model_year": "2016", "make": "Tarn"}),
		"row off":    desk.RemoveComparables("take a row off", 1),
		"accept":     desk.Accept("hours/body"),
		"restore":    desk.Restore(1),
		"tell won":   desk.TellResult(tobid, lot.Won, 450000), "remove build": desk.RemoveBuild(built),
		"own row": desk.TypeOwn(0, map[string]string{"price": "9,400", "model_year": "2015", "make": "Kettrick"}),
		"donor":   desk.PlanDonor(), "no donor": desk.LeaveDonor(),
		"fill in":           desk.FillIn("2016 Tarn Vole, 84,000 miles, salvage title"),
		"add money":         desk.EditDay("money that comes in", func(d *desk.SaleDay) { d.In = append(d.In, desk.Coming{}) }),
		"edit money":        desk.EditDay("amount coming in", func(d *desk.SaleDay) { d.In[0].Amount += 5000 }),
		"money off":         desk.EditDay("money taken off", func(d *desk.SaleDay) { d.In = d.In[1:] }),
		"money from builds": desk.TakeComing(), "past year": desk.TakePastYear(),
		"rates of later": desk.EditDay("worth of a free hour", func(d *desk.SaleDay) { d.Later.Hour += 12 }),
		"plan guesses":   desk.EditDay("first guesses", func(d *desk.SaleDay) { d.Guesses = !d.Guesses }),
		"mark two":       desk.MarkLots(lot.LookedAt, tobid, built), "duplicate two": desk.DuplicateLots(tobid, built),
		"remove two": desk.RemoveLots(tobid, built), "accept whole": desk.AcceptWhole("hours/body"),
		"work ends": desk.EditBuild("finished", func(b *build.Build) { b.Dates.Finished = "2026-12-20" }),
	} {
		list = append(list, deed{name, func(u *user, _ int) { u.do(action) }})
	}
	return append(list, tables()...)
}

// tables are the deeds that take a table in.
func tables() []deed {
	return []deed{
		deed{"run list", func(u *user, _ int) { u.enlist(runList, "Harrow Flats") }},
		deed{"results", func(u *user, _ int) {
			u.enlist("Lot,Year,Make,Model,Sold for,Currency\n14,2016,Tarn,Vole,3300,USD\n", "Harrow Flats")
		}},
		deed{"comparables", func(u *user, _ int) {
			sheet, err := u.OpenSheet(u.t.Context(), []byte(prices), desk.Opening{Currency: "USD"})
			if err != nil {
				u.t.Fatal(err)
			}
			u.s, _ = u.Apply(u.t.Context(), u.s, sheet)
		}},
		deed{"past buys", func(u *user, n int) {
			sheet, err := u.OpenPast(u.t.Context(), fmt.Appendf(nil, "id,make,bought,price_paid\nm%d,Kettrick,2025-03-01,4200\n", n),
				desk.Opening{Currency: "USD"})
			if err != nil {
				u.t.Fatal(err)
			}
			u.takePast(sheet)
		}},
	}
}

// inMatrix returns a user with the two lots, of which the first has a photograph, a comparable of its own and a donor vehicle; what there
// is for their sale day, a jurisdiction and empty catalogues; and what past buys propose.
func inMatrix(t *testing.T) (*user, []learn.Proposal) {
	return atMatrix(t, &failing{Store: trial.Store(t)})
}

func atMatrix(t *testing.T, kept *failing) (*user, []learn.Proposal) {
	u := &user{Desk: trial.Desk(kept), t: t, kept: kept}
	u.Know.Jobs.Currency, u.Know.Risks.Currency = "USD", "USD"
	u.start()
	first, c := sound("14"), sound("27")
	first.Resale.Rows = []resale.Row{{Price: 850000, ModelYear: 2016, Make: "Kettrick", Model: "Vole"}}
	first.Repair.Donor = &repair.Donor{Starter: true, Price: prob.Certain(1500), Brings: prob.Three{Low: 200, Likely: 300, High: 500}}
	c.Resale.Guess = nil
	u.add(first, c)
	u.well(desk.AddPhotos(tobid, desk.Kept{Photos: []lot.Photo{{Hash: strings.Repeat("b", 64), Kind: "png", Name: "b.png", Width: 6,
		Height: 3}}}, "12", lot.Before),
		desk.OpenLot(built), desk.Go(desk.Live), desk.Call(420000), desk.RecordResult(lot.Won), rivals(5), desk.AddPack([]byte(harrowPack)),
		desk.AddComparable(resale.Row{Price: 800000, ModelYear: 2017, Make: "Tarn", Model: "Vole"}),
		desk.EditDay("what there is", func(d *desk.SaleDay) {
			d.Cash, d.Hours, d.Bays, d.In = 1500000, 80, 2, []desk.Coming{{Day: "2027-01-04", Amount: 250000}}
		}))
	figures, err := valuation.Foretell(workshop(), u.Know, at(300000))
	if err != nil {
		t.Fatal(err)
	}
	list := make([]book.Bought, 8)
	for i := range list {
		list[i] = book.Bought{ID: int64(i + 1), State: lot.Won, Currency: "USD", Build: finished(), Foretold: &figures}
	}
	r, err := u.Learn(t.Context(), list)
	if err != nil {
		t.Fatal(err)
	}
	return u, r.Proposals
}

// foreseen has the plan of the sale day come back, where one is due: a build in hand brings money, and one was sold in the past year.
func (u *user) foreseen() {
	if of, due := u.s.PlanDue(); due {
		u.s = u.s.DayPlanned(of, desk.DayPlan{Likely: []desk.Coming{{Day: "2027-02-01", Amount: 600000, Build: built, Number: "27"}},
			Year: desk.PastYear{Builds: 1, Profit: 1200, Taken: .5}}, nil)
	}
}

// all returns what is kept, as far as a user can see it, in words that are the same for an empty list and none.
func (u *user) all() string {
	u.t.Helper()
	s := u.Load(u.t.Context())
	shelf, err := u.kept.Shelf(u.t.Context())
	if err != nil {
		u.t.Fatal(err)
	}
	var day *desk.SaleDay
	if _, err = u.kept.Setting(u.t.Context(), "sale day "+string(sound("").Lot.SaleDate), &day); err != nil {
		u.t.Fatal(err)
	}
	kept := []any{s.Shop, s.Own, s.Packs, s.Factors, shelf, day}
	for _, e := range s.Entries {
		l := u.lot(e.ID)
		l.Revision = 0
		kept = append(kept, l)
	}
	var sold *int
	_, err = u.kept.Setting(u.t.Context(), "sold in the last twelve months", &sold)
	text, wrong := json.Marshal(append(kept, sold))
	if err != nil || wrong != nil || s.Trouble != "" {
		u.t.Fatal(err, wrong, s.Trouble)
	}
	return strings.NewReplacer("[]", "null", "{}", "null").Replace(string(text))
}

// reaches returns what undo and redo would do in every history.
func (u *user) reaches() map[book.Subject]book.Reach {
	u.t.Helper()
	all := map[book.Subject]book.Reach{}
	for _, s := range scenes {
		r, err := u.kept.Reach(u.t.Context(), s.subject)
		if err != nil {
			u.t.Fatal(err)
		}
		all[s.subject] = r
	}
	return all
}

// changed names the histories that differ.
func changed(a, b map[book.Subject]book.Reach) (list []book.Subject) {
	for subject := range a {
		if a[subject] != b[subject] {
			list = append(list, subject)
		}
	}
	return list
}

// Every deed in every place is one step of one history or nothing at all; undo on the page of that history takes it back whole, redo does
// it again whole, and after a restart undo takes it back whole again. No other history moves.
func TestEveryDeedInEveryPlaceIsOneStep(t *testing.T) {
	u, proposals := inMatrix(t)
	start, n := u.all(), 0
	for _, d := range deeds() {
		kept := false
		for _, scene := range scenes {
			s := u.well(scene.way...)
			u.s = s.Learned(desk.TrackRecord{Proposals: proposals, Now: s.Factors, History: []book.Decision{{ID: 1, What: book.Refused,
				Factor: proposals[0].Key, Before: learn.Toward(s.Factors, proposals[0], 1)}}}, nil)
			u.foreseen()
			before, name := u.reaches(), d.name+" on "+scene.name
			n++
			d.do(u, n)
			after, now := u.all(), u.reaches()
			of := changed(before, now)
			if after == start && len(of) == 0 {
				continue // not to be done there
			}
			if kept = true; len(of) != 1 || after == start || u.s.Clash != nil {
				t.Fatalf("%s: steps in %q; trouble %q", name, of, u.s.Trouble)
			}
			u.backAndForth(name, of[0], start, after)
			if others := changed(before, u.reaches()); len(others) > 1 {
				t.Fatalf("%s: moved the histories %q", name, others)
			}
		}
		if !kept {
			t.Errorf("%s: is nowhere to be done", d.name)
		}
	}
}

// backAndForth takes a deed back, does it again, starts again, and takes it back, each on the page of its history.
func (u *user) backAndForth(name string, of book.Subject, start, after string) {
	u.t.Helper()
	var way []desk.Action
	for _, s := range scenes {
		if s.subject == of {
			way = s.way
		}
	}
	for i, step := range []struct {
		action desk.Action
		want   string
	}{{desk.Undo(), start}, {desk.Redo(), after}, {desk.Undo(), start}} {
		if i == 2 {
			u.start()
		}
		for _, a := range way {
			u.do(a) // a lot that the deed removed is not to be opened
		}
		if u.do(step.action); u.s.Trouble != "" || u.all() != step.want {
			u.t.Fatalf("%s, then %q: %q\nkept %s\nwant %s", name, u.s.Notice, u.s.Trouble, u.all(), step.want)
		}
	}
}
