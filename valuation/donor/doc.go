// Package donor answers one question: what may a lot bring in parts?
//
// A catalogue lists assemblies. Each is offered where it is there and sound: not missing, not hit where it lies, not wet, of this kind of
// vehicle, and run as far as its running state lets hope. What it brings is a share of the clean resale level or a price of its own, times
// the chance that it sells; hours count for all that is sound, sold or not. The rest goes as scrap.
//
//	mean     m = (1 - selling) x sum of chance x mean price
//	variance v = sum of chance x (spread^2 + mean^2) - (chance x mean)^2, each after selling, and (common x m)^2 for the market
//
// The three points of the sum have that mean; low and high lie 2.2 and 2.6 standard deviations from it, about where a modified PERT of that
// spread ends. Everything here is a starter value, common practice or from memory, with no source: the buyer replaces it.
//
// Units: money in major units of the catalogue's currency, hours of one person, days of the calendar, chances and shares 0..1.
package donor
