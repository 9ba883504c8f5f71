// Command fitprior fits the starter priors of the resale model to open price data and writes them as JSON.
//
//	go run ./cmd/fitprior -prices DIR -out assets/priors/resale.json
//	go run ./cmd/fitprior -prices DIR -tasks DIR
//
// The first form reads DIR/*_public.csv (columns row_id, make, model, year, mileage, mileage_unit, trim, price, currency and
// any number of further ones) and DIR/used_vehicle_cpi_us.csv. For each set it draws small tables around rows of each
// model and fits, by empirical Bayes, what the models have in common: slopes, spreads, residual. All draws are seeded: the
// same data give the same file.
//
// The second form judges the method on tasks (columns task, regime, subject, comps), each model with priors fitted to the
// other models only, and prints median and mean absolute percentage error, coverage and width of the 80 % interval.
//
// It doesn't choose the method and keeps no rows of the data.
package main
