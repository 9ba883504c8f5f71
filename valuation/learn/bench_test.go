package learn

import "testing"

// many returns builds of one shop, a tenth of the given number a month old and so on back.
func many(n int) []Build {
	var out []Build
	for i := range n {
		b := built(int64(i), 0.8+float64(i%9)/10, i)
		b.Came.Risks = map[string]Seen{"rail": NotThere, "tower": NotThere, "leak": Found}
		b.Foretold.Risks = []Risk{{ID: "rail", Base: 0.2, Chance: 0.35}, {ID: "tower", Base: 0.15, Chance: 0.1}, {ID: "leak", Base: 0.3, Chance: 0.6}}
		s := sold(int64(i))
		b.Hammer, b.Foretold.At, b.Foretold.Money, b.Foretold.Terms = s.Hammer, s.Foretold.At, s.Foretold.Money, s.Foretold.Terms
		b.Foretold.Profit, b.Foretold.Cost, b.Foretold.Hours, b.Foretold.Days = s.Foretold.Profit, s.Foretold.Cost, s.Foretold.Hours, s.Foretold.Days
		b.Came.Sale, b.Came.Days, b.Came.Fees, b.Came.Freight, b.Came.Storage = s.Came.Sale, s.Came.Days, s.Came.Fees, s.Came.Freight, s.Came.Storage
		b.Came.Repair, b.Came.Hidden, b.Came.Selling = s.Came.Repair, s.Came.Hidden, s.Came.Selling
		out = append(out, b)
	}
	return out
}

// BenchmarkTune is what opening the Track record asks for, over 200 and over 2,000 builds.
func BenchmarkTune(b *testing.B) {
	for _, n := range []int{200, 2000} {
		builds := many(n)
		name := map[int]string{200: "200 builds", 2000: "2000 builds"}[n]
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if len(Propose(builds, today, Factors{}, starter)) == 0 || Judge(builds, "USD").Buys != n {
					b.Fatal("nothing learned")
				}
			}
		})
	}
}
