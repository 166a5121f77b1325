import type { ImportKind } from './fields.ts'

const plate = [
  'kennzeichen',
  'kfz kennzeichen',
  'amtliches kennzeichen',
  'nummernschild',
  'kfz kz',
  'kennz',
  'kz',
]
const vin = [
  'fahrgestellnummer',
  'fahrzeug identifizierungsnummer',
  'fahrzeugidentifizierungsnummer',
  'fahrzeugidentnummer',
  'fahrgestell nr',
  'fgst nr',
  'fin',
]
const note = ['notiz', 'notizen', 'bemerkung', 'bemerkungen', 'anmerkung', 'anmerkungen', 'kommentar']
const phone = [
  'telefon',
  'telefonnummer',
  'mobil',
  'mobiltelefon',
  'mobilnummer',
  'handy',
  'handynummer',
  'rufnummer',
  'telefon mobil',
  'telefon nr',
]
const email = ['email adresse', 'mailadresse', 'mail adresse']

/** How lists in German call their columns, folded as the English names are: small letters without accents. */
export const germanColumns: Readonly<Record<ImportKind, Readonly<Record<string, readonly string[]>>>> = {
  customers: {
    name: ['kunde', 'kundenname', 'nachname', 'familienname', 'firma', 'firmenname', 'name firma'],
    givenName: ['vorname'],
    phone,
    email,
    postal: ['anschrift', 'adresse', 'postanschrift', 'straße', 'strasse'],
    kind: ['art', 'kundenart', 'kundentyp'],
    tags: ['stichworte', 'schlagworte', 'gruppe', 'gruppen'],
    note,
  },
  vehicles: {
    plate,
    vin,
    make: ['marke', 'hersteller', 'fabrikat'],
    model: ['modell', 'fahrzeug', 'typ', 'fahrzeugmodell'],
    colour: ['farbe', 'lackfarbe', 'farbton'],
    year: ['modelljahr', 'baujahr', 'jahr'],
    sizeClass: ['große', 'groesse', 'großenklasse', 'fahrzeuggroße', 'klasse'],
    finish: ['oberflache', 'glanz'],
    paint: ['lack', 'lackaufbau', 'lackierung'],
    note,
    ownerName: ['halter', 'fahrzeughalter', 'kunde', 'kundenname', 'besitzer', 'eigentumer', 'haltername'],
    ownerPhone: ['telefon des halters', 'halter telefon', ...phone],
    ownerEmail: ['email des halters', 'halter email', ...email],
  },
  coatings: {
    plate,
    vin,
    product: ['produkt', 'beschichtung', 'versiegelung', 'produktname', 'mittel'],
    laidOn: ['beschichtet am', 'versiegelt am', 'aufgetragen am', 'datum', 'am'],
    renewedOn: [
      'aufgefrischt am',
      'topper erneuert am',
      'letzte auffrischung',
      'zuletzt erneuert',
      'letzte pflege',
    ],
  },
  products: {
    name: ['produkt', 'produktname', 'bezeichnung', 'artikel'],
    kind: ['art', 'produktart', 'kategorie', 'warengruppe'],
    family: ['fur', 'flache', 'oberflache'],
    content: ['inhalt', 'gebinde', 'gebindegroße', 'menge', 'fullmenge', 'große'],
  },
}
