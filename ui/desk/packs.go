package desk

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"

	"walkline/valuation"
	"walkline/valuation/checks"
)

// packsSetting is the setting that keeps the jurisdictions that the user added, a document each.
const packsSetting = "jurisdictions"

// readPack reads a jurisdiction's document. Errors: every fault, of form or of value.
func (d *Desk) readPack(data []byte) (checks.Pack, []valuation.Fault) {
	var p checks.Pack
	if faults := d.Documents.Decode(data, &p); len(faults) > 0 {
		return p, faults
	}
	var faults []valuation.Fault
	for _, f := range p.Check() {
		faults = append(faults, valuation.Fault{Key: f.Key, Value: f.Value, Want: f.Want})
	}
	return p, faults
}

// AddPack adds a jurisdiction from its document, in the place of one that the user added before with its id; it stands
// before the program's own. With faults, which the state then has, nothing is added.
func AddPack(data []byte) Action {
	return keeps("add a jurisdiction", func(ctx context.Context, d *Desk, s State, a Action) State {
		p, faults := d.readPack(data)
		if s.PackFaults = faults; len(faults) > 0 {
			return s.troubled(a.words, faults[0])
		}
		a.words = "add " + p.Name
		return ifKept(d.keepPacks(ctx, s, a, append(s.packsWithout(p.ID), p)), p.Name+" is among the jurisdictions.")
	})
}

// RemovePack takes a jurisdiction away that the user added.
func RemovePack(id string) Action {
	return keeps("remove "+id, func(ctx context.Context, d *Desk, s State, a Action) State {
		return d.keepPacks(ctx, s, a, s.packsWithout(id))
	})
}

func (s State) packsWithout(id string) []checks.Pack {
	return slices.DeleteFunc(slices.Clone(s.Packs), func(q checks.Pack) bool { return q.ID == id })
}

func (d *Desk) keepPacks(ctx context.Context, s State, a Action, packs []checks.Pack) State {
	encoded := func(packs []checks.Pack) []json.RawMessage {
		documents := []json.RawMessage{}
		for _, p := range packs {
			documents = append(documents, d.Documents.Encode(p, p.Currency))
		}
		return documents
	}
	return d.keepSetting(ctx, s, a, packsSetting, encoded(s.Packs), encoded(packs))
}

// loadPacks reads the jurisdictions that the user added, before they are put to use. What can't be read is said, the rest stands.
func (d *Desk) loadPacks(ctx context.Context, s State) State {
	var documents []json.RawMessage
	if _, err := d.Book.Setting(ctx, packsSetting, &documents); err != nil {
		return s.troubled("read the jurisdictions", err)
	}
	var packs []checks.Pack
	var wrong []string
	for _, data := range documents {
		p, faults := d.readPack(data)
		if len(faults) > 0 {
			wrong = append(wrong, p.ID+": "+faults[0].Error())
			continue
		}
		packs = append(packs, p)
	}
	s.Packs = packs
	if len(wrong) > 0 {
		return s.troubled("read all jurisdictions that were added", errors.New(strings.Join(wrong, "; ")))
	}
	return s
}
