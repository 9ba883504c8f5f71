package damage

import "walkline/valuation/lot"

// ClockPoints is how many of lot.Areas lie on the ring; they come first.
const ClockPoints = 12

// names gives the words of every damage area beside its code.
var names = map[string]string{
	"12": "front", "01": "front right", "02": "right side forward", "03": "right side", "04": "right side rearward", "05": "rear right",
	"06": "rear", "07": "rear left", "08": "left side rearward", "09": "left side", "10": "left side forward", "11": "front left",
	"top": "top", "undercarriage": "undercarriage", "interior": "interior", "engine_bay": "engine bay",
	"electrical": "electrical", "battery_pack": "battery pack", "water": "water line",
}

// Area returns an area in words, a clock point with its number: "12 front", "engine bay". An unknown code comes back as it is.
func Area(area string) string {
	name, known := names[area]
	switch {
	case !known:
		return area
	case OnRing(area):
		return area + " " + name
	}
	return name
}

// Short returns a clock point by its number, any other area by its words.
func Short(area string) string {
	if OnRing(area) {
		return area
	}
	return Area(area)
}

// OnRing reports whether an area is a clock point.
func OnRing(area string) bool { return len(area) == 2 && area >= "01" && area <= "12" }

// Words returns a cell in words: "12 front: functional, bolted", "top: nothing marked".
func Words(d lot.Damage) string { return Area(d.Area) + ": " + State(d) }

// State returns what a cell has in words: "functional, bolted", "nothing marked".
func State(d lot.Damage) string {
	switch {
	case d.Extent == "":
		return "nothing marked"
	case d.Depth == "":
		return d.Extent
	}
	return d.Extent + ", " + d.Depth
}
