package lot

import "strings"

// Brand is one word of the standard vocabulary of title brands.
type Brand struct {
	Code, Words string
}

// Brands is the vocabulary in the order of its codes. Source: AAMVA D20 as published in NIEM 6.0 (OASIS NIEMOpen, project
// specification 02, 1 January 2025, aamva_d20.xsd, BrandCodeSimpleType), CC BY 4.0.
var Brands = []Brand{
	{"00", "Clear"}, {"01", "Flood damage"}, {"02", "Fire damage"}, {"03", "Hail damage"}, {"04", "Salt damage"},
	{"05", "Vandalism"}, {"06", "Kit"}, {"07", "Dismantled"}, {"08", "Junk"}, {"09", "Rebuilt"}, {"10", "Reconstructed"},
	{"11", "Salvage"}, {"12", "Test Vehicle"}, {"13", "Refurbished"}, {"14", "Collision"}, {"15", "Reserved"},
	{"16", "Salvage Retention"}, {"17", "Prior Taxi"}, {"18", "Prior Police"}, {"19", "Original Taxi"},
	{"20", "Original Police"}, {"21", "Remanufactured"}, {"22", "Gray Market"}, {"23", "Warranty Return"}, {"24", "Antique"},
	{"25", "Classic"}, {"26", "Agricultural Vehicle"}, {"27", "Logging Vehicle"}, {"28", "Street Rod"},
	{"29", "Vehicle Contains Reissued VIN"}, {"30", "Replica"}, {"31", "Totaled"}, {"32", "Owner Retained"},
	{"33", "Bond Posted"}, {"34", "Memorandum Copy"}, {"35", "Parts Only"}, {"36", "Recovered Theft"},
	{"37", "Undisclosed Lien"}, {"38", "Prior Owner Retained"}, {"39", "Vehicle Non-conformity Uncorrected"},
	{"40", "Vehicle Non-conformity Corrected"}, {"41", "Vehicle Safety Defect Uncorrected"},
	{"42", "Vehicle Safety Defect Corrected"}, {"43", "VIN replaced by a new state assigned VIN"}, {"45", "Gray Market"},
	{"46", "Gray Market"}, {"68", "Actual"}, {"69", "Not Actual"}, {"70", "Not Actual - Odometer tampering verified"},
	{"71", "Exempt from Odometer Disclosure"}, {"72", "Exceeds Mechanical Limits"}, {"73", "Odometer may be Altered"},
	{"74", "Odometer Replaced"}, {"75", "Reading at Time of Renewal"}, {"76", "Odometer Discrepancy"},
	{"77", "Call Title Division"}, {"78", "Rectify Previous Exceeds Mechanical Limits Brand"},
}

// BrandOf returns the brand that a word or code of a title names, whatever its case, and whether there is one. The short
// words of the trade ("flood", "fire", "hail") are taken for the brand that begins with them.
func BrandOf(word string) (Brand, bool) {
	plain := plainBrand(word)
	if plain == "" {
		return Brand{}, false
	}
	for _, b := range Brands {
		known := plainBrand(b.Words)
		if plain == b.Code || plain == known || plain+" damage" == known {
			return b, true
		}
	}
	return Brand{}, false
}

// plainBrand returns the words in small letters, one space between them.
func plainBrand(words string) string {
	return strings.ToLower(strings.Join(strings.FieldsFunc(words, func(r rune) bool { return r == '_' || r == '-' || r == ' ' }), " "))
}
