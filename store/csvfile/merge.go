package csvfile

import (
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"slices"

	"walkline/store/table"
	"walkline/valuation/resale"
)

// Merged is what rows become when others join them.
type Merged struct {
	Rows               []resale.Row // those there were, in their order, then the new ones
	New, Same, Changed int          // of the incoming rows; together all of them
	Changes            []Change
}

// Change is one row that the incoming file says otherwise.
type Change struct {
	At            int // in Rows
	Before, After resale.Row
}

// Merge returns existing with incoming joined to it. Each existing row meets at most one incoming row: first one that
// says nothing else, then one of the same vehicle. What an incoming row does not say is kept, and so is the user's tick.
// New rows without an id get one. Merging the same rows again changes nothing; the same row twice is two rows.
func Merge(existing, incoming []resale.Row) Merged {
	m := Merged{Rows: slices.Clone(existing)}
	meeting := partners(existing, incoming)
	ids := map[string]bool{}
	for _, r := range slices.Concat(existing, incoming) {
		ids[r.ID] = true
	}
	for i, r := range incoming {
		at, met := meeting[i]
		if !met {
			r.ID = idFor(r.ID, ids)
			m.New++
			m.Rows = append(m.Rows, r)
			continue
		}
		before := existing[at]
		after := overlaid(before, r)
		if reflect.DeepEqual(before, after) {
			m.Same++
			continue
		}
		m.Changed++
		m.Rows[at] = after
		m.Changes = append(m.Changes, Change{at, before, after})
	}
	return m
}

// partners returns for incoming rows the existing row that each meets: an equal one, else one of the same vehicle to
// which it adds nothing, else one of the same vehicle.
func partners(existing, incoming []resale.Row) map[int]int {
	if len(existing) == 0 {
		return nil
	}
	p := pairing{existing, map[string][]int{}, make([]bool, len(existing)), map[int]int{}}
	for at, r := range existing {
		for _, identity := range identities(r) {
			for _, key := range []string{content(identity, r), priced(identity, r), identity} {
				p.free[key] = append(p.free[key], at)
			}
		}
	}
	for i, r := range incoming {
		p.meet(i, content(identity(r), r), nil)
	}
	for i, r := range incoming {
		p.meet(i, priced(identity(r), r), func(old resale.Row) bool { return reflect.DeepEqual(old, overlaid(old, r)) })
	}
	for i, r := range incoming {
		if sure(r) {
			p.meet(i, identity(r), nil)
		}
	}
	return p.meeting
}

// pairing is who has met whom so far.
type pairing struct {
	existing []resale.Row
	free     map[string][]int // places of existing rows by what they may be met by
	taken    []bool
	meeting  map[int]int
}

// meet pairs an incoming row that has met none with the first existing one under key that is free and fits (nil: any does).
func (p pairing) meet(i int, key string, fits func(old resale.Row) bool) {
	if _, met := p.meeting[i]; met {
		return
	}
	for len(p.free[key]) > 0 && p.taken[p.free[key][0]] {
		p.free[key] = p.free[key][1:]
	}
	for _, at := range p.free[key] {
		if !p.taken[at] && (fits == nil || fits(p.existing[at])) {
			p.meeting[i], p.taken[at] = at, true
			return
		}
	}
}

// priced returns the identity of a row at its price.
func priced(identity string, r resale.Row) string { return fmt.Sprintf("%s at %d", identity, r.Price) }

// content returns the identity of a row with all that it says.
func content(identity string, r resale.Row) string {
	r.ID, r.Excluded = "", false
	text, err := json.Marshal(r)
	if err != nil { // a number that is not finite: the row is met by what names it alone
		return ""
	}
	return identity + string(text)
}

// identity returns what names the vehicle of an incoming row: its id or else what is written on it.
func identity(r resale.Row) string {
	if r.ID != "" {
		return "id " + r.ID
	}
	return vehicle(r)
}

// identities returns all that an existing row may be met by.
func identities(r resale.Row) []string {
	if r.ID != "" {
		return []string{"id " + r.ID, vehicle(r)}
	}
	return []string{vehicle(r)}
}

// vehicle returns what is written on a row that does not change while it is for sale.
func vehicle(r resale.Row) string {
	mileage := "unknown"
	if r.Mileage != nil {
		mileage = fmt.Sprint(*r.Mileage, unitOf(r))
	}
	return fmt.Sprintf("%d|%q|%q|%q|%s|%q|%q", r.ModelYear, table.Tidy(r.Make), table.Tidy(r.Model), table.Tidy(r.Trim), mileage,
		table.Tidy(r.Title), table.Tidy(r.Source))
}

// unitOf returns the unit of a row's mileage; a row that names none is in miles.
func unitOf(r resale.Row) string {
	if r.Unit == "" {
		return "mi"
	}
	return r.Unit
}

// sure reports whether a row's identity is enough to tell its vehicle from another like it.
func sure(r resale.Row) bool { return r.ID != "" || r.Mileage != nil }

// overlaid returns a row with all that a newer one says of it.
func overlaid(old, newer resale.Row) resale.Row {
	r, n := Comparable{Row: old}, Comparable{Row: newer}
	for i := range columns {
		if join := columns[i].Join; join != nil {
			join(&r, &n)
		}
	}
	r.More = overlaidMore(old.More, newer.More)
	return r.Row
}

func overlaidMore(old, newer map[string]string) map[string]string {
	more := maps.Clone(old)
	for key, value := range newer {
		if table.Tidy(more[key]) == value {
			continue
		}
		if more == nil {
			more = map[string]string{}
		}
		more[key] = value
	}
	return more
}

// idFor returns id, or a free one for a row without.
func idFor(id string, taken map[string]bool) string {
	if id != "" {
		return id
	}
	n := len(taken)
	for taken[fmt.Sprintf("row-%d", n)] {
		n++
	}
	id = fmt.Sprintf("row-%d", n)
	taken[id] = true
	return id
}
