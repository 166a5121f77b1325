import type { ImportKind } from '../../../main/domain/imports/index.ts'
import { say } from '../../../main/domain/language/index.ts'

export const kindChoices: { value: ImportKind; label: string; about: string }[] = [
  {
    value: 'customers',
    label: say('Customers'),
    about: say('A row a customer: name, phone, e-mail, address, tags.'),
  },
  {
    value: 'vehicles',
    label: say('Vehicles'),
    about: say('A row a car with its owner’s name; owners who are not on file are written down with it.'),
  },
  {
    value: 'coatings',
    label: say('Past coatings'),
    about: say(
      'A row a coat or topper with the day it was laid, for cars on file; their reminders begin at once.',
    ),
  },
  {
    value: 'products',
    label: say('Products'),
    about: say('A row a product: name, kind, and what a container holds.'),
  },
]

export const dayOrderChoices = [
  { value: 'dmy' as const, label: say('day, month, year') },
  { value: 'mdy' as const, label: say('month, day, year') },
  { value: 'ymd' as const, label: say('year, month, day') },
]

export const markChoices = [
  { value: '.' as const, label: say('with a point: 1.5') },
  { value: ',' as const, label: say('with a comma: 1,5') },
]

export const volumeChoices = [
  { value: 'ml' as const, label: say('millilitres') },
  { value: 'cl' as const, label: say('centilitres') },
  { value: 'dl' as const, label: say('decilitres') },
  { value: 'l' as const, label: say('litres') },
  { value: 'fl oz' as const, label: say('US fluid ounces') },
  { value: 'gal' as const, label: say('US gallons') },
  { value: 'g' as const, label: say('grams') },
  { value: 'kg' as const, label: say('kilograms') },
  { value: 'oz' as const, label: say('ounces by weight') },
  { value: 'lb' as const, label: say('pounds') },
  { value: 'piece' as const, label: say('pieces') },
]
