package checks

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"walkline/valuation/money"
)

// packID is an ISO 3166 country, a subdivision of one, or the sign for anywhere.
var packID = regexp.MustCompile(`^([A-Z]{2}(-[A-Z0-9]{1,3})?|\*)$`)

// packFaults collects what is wrong with a pack.
type packFaults []PackFault

func (f *packFaults) unless(ok bool, key string, value any, want string) {
	if !ok {
		*f = append(*f, PackFault{key, fmt.Sprintf("%q", fmt.Sprint(value)), want})
	}
}

// Check returns every fault of the pack, with the keys of its document.
func (p Pack) Check() []PackFault {
	var f packFaults
	f.unless(p.Format == PackFormat, "format", p.Format, PackFormat)
	f.unless(packID.MatchString(p.ID), "id", p.ID, "a code such as US-MI, US, or * for anywhere")
	f.unless(strings.TrimSpace(p.Name) != "", "name", p.Name, "the jurisdiction in words")
	_, known := money.Lookup(p.Currency)
	f.unless(known, "currency", p.Currency, "an ISO 4217 code such as USD")
	for i, t := range p.Thresholds {
		f.threshold(fmt.Sprintf("thresholds[%d]", i), t)
	}
	for i, r := range p.Rebuild {
		at := fmt.Sprintf("rebuild[%d]", i)
		f.unless(r.Title != "", at+".title", r.Title, "the title that it is about")
		f.row(at, r.Row)
	}
	for i, c := range p.Fees {
		f.charge(fmt.Sprintf("fees[%d]", i), c)
	}
	for key, rows := range map[string][]Row{"documents": p.Documents, "inspections": p.Inspections, "questions": p.Questions} {
		for i, r := range rows {
			f.row(fmt.Sprintf("%s[%d]", key, i), r)
		}
	}
	if l := p.PrivateSales; l != nil {
		f.unless(l.Most >= 0, "private_sales.most", l.Most, "how many may be sold, 0 or more")
		f.unless(l.Months > 0 && l.Months <= 120, "private_sales.months", l.Months, "months, 1 to 120")
		f.row("private_sales", l.Row)
	}
	slices.SortStableFunc(f, func(a, b PackFault) int { return strings.Compare(a.Key, b.Key) })
	return f
}

func (f *packFaults) row(at string, r Row) {
	f.unless(strings.TrimSpace(r.Text) != "", at+".text", r.Text, "what is asked for, in words")
	f.source(at, r.Source)
}

func (f *packFaults) charge(at string, c Charge) {
	f.unless(c.Name != "", at+".name", c.Name, "what is paid or waited for")
	f.unless(c.Amount == nil || *c.Amount >= 0, at+".amount", "below nothing", "no less than 0")
	f.unless(c.Days == nil || c.Days.Ordered() && c.Days.Low >= 0, at+".days", "out of order",
		"low no more than likely, likely no more than high, none below 0")
	f.source(at, c.Source)
}

func (f *packFaults) threshold(at string, t Threshold) {
	f.unless(t.Name != "", at+".name", t.Name, "what the rule calls the vehicle")
	for key, share := range map[string]*decimal.Decimal{".from": t.From, ".below": t.Below, ".salvage_share": t.SalvageShare} {
		if share != nil {
			f.unless(share.IsPositive() && share.LessThanOrEqual(mostShare), at+key, share,
				"a share of the value above 0 and at most 2 (75 % is 0.75)")
		}
	}
	if t.From != nil && t.Below != nil {
		f.unless(t.From.LessThan(*t.Below), at+".below", t.Below, "more than from, "+t.From.String())
	}
	f.unless(t.From == nil || t.SalvageShare == nil, at+".salvage_share", "given beside from", "one of from and salvage_share")
	f.source(at, t.Source)
}

// mostShare bounds the share of a value in a rule, so that a percent is not taken for a share.
var mostShare = decimal.NewFromInt(2)

func (f *packFaults) source(at string, s Source) {
	f.unless(slices.Contains(Statuses, s.Status), at+".status", s.Status, "one of "+strings.Join(Statuses, ", "))
	if s.Status == "read" || s.Status == "secondary" {
		f.unless(strings.TrimSpace(s.Citation) != "", at+".citation", s.Citation, "where it stands")
		f.unless(s.Read.Known(), at+".read", s.Read, "the day on which it was read, YYYY-MM-DD")
	}
}
