package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"walkline/valuation/money"
	"walkline/valuation/resale"
)

// set is one file of prices.
type set struct {
	name     string
	currency money.Currency
	rows     []resale.Row
}

func readSets(dir string) ([]set, error) {
	files, err := filepath.Glob(filepath.Join(dir, "*_public.csv"))
	if err != nil || len(files) == 0 {
		return nil, fmt.Errorf("no *_public.csv in %s", dir)
	}
	parts, _ := filepath.Glob(filepath.Join(dir, "*_slice.csv"))
	files = append(files, parts...)
	var sets []set
	for _, f := range files {
		if strings.Contains(f, "damaged") {
			continue
		}
		s, err := readSet(f)
		if err != nil {
			return nil, err
		}
		sets = append(sets, s)
	}
	return sets, nil
}

func readSet(file string) (set, error) {
	table, err := readTable(file)
	if err != nil {
		return set{}, err
	}
	s := set{name: strings.TrimSuffix(strings.TrimSuffix(filepath.Base(file), "_public.csv"), "_slice.csv")}
	for i, rec := range table {
		cur, ok := money.Lookup(rec["currency"])
		if !ok {
			return set{}, fmt.Errorf("%s row %d: currency %q is not known", file, i+1, rec["currency"])
		}
		s.currency = cur
		r, err := readRow(rec, cur)
		if err != nil {
			return set{}, fmt.Errorf("%s row %d: %w", file, i+1, err)
		}
		s.rows = append(s.rows, r)
	}
	return s, nil
}

func readTable(file string) ([]map[string]string, error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	recs, err := csv.NewReader(f).ReadAll()
	if err != nil || len(recs) < 2 {
		return nil, fmt.Errorf("%s holds no table: %v", file, err)
	}
	var out []map[string]string
	for _, rec := range recs[1:] {
		m := map[string]string{}
		for j, v := range rec {
			m[recs[0][j]] = v
		}
		out = append(out, m)
	}
	return out, nil
}

// known are the columns that a row has fields for.
var known = map[string]bool{"row_id": true, "make": true, "model": true, "year": true, "mileage": true, "mileage_unit": true,
	"trim": true, "price": true, "currency": true, "damaged": true}

func readRow(rec map[string]string, cur money.Currency) (resale.Row, error) {
	price, err := cur.Parse(rec["price"])
	if err != nil {
		return resale.Row{}, err
	}
	year, err := strconv.Atoi(rec["year"])
	if err != nil {
		return resale.Row{}, fmt.Errorf("model year: %w", err)
	}
	r := resale.Row{ID: rec["row_id"], Price: price, Kind: "asked", ModelYear: year, Make: rec["make"], Model: rec["model"],
		Trim: rec["trim"], Unit: rec["mileage_unit"], More: map[string]string{}}
	if m, err := strconv.ParseFloat(rec["mileage"], 64); err == nil {
		r.Mileage = &m
	}
	for name, v := range rec {
		if !known[name] && v != "" {
			r.More[name] = v
		}
	}
	return r, nil
}

// subject returns the vehicle of a row, its price forgotten.
func subject(r resale.Row) resale.Subject {
	return resale.Subject{Trim: r.Trim, Brand: "clear", More: r.More, Make: r.Make, Model: r.Model, ModelYear: r.ModelYear,
		Mileage: r.Mileage, Unit: r.Unit}
}
