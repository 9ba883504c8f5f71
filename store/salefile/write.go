package salefile

import (
	"bytes"

	"walkline/store/casefile"
	"walkline/valuation/money"
	"walkline/valuation/sale"
)

// AnswerFormat is the version of the plan that is written.
const AnswerFormat = "walkline-plan/1"

// trimmed returns the text without the mark that some editors write before it.
func trimmed(data []byte) []byte { return bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")) }

type plan struct {
	Format   string    `json:"format"`
	Currency string    `json:"currency"`
	Expected float64   `json:"expected"`
	Exact    bool      `json:"exact"`
	Error    float64   `json:"error"`
	Lots     []planned `json:"lots"`
	More     more      `json:"more"`
	Leave    []string  `json:"leave"`
}

type planned struct {
	ID          string   `json:"id"`
	Bid         *float64 `json:"bid" unit:"money"`
	WinChance   float64  `json:"win_chance"`
	Expected    float64  `json:"expected"`
	Reach       float64  `json:"reach"`
	AfterOneWin *float64 `json:"after_one_win" unit:"money"`
	CashMiddle  *float64 `json:"cash_middle" unit:"money"`
	CashFull    *float64 `json:"cash_full" unit:"money"`
}

type more struct {
	Thousand float64 `json:"thousand"`
	TenHours float64 `json:"ten_hours"`
	Bay      float64 `json:"bay"`
}

// WriteAnswer returns the plan as a document; every key stands in it, null where nothing is bid.
func WriteAnswer(a sale.Answer, cur money.Currency) []byte {
	p := plan{Format: AnswerFormat, Currency: cur.Code, Expected: a.Expected, Exact: a.Exact, Error: a.Error,
		More: more{a.Thousand, a.TenHours, a.Bay}, Leave: a.Leave}
	major := func(a *money.Amount) *float64 {
		if a == nil {
			return nil
		}
		x := cur.Major(*a)
		return &x
	}
	for _, b := range a.Lots {
		p.Lots = append(p.Lots, planned{b.ID, major(b.Bid), b.WinChance, b.Expected, b.Reach,
			major(b.AfterWin), major(b.CashMiddle), major(b.CashFull)})
	}
	return casefile.EncodeWhole(p, cur.Code)
}
