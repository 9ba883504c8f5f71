package runlist

// Areas returns the codes of the damaged areas that a text names; none: it names none.
func Areas(text string) []string {
	codes, _ := areasOf(text)
	return codes
}

// Losses returns the codes of the losses that a text tells of: an area alone tells of a collision, words that tell of none of another
// loss.
func Losses(text string) []string { return losses(text) }
