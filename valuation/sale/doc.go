// Package sale answers one question: which lots of a sale shall be bid on, and how high today, with the cash, hours and bays there are?
//
// The lots run one after another, on one day or on several. Money that comes in ([Income]) and bays that come free ([Freed]) are there for
// lots of their day and of later days. A lot's hammer price is a draw of its [Law], raised to the smallest legal bid at or above it (the
// lowest legal bid where it lies below that), and is what is paid. A bid wins every price up to its own. A win at price p brings worth -
// A(p), less what [Later] sets on what it uses, and takes A(p) + beside, the lot's hours and a bay. [New] works out the policy of the
// greatest expected sum:
//
//	V(i, left) = V(i+1, left) + max over bids b of  sum over p <= b of P(p) (gain(p) + V(i+1, left - need(p)) - V(i+1, left))
//
// over bids up to the walk-away bid at which every legal price from the lowest up to b fits the cash left. [Plan.Answer] gives the
// bids and figures as seen before the sale, [Sale.After] the sale that is left after results.
//
// Where the states that can be reached are few, they are worked out to the cent (dynamic program). Elsewhere V is read from a grid of
// cash and hours with straight lines between, bids are the best against it, and what following them brings is simulated:
// V(0) + sum over the lots of (best step against V - V), whose mean is the policy's own value whatever the grid's errors, so that few
// runs do. The error is its standard error.
//
// Two states count as one where no lot to come can tell them apart: cash beyond what the lots can take, bays beyond the wins that
// cash and hours allow, and with one win left, cash between two prices.
//
// Units: money.Amount in minor units where an invoice shows it, float64 in major units for profits; hours; chances 0..1.
// Assumptions: lots are independent, a price tells nothing of what a lot is worth; cash, hours and bays are hard.
// Random: one stream of fixed seed, for what is simulated. Limits: 1,000 lots, a million legal bids up to the walk-away bids.
//
// Sources: [1] Bellman, Dynamic Programming, 1957; [2] Papastavrou, Rajagopalan and Kleywegt, Management Science 42 (1996)
// 1706-1718, the knapsack with items that arrive one by one (both from memory).
//
// It values no lot: worth and walk-away bids come from the lots' own valuations.
package sale
