// Package builds is the page of the bought lots. It answers: what has each taken so far, what does it still need, and where does
// it lead?
//
// The list shows every build with what was spent against what was foretold; one build opens into its progress, bills, hours, hidden
// damage, invoice, and days and sale, with the forecast of the engine always at the right. A list of entries is a [ledger]: a table
// and, beside it, a form for the selected entry or a new one. The page builds its widgets once, [Page.Render] writes a state into
// them, and the handlers call [Actions].
//
// It foretells nothing, saves nothing and knows no store.
package builds
