package resale

import "walkline/valuation/hedonic"

// What other models' prices teach, as package hedonic keeps it.
type (
	Prior  = hedonic.Prior
	Source = hedonic.Source
	Market = hedonic.Market
	Effect = hedonic.Effect
)

// PriorFormat is the version of the file of starter priors that this package reads.
const PriorFormat = hedonic.PriorFormat

// ParsePrior returns the prior in data, the JSON that cmd/fitprior writes: [hedonic.ParsePrior].
func ParsePrior(data []byte) (Prior, error) { return hedonic.ParsePrior(data) }
