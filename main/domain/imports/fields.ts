/** What a list can bring, kind by kind: the fields, how columns of other programs call them, and what a row must have. */

import { word } from '../language/index.ts'

export const importKinds = ['customers', 'vehicles', 'coatings', 'products'] as const
export type ImportKind = (typeof importKinds)[number]

export interface ImportField {
  readonly field: string
  readonly label: string
  /** Without it no row can be taken. */
  readonly needed: boolean
  /** Names of columns that hold it, folded and without signs: a whole name, the most likely first. */
  readonly names: readonly string[]
  /** What is written in it, where that can be written in several ways. */
  readonly written?: 'day' | 'volume'
}

const of = (
  field: string,
  label: string,
  names: readonly string[],
  rest: Partial<Pick<ImportField, 'needed' | 'written'>> = {},
): ImportField => ({ field, label, names, needed: false, ...rest })

const plate = of('plate', word('Plate'), [
  'plate',
  'licence plate',
  'license plate',
  'registration',
  'reg',
  'number plate',
])
const vin = of('vin', word('VIN'), ['vin', 'vehicle identification number', 'chassis number'])

export const importFields: Readonly<Record<ImportKind, readonly ImportField[]>> = {
  customers: [
    of(
      'name',
      word('Name'),
      ['name', 'customer', 'customer name', 'full name', 'last name', 'surname', 'company', 'firm'],
      {
        needed: true,
      },
    ),
    of('givenName', word('First name'), ['first name', 'given name', 'forename']),
    of('phone', word('Phone'), [
      'phone',
      'mobile',
      'cell',
      'telephone',
      'phone number',
      'mobile phone',
      'tel',
    ]),
    of('email', word('E-mail'), ['email', 'email address', 'mail']),
    of('postal', word('Postal address'), ['postal', 'address', 'postal address', 'street']),
    of('kind', word('Person, firm or fleet'), ['kind', 'type', 'customer type']),
    of('tags', word('Tags'), ['tags', 'labels', 'groups']),
    of('note', word('Note'), ['note', 'notes', 'remarks', 'comment', 'comments']),
  ],
  vehicles: [
    plate,
    vin,
    of('make', word('Make'), ['make', 'brand', 'manufacturer']),
    of('model', word('Model'), ['model', 'vehicle']),
    of('colour', word('Colour'), ['colour', 'color', 'paint colour', 'paint color']),
    of('year', word('Model year'), ['year', 'model year']),
    of('sizeClass', word('Size'), ['size', 'size class', 'vehicle size']),
    of('finish', word('Finish||of the paint'), ['finish']),
    of('paint', word('Paint'), ['paint', 'paint system']),
    of('note', word('Note'), ['note', 'notes', 'remarks', 'comment']),
    of('ownerName', word('Owner'), ['owner', 'customer', 'owner name', 'customer name', 'name'], {
      needed: true,
    }),
    of('ownerPhone', word('Owner’s phone'), ['phone', 'owner phone', 'mobile', 'customer phone']),
    of('ownerEmail', word('Owner’s e-mail'), ['email', 'owner email', 'customer email']),
  ],
  coatings: [
    plate,
    vin,
    of('product', word('Product'), ['product', 'product name', 'coating', 'coat', 'topper'], {
      needed: true,
    }),
    of('laidOn', word('Laid on'), ['laid on', 'date', 'applied', 'applied on', 'date applied', 'coated on'], {
      needed: true,
      written: 'day',
    }),
    of(
      'renewedOn',
      word('Topper last renewed on'),
      ['renewed on', 'topper renewed', 'last renewed', 'last maintenance'],
      {
        written: 'day',
      },
    ),
  ],
  products: [
    of('name', word('Name'), ['name', 'product', 'product name'], { needed: true }),
    of('kind', word('Kind'), ['kind', 'type', 'category'], { needed: true }),
    of('family', word('For'), ['family', 'for', 'surface']),
    of('content', word('Content of a container'), ['content', 'size', 'volume', 'amount', 'container'], {
      written: 'volume',
    }),
  ],
}

/** Of these at least one must be given, by kind: a car without a plate is known by its VIN. */
export const oneOf: Readonly<Partial<Record<ImportKind, readonly string[]>>> = { coatings: ['plate', 'vin'] }
