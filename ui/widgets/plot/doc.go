// Package plot answers: how do prices, fees and shares lie to each other? It has the plots of the program, as widgets.
//
//   - [Scatter]: comparables against mileage or year, with the fitted band (10th to 90th percentile) and the lot itself. Weight
//     shows as size, use as filled or hollow, a branded title as a square.
//   - [Curve]: one value against another, in steps for fees.
//   - [BreakEven]: how much a lot can bear, as chances over money, with the line of a bid that is dragged.
//   - [Histogram]: how often values fall into each range. [Reliability]: stated chances against what came of them.
//   - [Waterfall]: from the resale price down to the bid. [ShareBars]: what moves the profit most.
//
// What the pointer or the keyboard is on stands in words in a line under the plot, which never moves. Ticks are 1, 2 or 5 times a
// power of ten apart. Plots are canvas primitives, drawn anew on every change; the band alone is a picture.
//
// Units: those of the caller, who writes values through [Axis].Format; shares 0..1.
//
// What it does not do: it fits nothing, sorts nothing but the walk of the keyboard, and never drops a point.
package plot
