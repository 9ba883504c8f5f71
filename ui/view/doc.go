// Package view answers one question: how does a state read?
//
// It turns states, cases and answers into rows, labels and chart points: plain values that a page writes into its widgets
// without deciding anything. Money shows with its grouping and currency, a model's figure with its range, chances in
// percent.
//
// Units: as named in each function; what comes out is text, or numbers in major units for charts.
// Assumptions: English words; the clock point of a damage area always shows with its words.
//
// It knows no widget, no store and no clock.
package view
