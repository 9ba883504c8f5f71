package learn

import (
	"math"
	"testing"
)

// slowSale is a buy closed today whose days on the market were forecast as 30 and came to 45; its forecast was kept, or is today's guess.
func slowSale(id int64, guess bool) Build {
	b, days := built(id, 1.5, 0), 45.0
	b.Came.Days.Sell = &days
	if guess {
		b.Foretold, b.Guess = nil, b.Foretold
	}
	return b
}

func slowSales(n int, guess bool) (out []Build) {
	for i := range n {
		out = append(out, slowSale(int64(i), guess))
	}
	return out
}

// A buy that is held against today's guess counts 0.4 of one whose forecast was kept. By hand, for the days to sell: the forecast of
// 30 +- 9 days has a log variance of ln(1 + 0.3^2) = 0.08618, so 45 days are y = ln(45/30) + 0.08618/2 = 0.44856 above its median. The
// starter prior of 0.25 stands against a scatter of 0.60 a buy: it counts for (0.60/0.25)^2 = 5.76 buys. So one buy moves the log ratio
// by y/6.76 = 0.06635 with a kept forecast, and by 0.4 y/6.16 = 0.02913 with a guess; five guesses are two kept forecasts, 2 y/7.76.
func TestAGuessCountsTwoFifthsOfAKeptForecast(t *testing.T) {
	moved := func(builds []Build) float64 {
		return math.Log(find(t, Propose(builds, today, Factors{}, starter), "days_to_sell").Proposed.At)
	}
	near(t, "one kept forecast", moved(slowSales(1, false)), 0.06635, 1e-5)
	near(t, "one guess", moved(slowSales(1, true)), 0.02913, 1e-5)
	near(t, "five guesses", moved(slowSales(5, true)), 2*0.44856/7.76, 1e-5)
	five, two := Propose(slowSales(5, true), today, Factors{}, starter), Propose(slowSales(2, false), today, Factors{}, starter)
	for _, key := range []string{"hours/body", "hours/paint", "days_to_sell"} {
		guesses, kept := find(t, five, key), find(t, two, key)
		near(t, key, guesses.Proposed.At, kept.Proposed.At, 1e-9)
		near(t, key+": its low end", guesses.Proposed.Low, kept.Proposed.Low, 1e-9)
		near(t, key+": the spread it adds", *guesses.Proposed.Spread, *kept.Proposed.Spread, 1e-9)
		if guesses.Evidence[0].Weight != 0.4 || kept.Evidence[0].Weight != 1 {
			t.Errorf("%s: a guess counts %g, a kept forecast %g", key, guesses.Evidence[0].Weight, kept.Evidence[0].Weight)
		}
	}
}

// Where a forecast was kept, a guess made today says nothing.
func TestAKeptForecastStandsBeforeAGuess(t *testing.T) {
	both := slowSale(1, false)
	wrong := *both.Foretold
	wrong.Terms.DaysToSell = 300
	both.Guess = &wrong
	a, b := Propose([]Build{both}, today, Factors{}, starter), Propose(slowSales(1, false), today, Factors{}, starter)
	near(t, "days", find(t, a, "days_to_sell").Proposed.At, find(t, b, "days_to_sell").Proposed.At, 0)
}

// A guess that has no price teaches none.
func TestAGuessWithoutAPriceTeachesNone(t *testing.T) {
	b := slowSale(1, true)
	b.Came.Sale, b.Guess.Resale = &Sale{Price: 900_000, Brand: "rebuilt"}, Figure{}
	for _, p := range Propose([]Build{b}, today, Factors{}, starter) {
		if p.Key == "resale" || p.Key == "brand_discount" || p.Key == "own_share" {
			t.Errorf("a guess proposes %s", p.Key)
		}
	}
}

// A price counts as much as the rest of a guess. By hand: a forecast of 12,000 with a log sd of s = ln(q90/q10)/2.5631 and a sale at
// 13,200, y = ln(1.1). The bias has a prior sd of 0.04 in units of the forecast's own sd: 1/0.04^2 = 625 against w/s^2.
func TestAGuessedPriceCountsTwoFifths(t *testing.T) {
	for guess, weight := range map[bool]float64{false: 1, true: 0.4} {
		b := slowSale(1, guess)
		b.Came.Sale = &Sale{Price: 1_320_000, Brand: "rebuilt"}
		f := normalFigure(12000, 1200)
		s := math.Log(f.quantile(0.9)/f.quantile(0.1)) / 2.5631
		want := weight / (s * s) * math.Log(1.1) / (625 + weight/(s*s))
		p := find(t, Propose([]Build{b}, today, Factors{}, starter), "resale")
		near(t, "bias", math.Log(p.Proposed.At), want, 1e-5)
		near(t, "weight", p.Evidence[0].Weight, weight, 1e-12)
	}
}
