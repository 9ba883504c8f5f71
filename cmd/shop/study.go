package main

import (
	"math"
	"math/rand/v2"

	"walkline/cmd/truth"
	"walkline/valuation"
	"walkline/valuation/hindsight"
	"walkline/valuation/learn"
	"walkline/valuation/money"
)

// study is one simulation.
type study struct {
	know  valuation.Knowledge
	start learn.Starter
	truth truth.Truth
	lots  []valuation.Case
	said  []learn.Prediction // of each lot, with the starter values
	rng   *rand.Rand
}

func newStudy(n int, seed uint64) (*study, error) {
	c, know, err := truth.Template()
	if err != nil {
		return nil, err
	}
	s := &study{know: know, start: know.Starter(), rng: rand.New(rand.NewPCG(seed, 1))}
	s.truth = truth.New(s.start)
	for i := range n {
		lot := another(c, i, s.rng)
		p, err := valuation.Foretell(lot, know, nil)
		if err != nil {
			return nil, err
		}
		s.lots, s.said = append(s.lots, lot), append(s.said, p)
	}
	return s, nil
}

// shop returns the first n lots as bought and sold.
func (s *study) shop(n int) []learn.Build {
	var out []learn.Build
	for i := range n {
		out = append(out, truth.Buy(int64(i), &s.said[i], s.lots[i], s.truth.Live(&s.said[i], s.start, s.rng), s.said[i].At))
	}
	return out
}

// learned returns all that the builds teach, taken over.
func (s *study) learned(builds []learn.Build) (learn.Factors, []learn.Proposal) {
	return truth.Learned(builds, s.start)
}

// heldBack are the open lots that a factor from few buys is held against, and shares how much of it is tried, as in the window.
const heldBack = 10

var shares = []float64{1, 0.5, 0.25, 0.125, 0}

// held returns what the builds teach as the window takes it over without being told to: a factor from few buys goes only so far that no
// open lot's bid moves by two steps or more.
func (s *study) held(builds []learn.Build, open []sale) (learn.Factors, error) {
	m, f := valuation.NewMemory(), learn.Factors{}
	for _, p := range learn.Propose(builds, truth.Today, f, s.start) {
		if p.Buys >= learn.EnoughBuys {
			f = learn.Apply(f, p)
			continue
		}
		for _, share := range shares {
			after := learn.Toward(f, p, share)
			moved, err := s.moved(m, f, after, open[:min(heldBack, len(open))])
			if err != nil {
				return f, err
			}
			if moved < 2 {
				f = after
				break
			}
		}
	}
	return f, nil
}

// moved returns by how many bid steps the bid moves that moves most.
func (s *study) moved(m *valuation.Memory, before, after learn.Factors, open []sale) (int64, error) {
	most := int64(0)
	for _, x := range open {
		e, err := m.Compare(x.lot, s.know, before, after)
		if err != nil {
			return 0, err
		}
		most = max(most, e.Steps)
	}
	return most, nil
}

// nearness is how near the factors of one kind come to the truth. Units: of log ratios, and of chances.
type nearness struct {
	n             int
	wrong, claims float64 // sums of squares: of the error, and of the sd that the proposals claim
	inside        int     // of their 80 % ranges
}

func (n *nearness) add(says learn.Value, truth float64, log bool) {
	at, low, high := says.At, says.Low, says.High
	if log {
		at, low, high, truth = math.Log(at), math.Log(low), math.Log(high), math.Log(truth)
	}
	sd := (high - low) / (2 * 1.2816) // an 80 % range is 2 x 1.2816 sd wide
	n.n++
	n.wrong += (at - truth) * (at - truth)
	n.claims += sd * sd
	if truth >= low && truth <= high {
		n.inside++
	}
}

// rms returns the root mean square of the errors and of the claimed sd.
func (n nearness) rms() (wrong, claimed float64) {
	return math.Sqrt(n.wrong / float64(n.n)), math.Sqrt(n.claims / float64(n.n))
}

// compare holds proposals against the truth.
func (s *study) compare(all []learn.Proposal, ratios, chances *nearness) {
	t := s.truth.Factors
	for _, p := range all {
		switch {
		case p.Unit == learn.ChanceUnit:
			c := t.Risks[p.Key[len("risk/"):]]
			chances.add(p.Proposed, c.A/(c.A+c.B), false)
		case p.Unit == learn.RatioUnit:
			if x, known := trueRatio(t, p.Key); known && len(p.Evidence) > 0 {
				ratios.add(p.Proposed, x, true)
			}
		}
	}
}

func trueRatio(t learn.Factors, key string) (float64, bool) {
	for prefix, m := range map[string]map[string]learn.Ratio{"hours/": t.Hours, "parts/": t.Parts} {
		if len(key) > len(prefix) && key[:len(prefix)] == prefix {
			r, known := m[key[len(prefix):]]
			return r.Factor, known
		}
	}
	r := map[string]*learn.Ratio{"materials": t.Materials, "outside": t.Outside, "hidden": t.Hidden, "asked_to_sold": t.AskedToSold,
		"days_to_sell": t.DaysToSell}[key]
	if r != nil {
		return r.Factor, true
	}
	return t.Resale.Factor, key == "resale"
}

// sale is one fresh lot: what it would be bought for, and what would come.
type sale struct {
	lot    valuation.Case
	hammer money.Amount
	came   learn.Came
	said   learn.Prediction // with the starter values
}

// fresh returns lots that nobody has learned from. The hammer price lies about what the lot is worth to a buyer who knows
// the truth, 0.6 to 1.4 times that.
func (s *study) fresh(from int) ([]sale, error) {
	m := valuation.NewMemory()
	var out []sale
	for i := from; i < len(s.lots); i++ {
		knows, err := m.Value(s.lots[i].With(s.truth.Factors), s.know)
		if err != nil {
			return nil, err
		}
		x := sale{lot: s.lots[i], came: s.truth.Live(&s.said[i], s.start, s.rng), said: s.said[i]}
		share := 0.6 + 0.8*s.rng.Float64()
		if knows.WalkAway == nil {
			continue // nobody who knows bids
		}
		x.hammer = money.Amount(share * float64(*knows.WalkAway))
		out = append(out, x)
	}
	return out, nil
}

// year is what a buyer's walk-away bids come to on the fresh lots.
type year struct {
	name          string
	bought, lossy int
	profit        money.Amount
	record        hindsight.Record // over all fresh lots, bought or not
}

// trade lets a buyer with those factors bid for every fresh lot.
func (s *study) trade(name string, f learn.Factors, fresh []sale) (year, error) {
	y := year{name: name}
	m := valuation.NewMemory()
	var all []learn.Build
	for i, x := range fresh {
		p, err := m.Foretell(x.lot.With(f), s.know, &x.hammer)
		if err != nil {
			return y, err
		}
		b := truth.Buy(int64(i), &p, x.lot, x.came, x.hammer)
		all = append(all, b)
		if p.WalkAway == nil || *p.WalkAway < x.hammer {
			continue
		}
		made := *hindsight.Made(b)
		y.bought++
		y.profit += made
		if made < 0 {
			y.lossy++
		}
	}
	y.record = hindsight.Judge(all, "USD")
	return y, nil
}
