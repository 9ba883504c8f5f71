// Package resale answers one question: what will the finished vehicle bring, and how unsure is that, given a table of
// comparables, the buyer's beliefs and what other models' prices teach?
//
// Rows are screened, brought to one calendar and fitted by package hedonic on the logarithm of the price: slopes of age and
// mileage, model years, trims, title brand, asked against sold, drift of the market and any further column, all shrunk by what
// other models teach. The standardised left-out residuals calibrate the answer: the quantiles of the predictive
// distribution are a blend of a Student-t, as wide as the residuals are, and of the residuals' own, the k-th of n standing at k/(n+1) as in
// split conformal prediction [1], the residuals counting n/(n+40). The residuals' shape also carries the log fit back to money without the
// bias of exp() (smearing [2]).
//
// Tails: a Student-t on the log scale has no mean once exponentiated. The predictive distribution therefore ends at its
// 1 in 10,000 and 9,999 in 10,000 quantiles, or at the outermost left-out residual where that lies further out; it never
// reaches below a thousandth or above a million million major units.
//
// Without a usable row the buyer's guess stands in: a smooth curve through its 10th, 50th and 90th percentile on the
// normal score of the log price, straight beyond them, ending at three normal scores. Unequal sides so lean the curve: for 12,000 / 16,500
// / 18,500 the logarithm rises by 0.318 over the 1.28 scores below the middle and by 0.114 over those above it, steeper below throughout;
// the quarters are 14,203 and 17,636, the ends 7,829 and 21,567, and the mean is 15,826. With neither, [Model.Err] returns [ErrUnknown] and
// nothing is answered. With rows the guess isn't used.
//
// Units: rows' prices are minor units; [Price], [Model.Distribution] and [Model.LevelSD] are major units; effects are
// logarithms (0.05 is about 5 %), age in years, mileage in 10,000 miles. Beliefs with Low = Likely = High are exact: with
// asked-to-sold certain at 1 and a clear title the answer is that of the asking price.
//
// Assumptions: the subject is drawn like the rows are; asking and selling differ by one factor; brands discount by one
// factor. Coverage is on average over subjects, not for each kind of subject, and is lost when the market isn't like any
// that the priors know and there are fewer than about five rows.
//
// Sources: those of package hedonic; [1] Lei et al., JASA 113 (2018) 1094-1111; [2] Duan, JASA 78 (1983) 605-610; [3] Fritsch and Carlson,
// SIAM J. Numer. Anal. 17 (1980) 238-246, the
// guess's curve; [4] Ang, Energy Policy 32 (2004) 1131-1139, logarithmic-mean shares of a change. Citations from memory.
//
// It doesn't read files, doesn't guess the brand discount from anything but beliefs and branded rows, doesn't see
// photographs or options that no column states, and doesn't tell a bargain from a fraud: a row that lies far from the
// others is named, and hardly counts.
package resale
