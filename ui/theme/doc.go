// Package theme is how Walkline looks: its colours, sizes and spaces.
//
// One family of warm greys, one accent (a deep blue-green) and one warning colour (rust), in a light and a dark variant.
// Accent and warning differ in lightness as well as in hue, so that they stay apart for colour-blind eyes and in a grey
// print; no meaning hangs on them alone all the same. Three text sizes a page, and one numeral size for the verdict.
// Everything stands on an 8-point grid: Half, Space, Wide and Broad are 4, 8, 16 and 24 points.
//
// Text scales by [Options].Scale; spaces stay. Widgets ask for colours by name through [Color] at the moment they draw, so a
// change of variant needs no more than a refresh. The bundled face (Noto Sans) has digits of equal width: figures line up without a
// monospace face.
//
// Sources: contrast as defined by the Web Content Accessibility Guidelines 2.1, "relative luminance" and "contrast
// ratio"; every pair of text and ground holds 4.5:1 (success criterion 1.4.3, level AA), every outline that carries
// meaning 3:1 (1.4.11). The colours themselves are this project's own.
//
// What it does not do: it chooses no font and draws nothing.
package theme
