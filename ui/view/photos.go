package view

import (
	"fmt"
	"strings"

	"walkline/ui/damage"
	"walkline/ui/desk"
	"walkline/valuation/lot"
)

// PhotoCard is one photograph as the strip shows it.
type PhotoCard struct {
	lot.Photo
	Words string // under the small picture
}

// WholeVehicle stands for no area.
const WholeVehicle = "whole vehicle"

// PhotoArea returns the area of a photograph in words.
func PhotoArea(area string) string {
	if area == "" {
		return WholeVehicle
	}
	return damage.Area(area)
}

// PhotosOf returns the photographs that are pinned to an area, and says in words where the lot's others are.
func PhotosOf(o desk.Open, area string) (here []PhotoCard, elsewhere string) {
	count := map[string]int{}
	for _, p := range o.Photos {
		if p.Area == area {
			here = append(here, PhotoCard{p, string(p.Stage)})
		}
		count[p.Area]++
	}
	var others []string
	for _, a := range append([]string{""}, lot.Areas...) {
		if n := count[a]; n > 0 && a != area {
			others = append(others, fmt.Sprintf("%s %d", PhotoArea(a), n))
		}
	}
	if len(others) > 0 {
		elsewhere = "Others: " + strings.Join(others, ", ") + "."
	}
	return here, elsewhere
}

// PhotoCounts returns how many photographs are pinned to each area.
func PhotoCounts(o desk.Open) map[string]int {
	count := map[string]int{}
	for _, p := range o.Photos {
		if p.Area != "" {
			count[p.Area]++
		}
	}
	return count
}

// PhotoFacts says what is known of a photograph in one line.
func PhotoFacts(p lot.Photo) string {
	parts := []string{p.Name, fmt.Sprintf("%d x %d", p.Width, p.Height)}
	if p.Taken != "" {
		parts = append(parts, "taken "+Day(p.Taken))
	}
	return strings.Join(parts, " · ")
}
