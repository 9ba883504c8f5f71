package runlist

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"walkline/valuation/lot"
)

// Known is a lot that is there already.
type Known struct {
	ID    int64
	State lot.State
	Lot   lot.Lot
}

// ahead reports whether the lot's sale is still to come for the buyer: it may be moved to another day.
func (k Known) ahead() bool {
	return k.State == lot.ToLookAt || k.State == lot.LookedAt || k.State == ""
}

// Meeting is what the lots of a list are to those there are: New, Changed and Same together are all of the list.
type Meeting struct {
	New     []lot.Lot
	Changed []Known // as they are to be from now on
	Same    int
	Left    []string // facts that the list says otherwise and that are left as they are, in words
	IDs     []int64  // of the known lot that each of the list is, 0 where it is new
}

// names returns what a lot is known by: its VIN, and its number at a sale on a day.
func names(l lot.Lot) []string {
	var all []string
	if l.VIN != "" {
		all = append(all, "vin "+l.VIN)
	}
	if l.Number != "" {
		all = append(all, strings.ToLower(fmt.Sprintf("lot %s at %s on %s", l.Number, strings.TrimSpace(l.Sale), l.SaleDate)))
	}
	return all
}

// Meet holds the lots of a list against those there are. A known lot meets one row at most: that of its VIN before that of its number.
func Meet(known []Known, listed []lot.Lot) Meeting {
	at := map[string]int{}
	for i, k := range known {
		k.Lot.VIN = strings.ToUpper(strings.ReplaceAll(k.Lot.VIN, " ", ""))
		for _, name := range names(k.Lot) {
			if _, taken := at[name]; !taken {
				at[name] = i
			}
		}
	}
	meeting, taken := map[int]int{}, map[int]bool{}
	for _, byVIN := range []bool{true, false} {
		for n, l := range listed {
			if _, met := meeting[n]; met {
				continue
			}
			if i, there := met(at, known, l, byVIN); there && !taken[i] {
				meeting[n], taken[i] = i, true
			}
		}
	}
	var m Meeting
	for n, l := range listed {
		i, there := meeting[n]
		if !there {
			m.New, m.IDs = append(m.New, l), append(m.IDs, 0)
			continue
		}
		m.IDs = append(m.IDs, known[i].ID)
		after, left := filled(known[i].Lot, l)
		m.Left = append(m.Left, left...)
		if reflect.DeepEqual(after, known[i].Lot) {
			m.Same++
			continue
		}
		m.Changed = append(m.Changed, Known{known[i].ID, known[i].State, after})
	}
	return m
}

// met returns the lot that a listed one is, by its VIN or by its number. One of the same number but another VIN is another lot, and so is
// a vehicle that comes up again after its sale is over.
func met(at map[string]int, known []Known, l lot.Lot, byVIN bool) (int, bool) {
	for _, name := range names(l) {
		i, there := at[name]
		if !there || byVIN != strings.HasPrefix(name, "vin ") {
			continue
		}
		k := known[i]
		sameVehicle := l.VIN == "" || k.Lot.VIN == "" || strings.EqualFold(k.Lot.VIN, l.VIN)
		sameSale := k.ahead() || l.SaleDate == "" || k.Lot.SaleDate == l.SaleDate
		if sameVehicle && sameSale {
			return i, true
		}
	}
	return 0, false
}

// filled returns a lot with what a list adds to it, and in words what the list says otherwise of the vehicle.
func filled(have, says lot.Lot) (lot.Lot, []string) {
	after := have
	moved(&after.Number, says.Number)
	moved(&after.Sale, says.Sale)
	if says.SaleDate != "" {
		after.SaleDate = says.SaleDate
	}
	f := filling{of: have.Number}
	f.word("VIN", &after.VIN, says.VIN)
	f.word("make", &after.Make, says.Make)
	f.word("model", &after.Model, says.Model)
	f.word("trim", &after.Trim, says.Trim)
	f.word("title document", &after.Title.Document, says.Title.Document)
	f.word("title issued in", &after.Title.IssuedIn, says.Title.IssuedIn)
	f.figures(&after, says)
	f.codes(&after, says)
	after.Listed = says.Listed.Over(have.Listed)
	return after, f.left
}

// moved takes what a list says of the place of a lot, letters' case aside.
func moved(at *string, says string) {
	if says != "" && !strings.EqualFold(*at, says) {
		*at = says
	}
}

// filling collects what is left as it is.
type filling struct {
	of   string // the lot's number
	left []string
}

func (f *filling) otherwise(what string, have, says any) {
	words := fmt.Sprintf("%s is %v here, %v on the list", what, have, says)
	if f.of != "" {
		words = "lot " + f.of + ": " + words
	}
	f.left = append(f.left, words)
}

func (f *filling) word(what string, at *string, says string) {
	switch {
	case says == "" || strings.EqualFold(*at, says):
	case *at == "":
		*at = says
	default:
		f.otherwise(what, *at, says)
	}
}

func (f *filling) figures(after *lot.Lot, says lot.Lot) {
	switch {
	case says.ModelYear == 0 || after.ModelYear == says.ModelYear:
	case after.ModelYear == 0:
		after.ModelYear = says.ModelYear
	default:
		f.otherwise("model year", after.ModelYear, says.ModelYear)
	}
	switch {
	case says.Odometer == nil:
	case after.Odometer == nil:
		after.Odometer, after.OdometerUnit = says.Odometer, says.OdometerUnit
	case *after.Odometer != *says.Odometer || after.OdometerUnit != says.OdometerUnit:
		f.otherwise("odometer", fmt.Sprint(*after.Odometer, " ", after.OdometerUnit), fmt.Sprint(*says.Odometer, " ", says.OdometerUnit))
	}
}

// codes fills in what is unknown as yet.
func (f *filling) codes(after *lot.Lot, says lot.Lot) {
	if after.OdometerStatus == "unknown" {
		after.OdometerStatus = ""
	}
	f.word("odometer statement", &after.OdometerStatus, says.OdometerStatus)
	if after.OdometerStatus == "" {
		after.OdometerStatus = "unknown"
	}
	if after.Condition == "unknown" {
		after.Condition = ""
	}
	f.word("condition", &after.Condition, says.Condition)
	if after.Condition == "" {
		after.Condition = "unknown"
	}
	switch {
	case len(says.Loss) == 0 || slices.Equal(after.Loss, says.Loss):
	case len(after.Loss) == 0:
		after.Loss = says.Loss
	default:
		f.otherwise("loss", strings.Join(after.Loss, ", "), strings.Join(says.Loss, ", "))
	}
	switch {
	case says.Keys == nil:
	case after.Keys == nil:
		after.Keys = says.Keys
	case *after.Keys != *says.Keys:
		f.otherwise("keys", *after.Keys, *says.Keys)
	}
}
