// Package damage answers one question: how does a damaged area read and look, wherever it is shown?
//
// Words: [Area] names an area ("12 front", "engine bay"), [Words] a whole cell ("12 front: functional, bolted").
// [Topic], [Survey] and [Described] say what the survey knows beside the areas, and "not known" of the rest.
// Shapes: [Sector] is a clock point of the ring, [Tile] a swatch for what does not lie on the ring, [NewVehicle] the plain
// outline in the middle. Looks: [HatchOf] says how an extent is hatched (the farther, the closer), [BorderOf] how a depth is
// edged (thin: skin, thick: bolted, double: structure). The window and the printed sheet both draw from here, so that a
// buyer who knows one reads the other.
//
// Units: places and lengths in points of the window (a sheet scales them), x to the right, y down; angles clockwise from the
// top, in radians. Outlines are closed and run clockwise.
// Assumptions: hatch and border must tell every extent and depth apart without colour.
//
// Sources: clock points, top, undercarriage and the extents, Model Minimum Uniform Crash Criteria (12 is the front, clockwise
// seen from above). The words beside the numbers, the other areas, the depths and every look are this project's own.
//
// It knows no colour, no toolkit and no page.
package damage
