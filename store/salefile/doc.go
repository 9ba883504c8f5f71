// Package salefile answers one question: what does the document of a sale say, and how is its plan written?
//
// [Read] turns a walkline-sale/1 document into a [sale.Sale], as strictly as a case file is read: every fault at once, each with its key.
// cash, hours, bays and lots must stand, and of each lot id, worth, walk_away, beside, hours, hammer and bid_steps; walk_away may be null,
// for a lot that must not be bid on. fees, fixed, tax and payment_surcharge are those of a case file and may be left out; so may later,
// whose keys are 0 then, and days, which is not used. cash_in is optional too: a list of {"day", "amount"}, money that is there for lots of
// its day and of later days. So is bays_free, of {"day", "bays"}: bays that are taken now and free from that day on. With either every lot
// has a day, and none comes before that of the lot before. [WriteAnswer] writes walkline-plan/1.
//
// Units: money in major units, as a number or a string; in the plan as numbers. hammer is {"low", "likely", "high"} or one number.
// Sources: RFC 8259, JSON; ISO 4217, minor units.
//
// It opens no file: bytes in, bytes out.
package salefile
