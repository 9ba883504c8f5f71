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
// before the program's own. With faults nothing is added.
func (d *Desk) AddPack(ctx context.Context, s State, data []byte) (State, []valuation.Fault) {
	p, faults := d.readPack(data)
	if len(faults) > 0 {
		return s.troubled("add the jurisdiction", faults[0]), faults
	}
	packs := slices.DeleteFunc(slices.Clone(s.Packs), func(q checks.Pack) bool { return q.ID == p.ID })
	if s = d.keepPacks(ctx, s, "add "+p.Name, append(packs, p)); s.Trouble == "" {
		s = s.said(p.Name + " is among the jurisdictions.")
	}
	return s, nil
}

// RemovePack takes a jurisdiction away that the user added.
func (d *Desk) RemovePack(ctx context.Context, s State, id string) State {
	packs := slices.DeleteFunc(slices.Clone(s.Packs), func(q checks.Pack) bool { return q.ID == id })
	return d.keepPacks(ctx, s, "remove "+id, packs)
}

// keepPacks keeps the user's jurisdictions as a step of the Bench.
func (d *Desk) keepPacks(ctx context.Context, s State, label string, packs []checks.Pack) State {
	documents := []json.RawMessage{}
	for _, p := range packs {
		documents = append(documents, d.Documents.Encode(p, p.Currency))
	}
	if err := d.Book.Keep(ctx, label, packsSetting, documents); err != nil {
		return s.troubled("keep the jurisdictions", err)
	}
	s.Notice, s.Trouble = "", ""
	s.Packs = packs
	return d.reachAt(ctx, d.uses(s, s.Own))
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
