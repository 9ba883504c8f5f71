package prob

import "strconv"

// Plain writes a number as people do: without an exponent, with no more digits than it has.
func Plain(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Text writes the three figures in a row, for a message.
func (t Three) Text() string {
	return "low " + Plain(t.Low) + ", likely " + Plain(t.Likely) + ", high " + Plain(t.High)
}
