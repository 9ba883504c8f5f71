package listing

import (
	"strconv"
	"strings"

	"walkline/store/cell"
)

// singles are the fields of which a vehicle has one, with what takes the fact of each back.
var singles = map[string]func(f *Found){
	"VIN":                func(f *Found) { f.Lot.VIN = "" },
	"Lot number":         func(f *Found) { f.Lot.Number = "" },
	"Sale":               func(f *Found) { f.Lot.Sale = "" },
	"Model year":         func(f *Found) { f.Lot.ModelYear = 0 },
	"Make":               func(f *Found) { f.Lot.Make = "" },
	"Model":              func(f *Found) { f.Lot.Model = "" },
	"Odometer":           func(f *Found) { f.Lot.Odometer, f.Lot.OdometerUnit = nil, "" },
	"Odometer statement": func(f *Found) { f.Lot.OdometerStatus = "" },
	"Title document":     func(f *Found) { f.Lot.Title.Document = "" },
	"Issued in":          func(f *Found) { f.Lot.Title.IssuedIn = "" },
	"Keys":               func(f *Found) { f.Lot.Keys = nil },
	"Driven wheels":      func(f *Found) { f.Driven = "" },
	"Powertrain":         func(f *Found) { f.Powertrain = "" },
	"Doors":              func(f *Found) { f.Doors = 0 },
	valueField:           func(f *Found) { f.Lot.Listed = nil },
}

// settle keeps one fact of each field that a vehicle has one of. Where a text says it in two ways none is taken, and both are said: nobody
// can know which is meant.
func (f *Found) settle() {
	first := map[string]string{}
	var once []Fact
	differ := map[string]bool{}
	for _, x := range f.Facts {
		_, single := singles[x.Field]
		before, said := first[x.Field]
		switch says := x.says(); {
		case single && said && before == says:
			continue
		case single && said:
			differ[x.Field] = true
		case single:
			first[x.Field] = says
		}
		once = append(once, x)
	}
	f.Facts = once
	for field := range differ {
		singles[field](f)
	}
	for _, x := range once { // in the order of the text
		if differ[x.Field] {
			f.unfact(x.Field, " (the text says it in two ways)")
		}
	}
}

// says returns what a fact of a field comes to, alike for two ways of writing one thing.
func (x Fact) says() string {
	words := strings.Join(cell.Words(x.Words), " ")
	switch x.Field {
	case "Model year":
		return strconv.Itoa(cell.YearIn(x.Words))
	case "Driven wheels":
		return drivenWords[words]
	case "Powertrain":
		return powerWords[driver(words)]
	case valueField:
		return strings.Trim(words, "abcdefghijklmnopqrstuvwxyz $")
	}
	return words
}
