// Package board is the page of all lots. It answers: which lots are there, and what has each come to?
//
// A table with search, sort and a box for archived lots; Enter opens a lot on the worksheet. The page builds its widgets
// once, [Page.Render] writes a state into them, and the handlers call [Actions].
//
// It values nothing, saves nothing and knows no store.
package board
