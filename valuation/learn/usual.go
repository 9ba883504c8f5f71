package learn

// Usual is what a factor is on, on an average lot: own hours with what they are worth, or money. Units: hours, major units.
type Usual struct{ Hours, Money float64 }

// Usuals returns, by the key of the factor, what was foretold on average of the lots that were bought, each item by its chance and without
// learned factors; of lots in another currency nothing. A factor that no forecast names is absent.
func Usuals(builds []Build, currency string) map[string]Usual {
	out, n := map[string]Usual{}, 0.0
	for _, b := range guessed(builds) {
		if b.Foretold == nil || !b.ours() || b.Currency != currency {
			continue
		}
		n++
		for _, i := range b.Foretold.Items {
			mean := i.Chance * i.Mean / b.Foretold.Factors.of(i)
			key, add := moneyKey(i.Kind, i.Key), Usual{Money: mean}
			if i.Kind == HoursKind {
				key, add = "hours/"+i.Key, Usual{Hours: mean, Money: mean * b.Foretold.Terms.Rates[i.Key]}
			}
			sum := out[key]
			out[key] = Usual{sum.Hours + add.Hours, sum.Money + add.Money}
		}
	}
	for key, u := range out {
		out[key] = Usual{u.Hours / n, u.Money / n}
	}
	return out
}
