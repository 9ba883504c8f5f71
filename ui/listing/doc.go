// Package listing is the page of a listed lot. It answers: what does a bid need at least, and what does the listing say of it?
//
// One page asks in the order of a listing: vehicle, title, cause of loss, whether it runs, keys, what is damaged, what it brings. Every
// answer may be left as not known. A line above says what a bid still needs, and leads to its field. The text of a listing is typed or
// pasted beside the fields; what it gave is shown fact by fact, and so is what was not understood. Everything else of a lot is on the
// worksheet, which has these fields too.
//
// It values nothing, reads no text itself, saves nothing and knows no store.
package listing
