package learn

import "slices"

// guessWeight is how much a buy counts that is held against today's first guess for its facts, made after it was over, beside one whose
// forecast was kept: the guess knows less of the vehicle, and who made it knows the end. Starter value, ours.
const guessWeight = 0.4

// guessed returns the builds with today's first guess in place of a forecast that was not kept. Those count as [guessWeight].
func guessed(builds []Build) []Build {
	out := append([]Build(nil), builds...)
	for i, b := range out {
		if b.Foretold == nil && b.Guess != nil {
			out[i].Foretold, out[i].weak = b.Guess, true
		}
	}
	return out
}

// strength is how much the build's ratios count beside those of one whose forecast was kept.
func (b Build) strength() float64 {
	if b.weak {
		return guessWeight
	}
	return 1
}

// looseParts returns the ratio of all money for parts of a build whose bills for parts name neither a source nor a line, as those of a
// table do; money for hidden damage is among them unless it is told apart.
func (b Build) looseParts() (observed, bool) {
	t := tally{}
	for _, r := range b.Came.Receipts {
		if r.Kind != PartKind {
			continue
		}
		if r.Source != "" || r.Line != "" {
			return observed{}, false
		}
		t.came, t.any = t.came+b.Major(r.Paid), true
	}
	apart := slices.ContainsFunc(b.Came.Receipts, func(r Receipt) bool { return r.Kind == HiddenKind })
	for _, i := range b.Foretold.Items {
		if i.Kind == PartKind && !i.Quoted || i.Kind == HiddenKind && !apart {
			b.expect(&t, i)
		}
	}
	return t.observed("", b.loading())
}
