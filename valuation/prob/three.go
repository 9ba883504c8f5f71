package prob

// Three is a three-point judgement: the lowest, most likely and highest value, read as a modified PERT distribution
// (a beta on [Low, High] with weight 4 on Likely). Low = Likely = High is a certain value.
type Three struct {
	Low    float64 `json:"low"`
	Likely float64 `json:"likely"`
	High   float64 `json:"high"`
}

// Certain returns the judgement that is sure of x.
func Certain(x float64) Three { return Three{x, x, x} }

// Sure reports whether t has no spread.
func (t Three) Sure() bool { return t.Low == t.High }

// Ordered reports whether Low <= Likely <= High.
func (t Three) Ordered() bool { return t.Low <= t.Likely && t.Likely <= t.High }

// Zero reports whether t is certainly nothing.
func (t Three) Zero() bool { return t == Three{} }
