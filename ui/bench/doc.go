// Package bench is the page of the shop's own values. It answers: what does a new lot begin with, and what does the program know?
//
// Sections on the left: house rules, labour and time, what sales charge (a yard each), the catalogues of repair jobs and of hidden
// risks, what the vehicle does to their cost, what a later version changed in them, jurisdictions, currency and units, and backups.
// Values that nobody changed are marked as starter values. The page builds its widgets once, [Page.Render] writes a state into them,
// and the handlers call [Actions].
//
// It values nothing, saves nothing and knows no store.
package bench
