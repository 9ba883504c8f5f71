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
		if len(code) == 1 && code[0] >= '1' && code[0] <= '9' {
			code = "0" + code
		}
		if !slices.Contains(codes, code) {
			return nil, fmt.Errorf("%q is none of its words", word)
		}
		list = append(list, code)
	}
	return list, nil
}

// Sign adds the words that one reason for a job or a risk asks for; an empty field asks for nothing.
func Sign(f *Of[lot.Sign]) {
	f.Codes("Areas", lot.Areas, func(s *lot.Sign) *[]string { return &s.Areas })
	f.Codes("Extent", lot.Extents, func(s *lot.Sign) *[]string { return &s.Extents })
	f.Codes("Depth", lot.Depths, func(s *lot.Sign) *[]string { return &s.Depths })
	f.Codes("Loss", lot.Losses, func(s *lot.Sign) *[]string { return &s.Loss })
	f.Codes("Airbags deployed", lot.AirbagPositions, func(s *lot.Sign) *[]string { return &s.Airbags })
	f.Codes("Keys", lot.KeyStates, func(s *lot.Sign) *[]string { return &s.Keys })
	f.Codes("Runs?", lot.Conditions, func(s *lot.Sign) *[]string { return &s.State })
}
