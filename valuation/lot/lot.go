package lot

// Lot is what is known of the vehicle before it is bought. JSON keys are those of the case file.
type Lot struct {
	Number         string   `json:"number"`
	Sale           string   `json:"sale"`
	SaleDate       Date     `json:"sale_date"`
	VIN            string   `json:"vin"`
	ModelYear      int      `json:"model_year"`
	Make           string   `json:"make"`
	Model          string   `json:"model"`
	Trim           string   `json:"trim"`
	Odometer       *int     `json:"odometer"` // nil: not known
	OdometerUnit   string   `json:"odometer_unit"`
	OdometerStatus string   `json:"odometer_status"`
	Title          Title    `json:"title"`
	Loss           []string `json:"loss"`
	Condition      string   `json:"condition"`
	Keys           *bool    `json:"keys"` // nil: not known
	Airbags        []string `json:"airbags_deployed"`
	Listed         *Listed  `json:"listed"` // what a run list says beside; nil: no list said anything
	Survey         *Survey  `json:"-"`      // a key of its own in the case file; nil: nothing of it is known
}

// Title is the ownership document as offered and where the finished vehicle will be registered.
type Title struct {
	IssuedIn   string   `json:"issued_in"`
	Document   string   `json:"document"`
	Brands     []string `json:"brands"`
	RegisterIn string   `json:"register_in"`
}

// Damage is one cell of the survey: an area, how far it is hurt, and how deep.
type Damage struct {
	Area   string `json:"area"`
	Extent string `json:"extent"`
	Depth  string `json:"depth"`
	Note   string `json:"note"`
}

// State is where a lot stands in the buyer's week.
type State string

// The states of a lot, in the order of the job.
const (
	ToLookAt State = "to look at"
	LookedAt State = "looked at"
	Bid      State = "bid"
	Won      State = "won"
	Lost     State = "lost"
	Passed   State = "passed"
)

// States lists every state in order.
var States = []State{ToLookAt, LookedAt, Bid, Won, Lost, Passed}

// The vocabularies of the case file. Areas 01-12, top and undercarriage and the extents are those of the Model Minimum
// Uniform Crash Criteria (clock points, 12 = front, clockwise seen from above); the other areas and the depths are ours.
var (
	Areas = []string{"01", "02", "03", "04", "05", "06", "07", "08", "09", "10", "11", "12", "top", "undercarriage",
		"interior", "engine_bay", "electrical", "battery_pack", "water"}
	Extents          = []string{"minor", "functional", "disabling"}
	Depths           = []string{"skin", "bolted", "structure"}
	Losses           = []string{"collision", "flood", "fire", "theft", "hail", "vandalism", "mechanical", "other"}
	Conditions       = []string{"drives", "starts", "turns_over", "dead", "unknown"}
	AirbagPositions  = []string{"front", "side", "curtain", "knee", "belt"}
	KeyStates        = []string{"there", "missing"}
	OdometerUnits    = []string{"mi", "km"}
	OdometerStatuses = []string{"actual", "not_actual", "exceeds_limits", "exempt", "unknown"}
	Trades           = []string{"body", "structure", "mechanical", "paint", "electrical", "trim"}
)

// Misread reports whether the odometer statement says that the reading is not the mileage: not actual, or past the odometer's
// mechanical limits. Source: 49 CFR 580, appendices B and C.
func (l Lot) Misread() bool {
	return l.OdometerStatus == "not_actual" || l.OdometerStatus == "exceeds_limits"
}

// KilometresPerMile is exact: the international mile of 1959 is 1,609.344 m.
const KilometresPerMile = 1.609344

// Miles returns the odometer reading in miles and whether it is known.
func (l Lot) Miles() (float64, bool) {
	if l.Odometer == nil {
		return 0, false
	}
	if l.OdometerUnit == "km" {
		return float64(*l.Odometer) / KilometresPerMile, true
	}
	return float64(*l.Odometer), true
}
