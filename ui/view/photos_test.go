package view_test

import (
	"testing"

	"walkline/ui/desk"
	"walkline/ui/view"
	"walkline/valuation/lot"
)

func TestPhotosOfAnArea(t *testing.T) {
	o := desk.Open{Photos: []lot.Photo{{Hash: "1", Area: "12", Stage: lot.Before}, {Hash: "2", Stage: lot.After}, {Hash: "3", Area: "top"},
		{Hash: "4", Area: "12", Stage: lot.After}}}
	here, elsewhere := view.PhotosOf(o, "12")
	if len(here) != 2 || here[1].Words != "after" || elsewhere != "Others: whole vehicle 1, top 1." {
		t.Errorf("%+v, %q", here, elsewhere)
	}
	if here, elsewhere = view.PhotosOf(desk.Open{}, ""); here != nil || elsewhere != "" {
		t.Errorf("%+v, %q", here, elsewhere)
	}
	if n := view.PhotoCounts(o); n["12"] != 2 || n["top"] != 1 || len(n) != 2 {
		t.Errorf("%v", n)
	}
	if got := view.PhotoFacts(lot.Photo{Name: "a.jpg", Width: 4, Height: 3, Taken: "2026-11-28"}); got != "a.jpg · 4 x 3 · taken 2026-11-28" {
		t.Errorf("%q", got)
	}
}
