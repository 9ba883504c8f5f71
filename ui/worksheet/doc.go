// Package worksheet is the page for one lot. It answers: how is a lot entered, and what does it come to?
//
// On the left stand the sections in the order of the job: Facts, Damage, Repair, Resale, Costs, Checks. On the right, always,
// stands the verdict. The page builds its widgets once; [Page.Render] writes a state into them and decides nothing; the
// handlers read the widgets and call [Actions]. Setting a Fyne widget from code fires its handler, so rendering is muted
// in one place, the form.
//
// It values nothing, saves nothing and knows no store.
package worksheet
