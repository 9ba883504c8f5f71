// Package record is the page of the track record. It answers: how have the forecasts done, what would past buys change, and
// what would today's factors have bid?
//
// Its sections: Forecasts (coverage of the intervals, where in the forecasts the outcomes fell, scores, ratio figures), Chances (two
// reliability diagrams), Money (won and lost by cause), Factors (each proposal with its evidence and what it would do to open
// lots, accepted or refused one by one), History (restore), Replay. That only won lots are seen stands under all of them. The page
// builds its widgets once, [Page.Render] writes a state into them, and the handlers call [Actions].
//
// It judges and learns nothing, saves nothing and knows no store.
package record
