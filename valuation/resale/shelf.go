package resale

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"walkline/valuation/hedonic"
	"walkline/valuation/money"
)

// mostDrawn bounds the rows that a vehicle draws from a shelf, and mostYears how many model years they may lie off. Ours: the fit counts
// rows further off for next to nothing.
const (
	mostDrawn = 200
	mostYears = 8
)

// Kinship is how near the model of a row is to that of a vehicle.
type Kinship int

// The kinds.
const (
	Other Kinship = iota
	Kin           // one model's words begin the other's: "Pell" and "Pell LX"
	Own
)

// KinOf returns how near the model of a row is to a vehicle of that make and model. Where one of the two names no make, the model decides.
func (r Row) KinOf(maker, model string) Kinship {
	a, b := hedonic.Key(model), hedonic.Key(r.Model)
	ours, its := hedonic.Key(maker), hedonic.Key(r.Make)
	switch {
	case a == "" || ours != "" && its != "" && ours != its:
		return Other
	case a == b:
		return Own
	case b != "" && (strings.HasPrefix(a, b+" ") || strings.HasPrefix(b, a+" ")):
		return Kin
	}
	return Other
}

// Beside is [Row.KinOf] for a row in the vehicle's own table: one that names no model, and no other make, is taken for the vehicle's
// model, since it was put beside it.
func (r Row) Beside(maker, model string) Kinship {
	if r.Nameless(maker) && hedonic.Key(model) != "" {
		return Own
	}
	return r.KinOf(maker, model)
}

// Nameless reports whether a row names no model, and no other make than that.
func (r Row) Nameless(maker string) bool {
	its := hedonic.Key(r.Make)
	return hedonic.Key(r.Model) == "" && (its == "" || its == hedonic.Key(maker))
}

// madeAlike returns the rows with the make of s in those of its model and kin, which may leave it out, and with the model of s in those
// that name none.
func madeAlike(rows []Row, s Subject) []Row {
	rows = slices.Clone(rows)
	for i, r := range rows {
		if r.Beside(s.Make, s.Model) != Other {
			rows[i].Make = s.Make
			if r.Nameless(s.Make) {
				rows[i].Model = s.Model
			}
		}
	}
	return rows
}

// Draw returns the places in a shelf of the rows that tell about s, those nearest to it first: of its own model, then of its kin, by
// model year, distance, and the day. Rows of other models are not drawn: what they teach is in [ShopMarket]. A row that can't be used is
// not drawn either, but one that is left out by hand is, since that is to be seen.
func Draw(shelf []Row, s Subject) []int {
	type drawn struct {
		at, off  int
		kin      Kinship
		distance float64
	}
	var all []drawn
	for i, r := range shelf {
		kin := r.KinOf(s.Make, s.Model)
		off := max(r.ModelYear-s.ModelYear, s.ModelYear-r.ModelYear)
		r.Excluded = false
		if kin == Other || s.ModelYear == 0 || off > mostYears || !r.Usable() {
			continue
		}
		d := drawn{i, off, kin, math.Inf(1)}
		if r.DistanceMi != nil {
			d.distance = *r.DistanceMi
		}
		all = append(all, d)
	}
	slices.SortStableFunc(all, func(a, b drawn) int {
		return cmp.Or(cmp.Compare(b.kin, a.kin), cmp.Compare(a.off, b.off), cmp.Compare(a.distance, b.distance),
			strings.Compare(string(shelf[b.at].Date), string(shelf[a.at].Date)))
	})
	all = all[:min(len(all), mostDrawn)]
	places := make([]int, len(all))
	for i, d := range all {
		places[i] = d.at
	}
	return places
}

// How a shop's own market is fitted. Ours.
const (
	leastModels  = 5  // from which it can be told how models differ: with fewer, prices of one market were foretold worse
	leastOfModel = 8  // rows of a model below which it says too little of slopes
	mostModels   = 24 // those with the most rows are fitted
	tablesEach   = 2  // tables of a model, around vehicles of different years
	tableRows    = 40 // nearest in model year
	shopSweeps   = 4
	startWorth   = 3 // models that the starter prior counts as: it fades as more models come
)

// ShopName is the name of the market that a shop's own rows teach.
const ShopName = "own shelf"

// ShopMarket returns the market that all rows of a shelf in one currency teach: what its models have in common (slopes of age and
// mileage, spreads), by [Refine] over tables of each model, over the market of the starter prior that counts as a few models. It reports
// false where fewer than five models have rows enough. Branded rows teach nothing here, and of asked and sold prices the kind that a model
// has more of does, since both are taken for prices of one kind.
func ShopMarket(rows []Row, p Prior, cur money.Currency) (Market, bool) {
	groups := shopModels(rows)
	if len(groups) < leastModels || len(p.Markets) == 0 {
		return Market{}, false
	}
	var tables []Sample
	for _, g := range groups {
		tables = append(tables, shopTables(g)...)
	}
	start := startOf(p, cur)
	m := start
	for range shopSweeps {
		m, _ = Refine(tables, m, cur)
	}
	m.Name, m.Currency, m.Models, m.OLS = ShopName, cur.Code, len(groups), nil
	return shrunk(m, start, float64(len(groups))), true
}

// startOf returns the market to begin from: that of no currency in particular, or else the first.
func startOf(p Prior, cur money.Currency) Market {
	for _, m := range p.Markets {
		if m.Currency == "" {
			return m
		}
	}
	return p.Markets[0]
}

// shopModels returns the rows that teach, by model, the models with the most rows first.
func shopModels(rows []Row) [][]Row {
	type group struct {
		name string
		rows [2][]Row // asked, sold
	}
	at, all := map[string]int{}, []group{}
	for _, r := range rows {
		name := hedonic.Key(r.Make + " " + r.Model)
		if name == "" || !r.Usable() || r.Mileage == nil || brandOf(r.Title) != "" {
			continue
		}
		i, known := at[name]
		if !known {
			i = len(all)
			at[name], all = i, append(all, group{name: name})
		}
		kind := 0
		if strings.EqualFold(strings.TrimSpace(r.Kind), "sold") {
			kind = 1
		}
		all[i].rows[kind] = append(all[i].rows[kind], r)
	}
	var out [][]Row
	slices.SortFunc(all, func(a, b group) int { return strings.Compare(a.name, b.name) })
	for _, g := range all {
		most := g.rows[0]
		if len(g.rows[1]) > len(most) {
			most = g.rows[1]
		}
		if len(most) >= leastOfModel {
			out = append(out, most)
		}
	}
	slices.SortStableFunc(out, func(a, b []Row) int { return len(b) - len(a) })
	return out[:min(len(out), mostModels)]
}

// shopTables returns tables of one model around vehicles of different model years, each with the rows nearest in year.
func shopTables(rows []Row) []Sample {
	var w writer
	rows = slices.Clone(rows)
	slices.SortFunc(rows, func(a, b Row) int {
		return cmp.Or(cmp.Compare(a.ModelYear, b.ModelYear), strings.Compare(w.content(a), w.content(b)))
	})
	var out []Sample
	for k := range tablesEach {
		at := (2*k + 1) * len(rows) / (2 * tablesEach)
		r := rows[at]
		s := Sample{Subject: Subject{Trim: r.Trim, Brand: "clear", More: r.More, Make: r.Make, Model: r.Model, ModelYear: r.ModelYear,
			Mileage: r.Mileage, Unit: r.Unit}}
		from := max(0, min(at-tableRows/2, len(rows)-tableRows-1))
		for i := from; i < min(len(rows), from+tableRows+1); i++ {
			if i != at {
				s.Rows = append(s.Rows, rows[i])
			}
		}
		out = append(out, s)
	}
	return out
}

// shrunk returns a fitted market drawn towards the one that it began from, which counts as a few models. What the start does not know
// stands as fitted.
func shrunk(m, start Market, models float64) Market {
	share := models / (models + startWorth)
	mix := func(a, b float64) float64 { return share*a + (1-share)*b }
	for name, e := range m.Effects {
		from, known := start.Effects[name]
		if !known {
			from = Effect{Mean: e.Mean, SD: math.Abs(e.Mean)}
		}
		apart := share * (1 - share) * (e.Mean - from.Mean) * (e.Mean - from.Mean)
		m.Effects[name] = Effect{Mean: mix(e.Mean, from.Mean), SD: math.Sqrt(mix(e.SD*e.SD, from.SD*from.SD) + apart)}
	}
	for name, s := range m.Spreads {
		if from, known := start.Spreads[name]; known {
			s.SD = math.Sqrt(mix(s.SD*s.SD, from.SD*from.SD))
			m.Spreads[name] = s
		}
	}
	m.Residual.SD = math.Exp(mix(math.Log(m.Residual.SD), math.Log(start.Residual.SD)))
	return m
}
