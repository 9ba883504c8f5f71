// Package cell answers one question: what does one cell of somebody's table say?
//
// It reads numbers, prices, distances and odometer readings, days, words for yes and no, and words of titles, in plain words of seven
// languages: English, German, French, Spanish, Polish, Dutch and Italian. What a cell says itself (its unit, its currency, an odometer
// statement) is given back beside the value. Where the notation of a whole column decides, the caller first asks every cell what it
// proves ([Number.Proves], [Proves]) and then reads them all one way.
//
// A group of three digits after a lone mark is a thousand in a price or an odometer reading. A mark or a word of haggling beside a price
// is no fault; any other word is, and so is a second number. Days are written YYYY-MM-DD; a month alone is its first day.
//
// Sources: [1] ISO 8601, days. [2] DIN 1355-1: a day written with points has its day first. [3] ISO 4217, codes of money. [4] 49 CFR 580,
// odometer statements. [5] lot.Brands, title brands. Words and signs: common practice, no source.
//
// It knows no table, no column and no file.
package cell
