package learn

import (
	"math"
	"math/rand/v2"
	"testing"

	"walkline/valuation/money"
)

// bad is a diary in which every figure came out at ratio times its forecast.
func bad(id int64, ratio float64) Build {
	b := built(id, ratio, 10)
	paid := func(x float64) money.Amount { return money.Amount(100 * x * ratio) }
	price := money.Amount(100 * 12000 / ratio)
	asked := price * 2
	b.Came.Receipts = []Receipt{{Line: "b", Kind: MaterialsKind, Paid: paid(200)}, {Line: "a", Part: "cover", Kind: PartKind, Source: "used",
		Paid: paid(180)}}
	b.Foretold.Terms.BrandShare = 1
	b.Came.Sale = &Sale{Price: price, Asked: &asked, Brand: "rebuilt"}
	return b
}

// The influence of one bad diary among good ones, or alone, is bounded whatever is in it, and shrinks again where it is worse. Ratios
// beyond [widest] are left out by name.
func TestOneBadDiaryMovesLittle(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 1))
	for _, good := range []int{0, 3, 12} {
		var builds []Build
		for i := range good {
			b := bad(int64(i), 1)
			for k := range b.Came.Worked { // ordinary scatter, each figure by itself
				b.Came.Worked[k].Hours *= math.Exp(0.4 * rng.NormFloat64())
			}
			for k := range b.Came.Receipts {
				b.Came.Receipts[k].Paid = money.Amount(float64(b.Came.Receipts[k].Paid) * math.Exp(0.35*rng.NormFloat64()))
			}
			builds = append(builds, b)
		}
		without := map[string]Proposal{}
		for _, p := range Propose(builds, today, Factors{}, starter) {
			without[p.Key] = p
		}
		moved := map[float64]float64{}
		for _, ratio := range []float64{1.5, 3, 5, 7.5, 20} {
			for _, p := range Propose(append(builds, bad(99, ratio)), today, Factors{}, starter) {
				from := p.Starter.At
				if q, ok := without[p.Key]; ok {
					from = q.Proposed.At
				}
				far := math.Abs(math.Log(p.Proposed.At / from))
				most := 0.12
				if p.Key == "shared_loading" {
					far, most = math.Abs(p.Proposed.At-from), 0.08
				}
				if far > most {
					t.Errorf("%d good diaries and one at %g: %s moves by %.3f to %.3f", good, ratio, p.Key, far, p.Proposed.At)
				}
				moved[ratio] = math.Max(moved[ratio], far)
			}
		}
		if moved[7.5] > 1.2*moved[3] {
			t.Errorf("%d good diaries: a worse one moves more: %v", good, moved)
		}
	}
}

// A branded title's range is drawn in only by what the sales took away of the doubt: one sale takes little.
func TestOneSaleHardlyNarrowsTheBrandsRange(t *testing.T) {
	one := find(t, Propose([]Build{bad(1, 1.2)}, today, Factors{}, starter), "brand_discount")
	f := Apply(Factors{}, one)
	if k := f.BrandDiscount.Known; k < 0 || k > 0.15 {
		t.Errorf("one sale is taken to know %.2f of the brand's discount", k)
	}
	var many []Build
	for i := range 80 {
		many = append(many, bad(int64(i), 1.1))
	}
	if g := Apply(Factors{}, find(t, Propose(many, today, Factors{}, starter),
		"brand_discount")); g.BrandDiscount.Known <= f.BrandDiscount.Known {
		t.Errorf("eighty sales know %.2f, one %.2f", g.BrandDiscount.Known, f.BrandDiscount.Known)
	}
}

// A share of the way: nothing of it is today's factors, half of a factor is its root.
func TestAFactorCanBeTakenInPart(t *testing.T) {
	p := find(t, Propose([]Build{bad(1, 2), bad(2, 2), bad(3, 2)}, today, Factors{}, starter), "hours/body")
	all := Apply(Factors{}, p).Hours["body"].Factor
	if half := Toward(Factors{}, p, 0.5).Hours["body"].Factor; math.Abs(half-math.Sqrt(all)) > 1e-12 || all <= 1 {
		t.Errorf("half of %g is %g", all, half)
	}
	if none := Toward(Factors{}, p, 0).Hours["body"]; none.Factor != 1 || none.LogSD != 0 {
		t.Errorf("%+v", none)
	}
}
