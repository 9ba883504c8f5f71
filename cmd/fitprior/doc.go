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
// The second form judges the resale model on tasks (DIR/SET_public_tasks.csv, columns task, regime, subject, comps: the first
// 10, 20 and 40 comparables, or what -sizes asks for). Each vehicle model is foretold with priors fitted to the other models
// only, a set of one model with those of the other sets. It prints the median and mean absolute percentage error, the
// coefficient of dispersion and the price-related differential of a ratio study, and coverage and median width of the 80 %
// interval, beside reference methods that see the same comparables, on clean tables and on three kinds of spoiled ones.
// What is chosen by measurement is chosen on tables around vehicles that no task foretells, which it prints too, with their interval
// scores.
// A set without tasks (DIR/SET_slice.csv, a part of a set) only helps to fit priors.
//
// It doesn't choose the method and keeps no rows of the data.
package main
