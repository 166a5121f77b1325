import fc from 'fast-check'
import { describe, expect, it, test } from 'vitest'
import { ordersFitting, readDay } from '../../../main/domain/imports/days.ts'
import { guessColumns, settle } from '../../../main/domain/imports/reading.ts'
import { needsMark, readContent, unitNamed } from '../../../main/domain/imports/volumes.ts'

const day = fc
  .integer({ min: 0, max: 27_000 })
  .map(days => Temporal.PlainDate.from('1955-01-01').add({ days }).toString())

const written = (on: string, order: 'ymd' | 'dmy' | 'mdy', sign: string) => {
  const [y, m, d] = on.split('-') as [string, string, string]
  return [...order].map(letter => ({ y, m, d })[letter as 'y' | 'm' | 'd']).join(sign)
}

describe('a day', () => {
  it('is read back in the order it was written, with any sign between and a time behind it', () => {
    fc.assert(
      fc.property(
        day,
        fc.constantFrom('ymd', 'dmy', 'mdy'),
        fc.constantFrom('-', '/', '.'),
        (on, order, sign) => {
          expect(readDay(written(on, order, sign), order)).toBe(on)
          expect(readDay(`${on} 10:30`, order)).toBe(on)
        },
      ),
    )
  })

  it.each([
    ['31/02/2024', 'dmy', null],
    ['1/2/24', 'dmy', '2024-02-01'],
    ['1.2.98', 'dmy', '1998-02-01'],
    ['29.02.2023', 'dmy', null],
    ['5 o’clock', 'dmy', null],
    ['2024-05-04T10:00:00.000Z', 'mdy', '2024-05-04'],
    ['123/4/5', 'ymd', null],
  ] as const)('%s read as %s', (text, order, on) => {
    expect(readDay(text, order)).toBe(on)
  })

  it('settles its order where one fits more days than the others, and asks where two fit', () => {
    expect(ordersFitting(['04/05/2024', '14/05/2024'])).toEqual(['dmy'])
    expect(ordersFitting(['04/05/2024', '05/14/2024', 'soon'])).toEqual(['mdy'])
    expect(ordersFitting(['04/05/2024'])).toEqual(['dmy', 'mdy'])
    expect(ordersFitting(['2024-05-04'])).toEqual(['ymd'])
    expect(ordersFitting([])).toEqual(['ymd'])
  })
})

// Units: NIST Special Publication 811, appendix B.8.
test.each([
  ['500 ml', '.', null, { amount: 500, unit: 'ml' }],
  ['16 fl. oz', '.', null, { amount: 473.18, unit: 'ml' }],
  ['1 gal', '.', null, { amount: 3785.41, unit: 'ml' }],
  ['1,5 l', ',', null, { amount: 1500, unit: 'ml' }],
  ['1.250,5', ',', 'g', { amount: 1250.5, unit: 'g' }],
  ['250', '.', 'ml', { amount: 250, unit: 'ml' }],
  ['250', '.', null, null],
  ['0 ml', '.', null, null],
  ['a bottle', '.', 'ml', null],
  ['75 cl', '.', 'ml', { amount: 750, unit: 'ml' }],
  ['2 dl', '.', 'ml', { amount: 200, unit: 'ml' }],
  ['2 lb', '.', 'ml', { amount: 907.18, unit: 'g' }],
  ['8lbs.', '.', null, { amount: 3628.74, unit: 'g' }],
  ['75', '.', 'cl', { amount: 750, unit: 'ml' }],
  // An ounce is what the list's own unit makes of it; a pint or a gallon of elsewhere is nobody's guess.
  ['16 oz', '.', 'fl oz', { amount: 473.18, unit: 'ml' }],
  ['16 oz', '.', 'oz', { amount: 453.59, unit: 'g' }],
  ['16 oz', '.', 'ml', null],
  ['1 pint', '.', 'ml', null],
  ['2 qt', '.', 'l', null],
  ['1 imp. gal', '.', 'ml', null],
  // The unit is that of the figure it stands with, whatever a label says beside it.
  ['32 oz (946 ml)', '.', 'ml', null],
  ['32 fl oz (946 ml)', '.', 'ml', { amount: 946.35, unit: 'ml' }],
  ['2 lb (907 g)', '.', null, { amount: 907.18, unit: 'g' }],
  ['1 qt / 946 ml', '.', 'ml', null],
  ['6 x 500 ml', '.', 'ml', null],
  ['ml 500', '.', null, { amount: 500, unit: 'ml' }],
  ['500 ml (UK)', '.', null, { amount: 500, unit: 'ml' }],
  ['250 (new)', '.', 'ml', { amount: 250, unit: 'ml' }],
] as const)('the content %s', (cell, mark, usual, content) => {
  expect(readContent(cell, { mark, usual })).toEqual(content)
})

test('a unit is named by a word of its own, never by an ounce alone', () => {
  expect(unitNamed('Size (ml)')).toBe('ml')
  expect(unitNamed('50ML')).toBe('ml')
  expect(unitNamed('Label')).toBeNull()
  expect(unitNamed('16 oz')).toBeNull()
})

test.each([
  [['1.250,5'], ','],
  [['1,250', '0.5'], '.'],
  [['1.250.000'], ','],
  [['1,250'], 'ask'],
  [['500'], '.'],
] as const)('before the fraction of %j stands %s', (cells, mark) => {
  expect(needsMark(cells)).toBe(mark)
})

test('columns are guessed by whole names first, and each is taken once', () => {
  expect(
    guessColumns('customers', ['Customer e-mail', 'First Name', 'Surname', 'Phone number (home)']),
  ).toMatchObject({
    name: 2,
    givenName: 1,
    phone: 3,
    email: 0,
    note: null,
  })
  fc.assert(
    fc.property(
      fc.array(fc.constantFrom('Name', 'Plate', 'Owner', 'Notes', 'x', ''), { maxLength: 8 }),
      names => {
        const taken = Object.values(guessColumns('vehicles', names)).filter(each => each !== null)
        expect(new Set(taken).size).toBe(taken.length)
      },
    ),
  )
})

test('what only a person can say is asked, and what another column makes unsure is asked anew', () => {
  const file = {
    names: ['Plate', 'Coat', 'On', 'Then'],
    rows: [['KFR 204', 'Two', '04/05/2024', '2024-05-04']],
  }
  const columns = { plate: 0, vin: null, product: 1, laidOn: 2, renewedOn: null }
  const bare = { columns, dayOrder: null, mark: null, volume: null }
  expect(settle('coatings', file, bare).ask).toEqual(['dayOrder'])
  expect(settle('coatings', file, { ...bare, dayOrder: 'dmy' }).ask).toEqual([])
  expect(settle('coatings', file, { ...bare, columns: { ...columns, laidOn: 3 } })).toMatchObject({
    ask: [],
    reading: { dayOrder: 'ymd' },
  })
})

describe('columns named in German', () => {
  it.each([
    [
      'customers',
      'Firma;Vorname;Mobil;E-Mail;Anschrift;Kundenart;Stichworte;Bemerkung',
      ['name', 'givenName', 'phone', 'email', 'postal', 'kind', 'tags', 'note'],
    ],
    [
      'vehicles',
      'Kennzeichen;Fahrgestellnummer;Hersteller;Modell;Farbe;Baujahr;Größe;Oberfläche;Lack;Notiz;Halter;Telefonnummer;E-Mail-Adresse',
      [
        'plate',
        'vin',
        'make',
        'model',
        'colour',
        'year',
        'sizeClass',
        'finish',
        'paint',
        'note',
        'ownerName',
        'ownerPhone',
        'ownerEmail',
      ],
    ],
    [
      'coatings',
      'Kfz-Kennzeichen;FIN;Beschichtung;Aufgetragen am;Letzte Auffrischung',
      ['plate', 'vin', 'product', 'laidOn', 'renewedOn'],
    ],
    ['products', 'Bezeichnung;Produktart;Für;Inhalt (ml)', ['name', 'kind', 'family', 'content']],
  ] as const)('of %s are found', (kind, heading, fields) => {
    const columns = Object.fromEntries(fields.map((field, i) => [field, i]))
    expect(guessColumns(kind, heading.split(';'))).toEqual(columns)
  })

  it('amounts are read in their words too', () => {
    expect(readContent('5 Stück', { mark: ',', usual: null })).toEqual({ amount: 5, unit: 'piece' })
    expect(readContent('250 Gramm', { mark: ',', usual: null })).toEqual({ amount: 250, unit: 'g' })
    expect(readContent('1,5 Liter', { mark: ',', usual: null })).toEqual({ amount: 1500, unit: 'ml' })
    expect(unitNamed('Stückliste')).toBeNull()
  })
})
