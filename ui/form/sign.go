package form

import (
	"fmt"
	"slices"
	"strings"

	"walkline/ui/view"
	"walkline/ui/widgets"
	"walkline/valuation/lot"
)

// Codes adds a field for a list of codes, parted by commas; a word that is none of them is said beside it and changes nothing.
func (f *Of[T]) Codes(label string, codes []string, at func(*T) *[]string) {
	e := widgets.NewTextEntry()
	e.SetPlaceHolder("any; or " + strings.Join(view.AllWords(codes), ", "))
	e.Validator = func(s string) error {
		_, err := coded(s, codes)
		return err
	}
	e.OnChanged = func(s string) {
		if list, err := coded(s, codes); err == nil {
			f.Change(label, func(c *T) { *at(c) = list })
		}
	}
	f.leads(e)
	f.Row(label, bounded(withFault(e)), func(c T) {
		if now, err := coded(e.Text, codes); err == nil && !slices.Equal(now, *at(&c)) {
			e.SetText(strings.Join(view.AllWords(*at(&c)), ", "))
		}
	})
}

// coded reads codes as people write them: "12, 1, engine bay".
func coded(s string, codes []string) ([]string, error) {
	var list []string
	for _, word := range parted(s) {
		code := strings.ReplaceAll(strings.ToLower(word), " ", "_")
		if hour := "0" + code; slices.Contains(codes, hour) {
			code = hour
		}
		if !slices.Contains(codes, code) {
			return nil, fmt.Errorf("%q is none of its words", word)
		}
		list = append(list, code)
	}
	return list, nil
}

// asked is a list of words that a sign may ask for.
type asked struct {
	label string
	codes []string
	at    func(*lot.Sign) *[]string
}

// usual are the lists that most signs ask for: their fields are always there.
var usual = []asked{
	{"Areas", lot.Areas, func(s *lot.Sign) *[]string { return &s.Areas }},
	{"Extent", lot.Extents, func(s *lot.Sign) *[]string { return &s.Extents }},
	{"Depth", lot.Depths, func(s *lot.Sign) *[]string { return &s.Depths }},
	{"Loss", lot.Losses, func(s *lot.Sign) *[]string { return &s.Loss }},
	{"Airbags deployed", lot.AirbagPositions, func(s *lot.Sign) *[]string { return &s.Airbags }},
	{"Keys", lot.KeyStates, func(s *lot.Sign) *[]string { return &s.Keys }},
	{"Runs?", lot.Conditions, func(s *lot.Sign) *[]string { return &s.State }},
}

// seldom are the rest of the lists: a field is there while its list asks for something, or the user wants it.
var seldom = []asked{
	{"Kind of vehicle", lot.Kinds, func(s *lot.Sign) *[]string { return &s.Kinds }},
	{"Powertrain", lot.Powertrains, func(s *lot.Sign) *[]string { return &s.Powertrains }},
	{"Driven wheels", lot.DrivenAxles, func(s *lot.Sign) *[]string { return &s.Driven }},
	{"Doors", lot.DoorCounts, func(s *lot.Sign) *[]string { return &s.Doors }},
	{"Paint", lot.Paints, func(s *lot.Sign) *[]string { return &s.Paints }},
	{"Its parts are", lot.PartsLevels, func(s *lot.Sign) *[]string { return &s.Levels }},
	{"Its roads were", lot.Regions, func(s *lot.Sign) *[]string { return &s.Regions }},
	{"Missing", lot.MissingKeys, func(s *lot.Sign) *[]string { return &s.Missing }},
	{"Water stood", lot.WaterHeights, func(s *lot.Sign) *[]string { return &s.Water }},
	{"Kind of water", lot.WaterKinds, func(s *lot.Sign) *[]string { return &s.WaterKinds }},
	{"Dents a panel", lot.HailCounts, func(s *lot.Sign) *[]string { return &s.Hail }},
	{"Dent size", lot.HailSizes, func(s *lot.Sign) *[]string { return &s.HailSizes }},
	{"Hailed panels", lot.HailPanels, func(s *lot.Sign) *[]string { return &s.HailPanels }},
	{"Of the hail", lot.HailStates, func(s *lot.Sign) *[]string { return &s.HailState }},
	{"Fire went to", lot.FireReaches, func(s *lot.Sign) *[]string { return &s.Fire }},
	{"Fire was in", lot.FirePlaces, func(s *lot.Sign) *[]string { return &s.FirePlaces }},
	{"Mechanical cause", lot.Causes, func(s *lot.Sign) *[]string { return &s.Causes }},
	{"Lost by nothing but", lot.Losses, func(s *lot.Sign) *[]string { return &s.Only }},
}

// least are the numbers that a sign may ask for.
var least = []struct {
	label, unit string
	at          func(*lot.Sign) *int
}{
	{"At least so old", "years", func(s *lot.Sign) *int { return &s.MinAge }},
	{"Odometer at least", "mi", func(s *lot.Sign) *int { return &s.MinMiles }},
	{"Under water at least", "h", func(s *lot.Sign) *int { return &s.MinSoak }},
}

// Sign adds the words that one reason for a job or a risk asks for; an empty field asks for nothing. What few reasons ask for is
// chosen from a list, and its field is there from then on.
func Sign(f *Of[lot.Sign]) {
	for _, a := range usual {
		f.Codes(a.label, a.codes, a.at)
	}
	more := f.more("Also ask for")
	for _, a := range seldom {
		more(a.label, func() { f.Codes(a.label, a.codes, a.at) }, func(s lot.Sign) bool { return len(*a.at(&s)) > 0 })
	}
	for _, n := range least {
		spec := widgets.Spec{Kind: widgets.Whole, Unit: n.unit, Optional: true, Least: widgets.Bound(0), Most: widgets.Bound(2e6)}
		more(n.label, func() { f.Number(n.label, spec, func(s *lot.Sign) any { return n.at(s) }).SetRoom(0) },
			func(s lot.Sign) bool { return *n.at(&s) > 0 })
	}
}

// more adds a field that lists what is not shown, and returns what adds such a row: add adds it, wanted says when it is shown of itself.
func (f *Of[T]) more(label string) func(name string, add func(), wanted func(T) bool) {
	var names []string
	show := map[string]func(){}
	s := widgets.NewSelect(nil, nil)
	s.PlaceHolder = "something else…"
	s.OnChanged = func(name string) {
		if name != "" {
			show[name]()
			s.ClearSelected()
		}
	}
	f.Row(label, bounded(s), func(T) {})
	return func(name string, add func(), wanted func(T) bool) {
		from := len(f.Rows.Objects)
		add()
		row := slices.Clone(f.Rows.Objects[from:])
		names = append(names, name)
		s.Options = names
		show[name] = func() {
			for _, o := range row {
				o.Show()
			}
			f.Rows.Refresh()
		}
		for _, o := range row {
			o.Hide()
		}
		f.Also(func(c T) {
			if wanted(c) && !row[0].Visible() {
				show[name]()
			}
		})
	}
}
