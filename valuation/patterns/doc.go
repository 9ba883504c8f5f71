// Package patterns answers one question: what may a lot turn out to be that nobody has looked at?
//
// [Likely] lists the surveys that a row of a run list leaves possible, each with its chance: cause of loss, damaged areas with extent and
// depth, airbags, water, hail, fire, causes of a mechanical loss, missing parts. The chances are those of starter values, moved by what the
// row says (Bayes' rule): running state, keys, airbags, age, and the list's own repair estimate against its value before. A fact that is
// not said moves nothing. So the patterns of a vague row are those of the exact rows in their shares. [Units] draws K of them of one
// weight each (systematic sampling along the severity). [Count] moves the starter weights by what the shop's own lots turned out to be.
//
// Sources: extents by zone are half from memory and half the open counts of one county's crash reports (US public data); airbags by
// frontal and crash speed are NASS-CDS 1997-2002 (US public data), with extents standing for speeds. These count vehicles in crashes, not
// lots at salvage sales. All else is from memory, a starter value.
//
// It knows no price and no work, and never says "no damage": a lot without a survey has one that is not known.
package patterns
