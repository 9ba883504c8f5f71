package learn

import "testing"

// many returns builds of one shop, a tenth of the given number a month old and so on back.
func many(n int) []Build {
	var out []Build
	for i := range n {
		b := built(int64(i), 0.8+float64(i%9)/10, i)
		b.Came.Risks = map[string]Seen{"rail": NotThere, "tower": NotThere, "leak": Found}
		b.Foretold.Risks = []Risk{{ID: "rail", Base: 0.2, Chance: 0.35}, {ID: "tower", Base: 0.15, Chance: 0.1},
			{ID: "leak", Base: 0.3, Chance: 0.6}}
		out = append(out, b)
	}
	return out
}

// BenchmarkPropose is what learning asks for, over 200 and over 2,000 builds.
func BenchmarkPropose(b *testing.B) {
	for _, n := range []int{200, 2000} {
		builds := many(n)
		name := map[int]string{200: "200 builds", 2000: "2000 builds"}[n]
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				if len(Propose(builds, today, Factors{}, starter)) == 0 {
					b.Fatal("nothing learned")
				}
			}
		})
	}
}
