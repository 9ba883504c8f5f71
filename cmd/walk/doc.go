// Command walk is the terminal side of Walkline: it values case files, prints their decision sheets, plans a sale, learns from
// past buys and checks tables of comparables.
//
//	walk value case.json [--json]                           the walk-away bid, why, and what could go wrong
//	walk sheet case.json -o sheet.pdf                       its decision sheet to print; --paper a4 or letter, --date DAY
//	walk plan problem.json [--json] [--then 14=won@3900]    today's bids on the lots of a sale, for the cash, hours and bays there are
//	walk parts case.json... [-o parts.csv]                  the shopping list: every part of the lots, its sources, what it is for
//	walk tune store.db --dry-run [--json]                   how the forecasts did, and what past buys would change; changes nothing
//	walk replay store.db [--json]                           what today's factors would have bid on each past lot
//	walk comps check FILE                                   what a table of comparables holds, and every row that cannot be used
//	walk comps rows FILE --json                             its rows as they are read, those refused or passed over, and what is open
//	walk lots rows FILE --json                              the same of a run list
//	walk comps price FILE --subject subject.json            the price of one vehicle: point, 80 % interval and grid, as JSON
//	walk comps prices --subjects subjects.csv --dir DIR     the prices of many, each from DIR/VEHICLE.csv, as CSV
//	walk help [COMMAND]                                     the overview, or one command with its options; COMMAND --help too
//	walk version                                            which build this is
//
// The subject of price is a JSON object: currency and model_year, and where known make, model, trim, mileage, mileage_unit,
// condition, brand (empty: rebuilt), sale_date, valued_on, more (other columns by their names), brand_discount and
// asked_to_sold as in a case file.
//
// The subjects of prices have the columns of a table of comparables, vehicle, and no price that is read; their titles are
// clear unless stated, and asked prices are taken as they are. The point is the median. Numbers stand with a decimal point
// and no mark between thousands or a comma, dates as year-month-day. A comparable that cannot be read is named and left
// out; a vehicle that cannot be valued is named, left out, and makes the exit code.
//
// Exit codes: 0 done; 1 a file could not be read or written; 2 the call or the case is at fault, one line a fault.
package main
