package repair

import "slices"

// HandSource is the source of a part that the buyer has already: nothing is paid, nothing waited for, and it is there surely.
const HandSource = "in_hand"

// InHand reports whether the buyer has the part already. Then no other source is asked.
func (p Part) InHand() bool { return slices.ContainsFunc(p.Options, Option.inHand) }

func (o Option) inHand() bool { return o.Source == HandSource }

// Hold says that the part is in hand, or takes that back; the other sources stay for that day.
func (p *Part) Hold(on bool) {
	p.Options = slices.DeleteFunc(slices.Clone(p.Options), Option.inHand)
	if on {
		p.Options = append(p.Options, Option{Source: HandSource})
	}
}

// Bare reports whether the option asks for nothing, as a part in hand does: no money, no days, no extra hours, no doubt.
func (o Option) Bare() bool {
	return o.Price.Zero() && o.Freight.Zero() && o.LeadDays.Zero() && o.ExtraHours.Zero() && o.CoreBack.Zero() && o.Quote == nil &&
		Or(o.Chance, 1) == 1
}
