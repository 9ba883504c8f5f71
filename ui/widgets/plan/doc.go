// Package plan answers: where is the vehicle hurt, how badly and how deep? It is the damage plan, a widget.
//
// A ring of twelve clock points (01-12, 12 = front, clockwise seen from above) lies round a plain vehicle, front up; tiles
// stand for top, undercarriage and the inner areas. Extent shows as fill, as hatch (the farther, the closer) and as a word; depth as
// border (thin: skin, thick: bolted, double: structure) and as a word. A cell with photographs bears a small frame, and its words
// say how many. A legend says so. Every cell is told by words in the caption and
// by [Plan.Facts].
//
// The cells are one picture, drawn by a pen in about 3 ms at 860 x 560 and kept until something in it changes; digits and words are
// texts over it. The state (survey.go) knows no window and is tested by itself: arrows go to the neighbor that lies in
// their direction, from 03 to the tiles, and reach every cell.
//
// Sources: areas and extents, Model Minimum Uniform Crash Criteria (vehicle damage: clock points, top, undercarriage; minor,
// functional, disabling). The other areas, the depths and every look are this project's own.
//
// What it does not do: it keeps notes but does not show them, and knows no costs.
package plan
