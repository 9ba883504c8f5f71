package view

import (
	"slices"
	"strings"

	"walkline/ui/desk"
	"walkline/valuation"
)

// Yours reports whether a group of the shop's terms is the user's own, no longer the starter's.
func Yours(s desk.State, group string) bool {
	return slices.Contains(desk.Differing(s.Shop.Onto(valuation.Defaults()), s.StarterShop.Onto(valuation.Defaults())), group)
}

// Whose says whether values are the starter's or the user's.
func Whose(yours bool) string {
	if yours {
		return "Yours."
	}
	return "Starter values, from memory: replace them with yours."
}

// mostShopFaults is how many faults of the shop's terms are said at once.
const mostShopFaults = 3

// ShopFaults says what of the shop's terms no lot could be valued with.
func ShopFaults(shop desk.Shop) []string {
	var words []string
	for i, f := range shop.Faults() {
		if i == mostShopFaults {
			break
		}
		words = append(words, Fault(f))
	}
	return words
}

// TermsWords says how a lot's terms stand to the Bench's.
func TermsWords(o desk.Open) string {
	from := "the Bench's"
	if o.Yard != "" {
		from += ", those of " + o.Yard
	}
	words := "The terms of this lot are " + from + "."
	if len(o.Differs) > 0 {
		words = "This lot's terms are not " + from + " in: " + list(o.Differs) + "."
	}
	if len(o.Starters) > 0 {
		words += " Still starter values: " + list(o.Starters) + "."
	}
	return words
}

// KeepTermsWords names the button that keeps a lot's fees as its yard's; empty where there is nothing to keep, or no sale to keep it for.
func KeepTermsWords(o desk.Open) string {
	differs := slices.Contains(o.Differs, desk.SaleCharges) || slices.Contains(o.Differs, desk.BringHome)
	if sale := strings.TrimSpace(o.Case.Lot.Sale); sale != "" && (differs || o.Yard == "") {
		return "Keep as the fees of " + sale
	}
	return ""
}

// list joins words with commas and an "and".
func list(words []string) string {
	out := ""
	for i, w := range words {
		switch {
		case i == 0:
		case i == len(words)-1:
			out += " and "
		default:
			out += ", "
		}
		out += w
	}
	return out
}
