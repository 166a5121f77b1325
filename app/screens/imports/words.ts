import type { ImportKind } from '../../../main/domain/imports/index.ts'

export const kindChoices: { value: ImportKind; label: string; about: string }[] = [
  { value: 'customers', label: 'Customers', about: 'A row a customer: name, phone, e-mail, address, tags.' },
  {
    value: 'vehicles',
    label: 'Vehicles',
    about: 'A row a car with its owner’s name; owners who are not on file are written down with it.',
  },
  {
    value: 'coatings',
    label: 'Past coatings',
    about:
      'A row a coat or topper with the day it was laid, for cars on file; their reminders begin at once.',
  },
  { value: 'products', label: 'Products', about: 'A row a product: name, kind, and what a container holds.' },
]

export const dayOrderChoices = [
  { value: 'dmy' as const, label: 'day, month, year' },
  { value: 'mdy' as const, label: 'month, day, year' },
  { value: 'ymd' as const, label: 'year, month, day' },
]

export const markChoices = [
  { value: '.' as const, label: 'with a point: 1.5' },
  { value: ',' as const, label: 'with a comma: 1,5' },
]

export const volumeChoices = [
  { value: 'ml' as const, label: 'millilitres' },
  { value: 'l' as const, label: 'litres' },
  { value: 'fl oz' as const, label: 'US fluid ounces' },
  { value: 'gal' as const, label: 'US gallons' },
  { value: 'g' as const, label: 'grams' },
  { value: 'kg' as const, label: 'kilograms' },
  { value: 'piece' as const, label: 'pieces' },
]
