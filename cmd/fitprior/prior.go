package main

import (
	"fmt"
	"math"
	"path/filepath"
	"sort"
	"strconv"
	"strings"

	"walkline/valuation/prob"
	"walkline/valuation/resale"
)

const note = "Starter priors of the resale model, fitted to asking prices of other models by cmd/fitprior. They fade as your own " +
	"comparables come; what from_memory names is a starter value, from memory: replace it with yours."

// fromMemory are the figures that the data can't tell.
var fromMemory = []string{"effect condition", "spread model", "spread number", "spread slope", "worth of every spread and residual"}

// cited says where each set comes from and when its prices were asked.
var cited = map[string][2]string{
	"uk2020":      {"2020-06", "Desai (2020), 100,000 UK used cars; CC0 1.0 as its host states"},
	"hatch2004":   {"2004-07", "Shmueli, Bruce, Gedeck and Patel, Data Mining for Business Analytics, Wiley 2019, package dmba; MIT"},
	"midsize2009": {"2009", "Kaplan, R package statisticalModeling 0.3.0; MIT"},
	"pl2012":      {"2012", "Biecek, R package PogromcyDanych 1.7.1; GPL-3, only fitted figures are kept here"},
}

// indexFile holds the used-vehicle price index, by month.
const indexFile = "used_vehicle_cpi_us.csv"

func fitPrior(sets []set, dir string) (resale.Prior, error) {
	p := resale.Prior{Format: resale.PriorFormat, Note: note, Memory: fromMemory}
	walk, months, err := fitWalk(filepath.Join(dir, indexFile))
	if err != nil {
		return p, err
	}
	p.Walk = walk
	var markets []resale.Market
	for _, s := range sets {
		p.Sources = append(p.Sources, resale.Source{File: s.name, Rows: len(s.rows), When: cited[s.name][0], Citation: cited[s.name][1]})
		markets = append(markets, fitMarket(s))
	}
	p.Sources = append(p.Sources, resale.Source{File: "used_vehicle_cpi_us", Rows: months, When: "2000 and later",
		Citation: "US Bureau of Labor Statistics, CUSR0000SETA02, used cars and trucks; public domain"})
	p.Markets = rounded(broaden(markets))
	return p, nil
}

// fitWalk returns the standard deviation of the index's log change over a year, and the number of months read.
func fitWalk(file string) (prob.Scale, int, error) {
	table, err := readTable(file)
	if err != nil {
		return prob.Scale{}, 0, err
	}
	var logs, changes []float64
	for i, rec := range table {
		x, err := strconv.ParseFloat(rec["value"], 64)
		if err != nil || x <= 0 {
			return prob.Scale{}, 0, fmt.Errorf("%s row %d: %q is no index value", file, i+1, rec["value"])
		}
		logs = append(logs, math.Log(x))
		if i >= 12 {
			changes = append(changes, logs[i]-logs[i-12])
		}
	}
	if len(changes) < 24 {
		return prob.Scale{}, 0, fmt.Errorf("%s: fewer than three years of months", file)
	}
	return prob.Scale{SD: deviation(changes), Worth: float64(len(changes)) / 12}, len(logs), nil
}

// fewModels is the number of models from which a market's spread among models, and its levels' means, can be told.
const fewModels = 5

// singleDoubt is the spread of an effect among models, as a share of its size, where a set holds too few models to tell.
// Starter value, from memory: replace it with yours.
const singleDoubt = 0.35

// broaden makes each market's beliefs fit for a model that it has not seen, and adds the market of no place in particular.
func broaden(markets []resale.Market) []resale.Market {
	out := make([]resale.Market, 0, len(markets)+1)
	for _, m := range markets {
		out = append(out, broadenOne(m))
	}
	return append(out, anyMarket(out))
}

func broadenOne(m resale.Market) resale.Market {
	effects := map[string]resale.Effect{}
	for name, e := range m.Effects {
		switch {
		case m.Models >= fewModels:
		case strings.Contains(name, "="):
			continue
		default:
			e.SD = math.Hypot(e.SD, singleDoubt*e.Mean)
		}
		effects[name] = e
	}
	m.Effects = effects
	spreads := map[string]prob.Scale{}
	square, n := 0.0, 0.0
	for name, s := range m.Spreads {
		spreads[name] = s
		if strings.HasPrefix(name, "level ") {
			square += s.SD * s.SD
			n++
		}
	}
	if n > 0 {
		spreads["level"] = prob.Scale{SD: math.Sqrt(square / n), Worth: m.Spreads["level"].Worth}
	}
	m.Spreads = spreads
	return m
}

// anyWorth is what the beliefs of the market of no place in particular are worth: little.
const anyWorth = 3

// anyMarket pools markets: the spread of an effect is that within and among them.
func anyMarket(markets []resale.Market) resale.Market {
	effects, spreads := map[string][]resale.Effect{}, map[string][]float64{}
	logs := 0.0
	out := resale.Market{Name: "any", DF: math.Inf(1), Effects: map[string]resale.Effect{}, Spreads: map[string]prob.Scale{}}
	for _, m := range markets {
		out.Models += m.Models
		out.DF = math.Min(out.DF, m.DF)
		logs += math.Log(m.Residual.SD) / float64(len(markets))
		for name, e := range m.Effects {
			effects[name] = append(effects[name], e)
		}
		for name, s := range m.Spreads {
			spreads[name] = append(spreads[name], s.SD)
		}
	}
	for name, es := range effects {
		out.Effects[name] = pooled(es)
	}
	for name, sds := range spreads {
		square := 0.0
		for _, sd := range sds {
			square += sd * sd / float64(len(sds))
		}
		out.Spreads[name] = prob.Scale{SD: math.Sqrt(square), Worth: anyWorth}
	}
	out.Residual = prob.Scale{SD: math.Exp(logs), Worth: anyWorth}
	return out
}

func pooled(es []resale.Effect) resale.Effect {
	n := float64(len(es))
	var mean, square float64
	for _, e := range es {
		mean += e.Mean / n
	}
	for _, e := range es {
		square += (e.SD*e.SD + (e.Mean-mean)*(e.Mean-mean)) / n
	}
	return resale.Effect{Mean: mean, SD: math.Max(math.Sqrt(square), singleDoubt*math.Abs(mean))}
}

// rounded keeps four significant digits: more would feign precision.
func rounded(markets []resale.Market) []resale.Market {
	for i := range markets {
		m := &markets[i]
		m.Residual.SD = four(m.Residual.SD)
		for name, e := range m.Effects {
			m.Effects[name] = resale.Effect{Mean: four(e.Mean), SD: four(e.SD)}
		}
		for name, s := range m.Spreads {
			m.Spreads[name] = prob.Scale{SD: four(s.SD), Worth: s.Worth}
		}
		for name, x := range m.OLS {
			m.OLS[name] = four(x)
		}
	}
	sort.SliceStable(markets, func(a, b int) bool { return markets[a].Name < markets[b].Name })
	return markets
}

func four(x float64) float64 {
	v, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 4, 64), 64)
	return v
}
