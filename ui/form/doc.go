// Package form answers: how is a part of a case entered?
//
// A [Form] is rows of a label and a field, bound to a case: [Form.Render] writes the case into the fields without telling anyone,
// and what the user types comes out as an [Edit] of the case, named for undo. The groups that more than one page shows stand here:
// house rules, labour, time, selling, bringing it home, other bidders, and with [Terms] what a sale charges. A page that keeps
// something else than a lot's case (the terms of the shop, an entry of a catalogue) lends the form a case that holds it.
//
// Units: money in major units, shares 0..1, hours and days as they are called.
//
// What it does not do: it knows no page and no store, values nothing and saves nothing.
package form
