// Package hindsight answers one question: how did the forecasts do, and where was money won and lost against them?
//
// [Judge] holds the frozen forecasts of finished and sold buys against what came: how often intervals held, in which tenth of
// its forecast each outcome fell, scores against a naive baseline, chances against what came, ratio study figures, and the
// profit made against the profit foretold, by cause, to the minor unit. A forecast is judged at the hammer price that was paid.
//
// Units: exact money in minor units, figures of forecasts in major units. Signs: a difference is positive where money was won
// against the forecast.
// Assumptions: a figure is judged on the buys whose outcome is known for it; holding and capital are counted on the days
// that passed, at the forecast's own rates. Cars parted out or resold as is were not foretold, and are not judged.
//
// Sources: those of package score; the ratio study is IAAO's (see prob.RatioStudy).
//
// It changes no forecast and proposes nothing: see package learn.
package hindsight
