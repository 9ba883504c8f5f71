package table

// The plain words of headings that mean the same in every kind of table, in seven languages, the likeliest first. Common practice, no
// source.
const (
	YearWords = "model year|year|my|year of make|built|year built|baujahr|jahr|modelljahr|bj|annee|millesime|annee modele|ano|" +
		"ano modelo|ano de fabricacion|rok|rocznik|rok produkcji|bouwjaar|jaar|modeljaar|anno|anno modello|" +
		"anno di costruzione"
	FirstRegistrationWords = "first registration|first registered|registered|1st registration|1st registered|1st reg|1ere immat|" +
		"1ere immatriculation|1ere mise en circulation|1 zulassung|erstzulassung|ez|ez datum|ez monat|zulassung|" +
		"premiere mise en circulation|mise en circulation|premiere immatriculation|primera matriculacion|matriculacion|" +
		"pierwsza rejestracja|data pierwszej rejestracji|eerste toelating|eerste registratie|prima immatricolazione|" +
		"immatricolazione|1 rejestracja|1a matriculacion|date 1ere immat"
	MakeWords = "make|manufacturer|maker|marke|hersteller|marque|constructeur|fabricant|marca|fabricante|marka|producent|merk|" +
		"fabrikant|costruttore|casa"
	ModelWords = "model|model name|modell|modele|modelo|modello"
	TrimWords  = "trim|trim level|version|variant|ausstattung|ausstattungslinie|variante|finition|acabado|wersja|" +
		"wersja wyposazenia|uitvoering|allestimento|versione"
	VehicleWords = "vehicle|car|vehicle description|car description|what|year make model|make model|make and model|" +
		"make model year|advertisement|advert|ad|listing|marke und modell|marke modell|marque et modele|marque modele|" +
		"marca y modelo|marca modelo|marka i model|marka model|merk en model|merk model|marca e modello|marca modello|" +
		"headline|description of vehicle|fahrzeug|auto|wagen|pkw|anzeige|inserat|vehicule|voiture|annonce titre|" +
		"vehiculo|coche|anuncio|pojazd|samochod|ogloszenie|voertuig|advertentie|veicolo|vettura|annuncio|macchina|woz"
	VINWords = "vin|vehicle identification number|serial number|chassis number|chassis|fahrgestellnummer|fin|numero de serie|" +
		"numero de chassis|bastidor|numero de bastidor|numer vin|numer nadwozia|chassisnummer|telaio|numero di telaio"
	OdometerWords = "mileage|odometer|miles|mi|km|kms|kilometres|kilometers|odometer reading|odo|kilometerstand|laufleistung|" +
		"kilometer|tachostand|gelaufen|kilometrage|compteur|kilometraje|kilometros|cuentakilometros|przebieg|" +
		"stan licznika|tellerstand|chilometraggio|chilometri|contachilometri|percorrenza|driven|parcourus|recorridos|" +
		"percorsi|przejechane|gereden"
	UnitWords     = "mileage unit|odometer unit|unit|units|einheit|unite|unidad|jednostka|eenheid|unita"
	CurrencyWords = "currency|wahrung|waehrung|devise|monnaie|moneda|divisa|waluta|valuta"
	HammerWords   = "zuschlag|zuschlagspreis|hammerpreis|prix d adjudication|adjudication|adjuge|adjuge a|prix marteau|" +
		"precio de remate|remate|precio de adjudicacion|adjudicado|cena mlotkowa|cena wylicytowana|hamerprijs|" +
		"toewijzing|prezzo di aggiudicazione|aggiudicazione|aggiudicato a"
)
