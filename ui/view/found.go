package view

import (
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation/build"
	"walkline/valuation/lot"
)

// UnlistedColumns are the columns of damage that was found and is on no list.
var UnlistedColumns = []Column{{"Found", false, 150}, {"Money, likely", true, 92}, {"Hours, likely", true, 92}}

// Unlisted returns the cells of one such find.
func Unlisted(o desk.OpenBuild, u build.Unlisted) []string {
	return []string{u.Name, NewPurse(o.Currency).Whole(u.Cost.Likely), hoursOf(u.Hours.Likely)}
}

// UnlistedTotal says how the finds stand in the forecast.
func UnlistedTotal(o desk.OpenBuild) string {
	open := 0
	for _, u := range o.Build.Unlisted {
		if !o.Build.IsDone(u.ID) {
			open++
		}
	}
	if len(o.Build.Unlisted) == 0 {
		return ""
	}
	return Count(open, "find") + " still counted in the forecast."
}

// PhotoColumns are the columns of the photographs of a build.
var PhotoColumns = []Column{{"Taken", false, 104}, {"Stage", false, 150}, {"Area", false, 150}, {"Caption", false, 190},
	{"File", false, 150}}

// PhotoCells returns the cells of a photograph.
func PhotoCells(p lot.Photo) []string {
	return []string{Day(p.Taken), string(p.Stage) + " the work", PhotoArea(p.Area), p.Caption, p.Name}
}

// SortedPhotos returns photographs by stage, those before the work first, then by day.
func SortedPhotos(list []lot.Photo) []lot.Photo {
	list = slices.Clone(list)
	slices.SortStableFunc(list, func(a, b lot.Photo) int {
		if a.Stage != b.Stage && (a.Stage == lot.After) != (b.Stage == lot.After) {
			if b.Stage == lot.After {
				return -1
			}
			return 1
		}
		return strings.Compare(string(a.Taken), string(b.Taken))
	})
	return list
}
