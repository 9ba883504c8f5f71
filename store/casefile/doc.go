// Package casefile answers one question: what does a case file say, and what is wrong with it?
//
// [Read] turns one JSON document into a [valuation.Case]: strictly, and collecting every fault instead of stopping at the
// first. An unknown key is a fault that names the nearest known one; a key given twice, a date that does not exist, money
// with more decimals than its currency has and a value of the wrong kind are faults that name the key, the value and what
// would be right. Missing optional keys take the defaults of [valuation.Defaults]. Values are then checked against each
// other by [valuation.Case.Check]. [Write] and [WriteAnswer] write the same documents, keys in a fixed order.
//
// Units: money is a decimal string or number in major units; three-point values are {"low","likely","high"} or one number.
// Assumptions: UTF-8; the currency key decides how many decimals money has.
//
// Sources: [1] RFC 8259, JSON; [2] ISO 4217, minor units.
//
// It opens no file: bytes in, bytes out.
package casefile
