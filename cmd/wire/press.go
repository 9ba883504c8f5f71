package wire

import (
	"walkline/ui/desk"
	"walkline/ui/sheet"
	"walkline/valuation"
	"walkline/valuation/lot"
)

// Press makes files to print with package sheet.
type Press struct{}

var _ desk.Press = Press{}

// Decision returns a lot's decision sheet as PDF, on the paper that is usual for its currency.
func (Press) Decision(c valuation.Case, a valuation.Answer, printed lot.Date) ([]byte, error) {
	return sheet.Decision(sheet.Lot{Case: c, Answer: a, Printed: printed})
}
