package store

import (
	"cmp"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"

	"walkline/store/book"
)

// swap4 is one document before and after, as steps of format 4 hold it.
type swap4 struct {
	Before json.RawMessage `json:"before"`
	After  json.RawMessage `json:"after"`
}

// status4 is what a lot is marked with; Removed is when it was.
type status4 struct {
	State    string `json:"state"`
	Archived bool   `json:"archived"`
	Removed  string `json:"removed"`
}

// shop4 is a step of the Board or of the Bench; its edits are steps of lots that were made with it.
type shop4 struct {
	Lots []struct {
		Lot    int64   `json:"lot"`
		Before status4 `json:"before"`
		After  status4 `json:"after"`
	} `json:"lots"`
	Settings []struct {
		Name string `json:"name"`
		swap4
	} `json:"settings"`
	Edits []step4 `json:"edits"`
}

// step4 is a step of a lot by its number.
type step4 struct {
	Lot    int64 `json:"lot"`
	Number int64 `json:"number"`
}

// row4 is a step as it is stored.
type row4 struct {
	of      step4
	subject book.Subject // of a step of the shop
	label   string
	undone  bool
	made    string
	text    []byte
}

// steps moves the histories: a step of a lot becomes one of its worksheet or of its build, one of the Board takes the steps of lots
// that were made with it along.
func (u upgrade) steps() error {
	shop, err := u.read4(`SELECT 0, number, place, label, undone, made_at, change FROM shop_steps ORDER BY number`)
	if err != nil {
		return err
	}
	lots, err := u.read4(`SELECT lot, number, '', label, undone, made_at, change FROM lot_steps ORDER BY lot, number`)
	if err != nil {
		return err
	}
	own, order := map[step4]row4{}, []step4(nil)
	for _, row := range lots {
		own[row.of], order = row, append(order, row.of)
	}
	for _, row := range shop {
		c, err := shopSteps(row, own)
		if err != nil {
			return err
		}
		if err := u.keep(row, row.subject, c); err != nil {
			return err
		}
	}
	for _, of := range order {
		row, left := own[of]
		if !left {
			continue
		}
		c, isBuild, err := lotStep(row)
		if err != nil {
			return err
		}
		subject := book.Worksheet(of.Lot)
		if isBuild {
			subject = book.Build(of.Lot)
		}
		if err := u.keep(row, subject, change{Lots: []lotChange{c}}); err != nil {
			return err
		}
	}
	return nil
}

func (u upgrade) read4(query string) (list []row4, err error) {
	err = u.each(query, func(rows *sql.Rows) error {
		var r row4
		err := rows.Scan(&r.of.Lot, &r.of.Number, &r.subject, &r.label, &r.undone, &r.made, &r.text)
		list = append(list, r)
		return err
	})
	return list, err
}

func (u upgrade) keep(row row4, subject book.Subject, c change) error {
	text, err := json.Marshal(c)
	if err != nil {
		return err
	}
	return u.exec(`INSERT INTO steps (subject, label, typing, change, undone, made_at) VALUES (?, ?, '', ?, ?, ?)`,
		subject, row.label, string(text), row.undone, row.made)
}

// shopSteps returns a step of the shop as a change, and takes the steps of lots that belong to it out of own.
func shopSteps(row row4, own map[step4]row4) (c change, err error) {
	var old shop4
	if err := json.Unmarshal(row.text, &old); err != nil {
		return c, fmt.Errorf("%w: a step of the %s can't be read (%w)", ErrDamaged, row.subject, err)
	}
	for _, m := range old.Lots {
		c.Lots = append(c.Lots, lotChange{Lot: m.Lot, Fields: slices.Concat(
			compare([]string{"status.state"}, m.Before.State, m.After.State),
			compare([]string{"status.archived"}, m.Before.Archived, m.After.Archived),
			compare([]string{"status.removed"}, m.Before.Removed != "", m.After.Removed != ""))})
	}
	for _, s := range old.Settings {
		before, after, err := s.trees()
		if err != nil {
			return c, err
		}
		for _, tree := range []*any{&before, &after} {
			if *tree == nil {
				*tree = absent
			}
		}
		c.Settings = append(c.Settings, compare([]string{s.Name}, before, after)...)
	}
	for _, of := range old.Edits {
		step, ok := own[of]
		if !ok {
			continue // forgotten since
		}
		l, _, err := lotStep(step)
		if err != nil {
			return c, err
		}
		delete(own, of)
		c.Lots = append(c.Lots, l)
	}
	return c, nil
}

func (s swap4) trees() (before, after any, err error) {
	if before, err = parse(s.Before); err != nil {
		return nil, nil, err
	}
	after, err = parse(s.After)
	return before, after, err
}

// lotStep returns a step of a lot as a change, and whether it is one of the build. An old step holds documents, and beside them
// lists by their name; the same of a build, whose document is its head.
func lotStep(row row4) (c lotChange, isBuild bool, err error) {
	var old, build map[string]json.RawMessage
	var documents map[string]swap4
	var head swap4
	var found splice
	err = json.Unmarshal(row.text, &old)
	err = errors.Join(err, unmarshal(old["documents"], &documents), unmarshal(old["build"], &build), unmarshal(old["findings"], &found))
	c = lotChange{Lot: row.of.Lot, Lists: map[string]splice{}}
	for _, name := range []string{"damage", "lines", "risks", "rows", "photos"} {
		err = errors.Join(err, c.take(name, old[name]))
	}
	for key, text := range build {
		if key == "head" {
			err = errors.Join(err, unmarshal(text, &head))
		} else {
			err = errors.Join(err, c.take("build."+key, text))
		}
	}
	before, after, fault := head.trees()
	if err = errors.Join(err, fault); err == nil {
		c.Fields = compare([]string{"build"}, before, after)
		err = c.takeDocuments(documents, found)
	}
	if err != nil {
		return c, false, fmt.Errorf("%w: step %d of lot %d can't be read (%w)", ErrDamaged, row.of.Number, row.of.Lot, err)
	}
	return c, build != nil, nil
}

// unmarshal reads a document where there is one.
func unmarshal(text json.RawMessage, into any) error {
	if len(text) == 0 {
		return nil
	}
	return json.Unmarshal(text, into)
}

// take adds an old splice of a list to c, if there is anything in it.
func (c *lotChange) take(name string, text json.RawMessage) error {
	var s splice
	if err := unmarshal(text, &s); err != nil || len(text) == 0 || string(text) == "null" {
		return err
	}
	if listless(s.Out) && listless(s.In) {
		return nil
	}
	s.Was = name == "photos" || partOf(name) == "build" // of these a list without items is none
	s.Is = s.Was
	c.Lists[name] = s
	return nil
}

// takeDocuments adds to c what differs in the documents of a step, and in what was found.
func (c *lotChange) takeDocuments(documents map[string]swap4, found splice) error {
	out, err1 := answers4(found.Out)
	in, err2 := answers4(found.In)
	if err := cmp.Or(err1, err2); err != nil {
		return err
	}
	answers := compare([]string{"findings"}, out, in)
	within := map[string]string{"damage": "damage", "repair": "lines", "hidden": "risks", "resale": "rows"}
	for _, part := range slices.Sorted(maps.Keys(documents)) {
		before, after, err := documents[part].trees()
		if err != nil {
			return err
		}
		if list := within[part]; list != "" {
			was, is := emptied(map[string]any{part: before}, part, list) == nil, emptied(map[string]any{part: after}, part, list) == nil
			s, ok := c.Lists[list]
			if s.Was, s.Is = was, is; ok || was != is {
				c.Lists[list] = s
			}
		}
		switch fields := compareDocuments(part, before, after); {
		case part == "damage": // of no items
		case part == "findings" && before == nil:
			answers = append(fields, answers...)
		case part == "findings":
			answers = append(answers, fields...)
		default:
			c.Fields = append(c.Fields, fields...)
		}
	}
	c.Fields = append(c.Fields, answers...)
	return nil
}

// answers4 returns answers to things looked at as an object.
func answers4(text json.RawMessage) (any, error) {
	var list []struct{ ID, Answer string }
	object := map[string]any{}
	err := unmarshal(text, &list)
	for _, f := range list {
		object[f.ID] = f.Answer
	}
	return object, err
}
