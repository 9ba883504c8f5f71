// Package resale answers one question: what will the finished vehicle bring, and how unsure is that, given a table of
// comparables, the buyer's beliefs and what other models' prices teach?
//
// The natural logarithm of the price is a sum of effects measured from the subject: level, age and its bend, steps from
// model year to model year beside them, mileage (straight, root or logarithm), asked against sold, title brand, condition,
// the drift of the market since the row's day, and, where the table has them, trim, make and model with slopes of their own, and any further column of numbers or
// words that the subject states too. Every effect has a Gaussian prior [Prior] fitted to other models; the spreads of
// effects of levels and of the residual are estimated from the table under priors of their own, so that a column that
// tells nothing shrinks away. Errors are Student-t. All is solved together by expectation-maximisation [1, 2]. Rows far
// from the subject in age, mileage or distance count for less (a power of their likelihood). The drift is a random walk,
// so that old rows fade as fast as the used-vehicle price index has moved.
//
// Forms of mileage and market priors are weighed by how well they foretell rows left out (hat matrix, weights held; no
// refits) [3]; above 80 rows the best on a spread of 80 is fitted to all rows alone. The standardised left-out residuals
// also calibrate the answer: the quantiles of the predictive distribution are a blend of a Student-t and of the residuals'
// own, the k-th of n standing at k/(n+1) as in split conformal prediction [4], the residuals counting n/(n+40). The
// residuals' shape also carries the log fit back to money without the bias of exp() (smearing [5]).
//
// Tails: a Student-t on the log scale has no mean once exponentiated. The predictive distribution therefore ends at its
// 1 in 10,000 and 9,999 in 10,000 quantiles, or at the outermost left-out residual where that lies further out; it never
// reaches below a thousandth or above a million million major units.
//
// Without a usable row the buyer's guess stands in: a smooth curve through its 10th, 50th and 90th percentile on the
// normal score of the log price, straight beyond them, ending at three normal scores. With neither, [Model.Err] returns
// [ErrUnknown] and nothing is answered. With rows the guess isn't used.
//
// Units: rows' prices are minor units; [Price], [Model.Distribution] and [Model.LevelSD] are major units; effects are
// logarithms (0.05 is about 5 %), age in years, mileage in 10,000 miles. Beliefs with Low = Likely = High are exact: with
// asked-to-sold certain at 1 and a clear title the answer is that of the asking price.
//
// Assumptions: the subject is drawn like the rows are; asking and selling differ by one factor; brands discount by one
// factor. Coverage is on average over subjects, not for each kind of subject, and is lost when the market isn't like any
// that the priors know and there are fewer than about five rows.
//
// Sources: [1] Lange, Little and Taylor, Robust statistical modeling using the t distribution, JASA 84 (1989) 881-896;
// [2] Efron and Morris, JASA 70 (1975) 311-319, pooling; [3] Yao, Vehtari, Simpson and Gelman, Using stacking to average
// Bayesian predictive distributions, Bayesian Analysis 13 (2018) 917-1007, weights by pseudo-BMA; [4] Lei et al., JASA 113
// (2018) 1094-1111; [5] Duan, JASA 78 (1983) 605-610; [6] Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, the
// guess's curve; [7] Ang, Energy Policy 32 (2004) 1131-1139, logarithmic-mean shares of a change. Citations from memory.
//
// It doesn't read files, doesn't guess the brand discount from anything but beliefs and branded rows, doesn't see
// photographs or options that no column states, and doesn't tell a bargain from a fraud: a row that lies far from the
// others is named, and hardly counts.
package resale
