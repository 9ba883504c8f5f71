package main

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"walkline/ui/desk"
	"walkline/ui/widgets"
	"walkline/ui/widgets/seen"
	"walkline/ui/widgets/table"
	"walkline/valuation"
	"walkline/valuation/lot"
	"walkline/valuation/repair"
)

// trade draws what the survey says beside the damaged areas, a line with a quote, the donor vehicle, and the shopping lists.
func (s *stage) trade() error {
	id, err := s.lot(side)
	if err != nil {
		return err
	}
	s.window.Do(desk.OpenLot(id))
	s.window.Do(desk.EditLot("survey", func(c *valuation.Case) { c.Survey, c.Lot.Loss = aSurvey(), []string{"collision", "flood", "hail"} }))
	if err := s.topics(); err != nil {
		return err
	}
	if err := s.quoted(); err != nil {
		return err
	}
	if err := s.donor(); err != nil {
		return err
	}
	return s.shopping()
}

// aSurvey says something of every topic.
func aSurvey() *lot.Survey {
	hours := 18.0
	return &lot.Survey{Kind: "car", Powertrain: "hybrid", Driven: "front", Doors: 4, Missing: []string{"wheels", "catalytic_converter"},
		Water: &lot.Water{Height: "seat", Kind: "sewage", Hours: &hours}, Causes: []string{"overheated"},
		Hail: &lot.Hail{Count: "many", Size: "medium", Panels: []string{"hood", "roof"}, Glass: true,
			Each: map[string]lot.Dents{"roof": {Count: "beaten"}}},
		Fire: &lot.Fire{Where: []string{"engine_bay"}, Reach: "smoke"}}
}

// topics folds out each thing that the survey says beside the areas, one at a time.
func (s *stage) topics() error {
	s.press(fyne.Key2)
	for _, topic := range []string{"Missing parts", "Water", "Hail", "Fire and smoke", "Mechanical"} {
		s.click(topic)
		for _, scroll := range seen.All[*container.Scroll](s.screen.Content()) {
			scroll.ScrollToBottom()
		}
		if err := s.save("survey-" + strings.ReplaceAll(strings.ToLower(topic), " ", "-")); err != nil {
			return err
		}
		s.click(topic)
	}
	return nil
}

// quoted draws the parts of a line whose first source has said a price.
func (s *stage) quoted() error {
	var line string
	s.window.Do(desk.EditLot("quote", func(c *valuation.Case) {
		for _, l := range valuation.Plan(*c, s.know) {
			if len(l.Parts) > 0 && len(l.Parts[0].Options) > 0 && l.ID != repair.DonorLine {
				own := valuation.Copy(l.Line)
				own.Parts[0].Options[0].Quote = &repair.Quote{Yard: "Harrow Used Parts", Phone: "555 0142", Day: c.ValuedOn, Price: 180}
				c.Repair.Lines, line = append(c.Repair.Lines, own), own.Job
				return
			}
		}
	}))
	s.press(fyne.Key3)
	s.pick(line)
	s.click("Parts")
	return s.save("worksheet-repair-quote")
}

// donor draws the donor vehicle that the lot is planned with.
func (s *stage) donor() error {
	s.click("Plan with a donor vehicle")
	s.window.Do(desk.EditLot("donor vehicle", func(c *valuation.Case) {
		c.Repair.Donor.Vehicle, c.Repair.Donor.Hit = "2018 Kettrick Dunlin LX, rear hit", []string{"06"}
	}))
	s.pick("donor vehicle")
	return s.save("worksheet-repair-donor")
}

// pick selects the row of the lines that says so.
func (s *stage) pick(words string) {
	lines := seen.All[*table.Table](s.screen.Content())[0]
	for i, row := range lines.Facts() {
		if strings.Contains(strings.ToLower(row), strings.ToLower(words)) {
			lines.SelectRow(i)
			lines.OnSelected(i)
			return
		}
	}
}

// shopping draws the shopping list of the lot, and of all lots.
func (s *stage) shopping() error {
	s.press(fyne.KeyG)
	if err := s.save("shopping-list"); err != nil {
		return err
	}
	if of := seen.All[*widgets.Select](s.top()); len(of) > 0 {
		of[0].SetSelectedIndex(len(of[0].Options) - 1)
	}
	if err := s.save("shopping-list-all"); err != nil {
		return err
	}
	s.escape()
	return nil
}
