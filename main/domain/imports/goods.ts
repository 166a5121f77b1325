/** Past coatings and products of a list. */

import { dayWords } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import {
  type CoatingFamily,
  checkText,
  coatingFamilies,
  familyWords,
  kindWords,
  type ProductKind,
  productKinds,
} from '../shop/index.ts'
import { checkVin, foldText, readPlate } from '../vehicle/index.ts'
import { readDay } from './days.ts'
import type { CarsOnFile } from './onFile.ts'
import { type RowFound, RowReader, type RowRules } from './row.ts'
import { type Content, readContent } from './volumes.ts'
import { readWord } from './words.ts'

export interface NewCoating {
  readonly id: string
  readonly vehicleId: string
  readonly productId: string
  readonly stage: 'coat' | 'topper'
  readonly laidOn: string
  /** The day its topper was last renewed; null: never, or not known. */
  readonly renewedOn: string | null
}

export interface CoatingsKnown {
  readonly cars: CarsOnFile
  /** Products by folded name. */
  readonly products: ReadonlyMap<string, { readonly id: string; readonly kind: string }>
  /** What lies on cars already, by `layerKey`; what a list adds is here for its later rows. */
  readonly layers: Set<string>
}

export const layerKey = (layer: { vehicleId: string; productId: string; laidOn: string }) =>
  `${layer.vehicleId} ${layer.productId} ${layer.laidOn}`

/** A coat or topper laid before this program. */
export function readCoating(
  cells: readonly string[],
  rules: RowRules,
  { cars, products, layers }: CoatingsKnown,
): RowFound<NewCoating> {
  const row = new RowReader(cells, rules.reading)
  const plate = row.read('plate', text => readPlate(text).shown, '')
  const vin = row.text('vin') === '' ? null : checkVin(row.text('vin')).vin
  const car = cars.find(plate, vin)
  if (!car) {
    const field = plate === '' && vin !== null ? 'vin' : 'plate'
    row.wrong(
      field,
      plate === '' && vin === null
        ? say('Nothing says which car it is; write its plate or VIN.')
        : say('No such car is on file; take the cars in first, or mend the plate.'),
    )
  }
  const product = products.get(foldText(row.text('product')))
  if (row.text('product') === '') row.wrong('product', say('What was laid is missing; write the product.'))
  else if (!product)
    row.wrong(
      'product',
      say('No product of this name is on file; add it under Products, or write its name as there.'),
    )
  else if (product.kind !== 'coating' && product.kind !== 'topper')
    row.wrong('product', say('This product is no coating and no topper; choose what lies on the car.'))
  const laidOn = dayOf(row, 'laidOn', rules)
  if (row.text('laidOn') === '') row.wrong('laidOn', say('The day it was laid is missing; write it.'))
  const renewedOn = dayOf(row, 'renewedOn', rules)
  if (laidOn !== null && renewedOn !== null && renewedOn < laidOn)
    row.wrong(
      'renewedOn',
      say('It was laid on {laidOn}; give a later day, or leave it empty.', { laidOn: dayWords(laidOn) }),
    )
  if (row.problems.length > 0 || !car || !product || laidOn === null)
    return { state: 'bad', problems: row.problems }
  const values: NewCoating = {
    id: rules.newId(),
    vehicleId: car.id,
    productId: product.id,
    stage: product.kind === 'topper' ? 'topper' : 'coat',
    laidOn,
    renewedOn,
  }
  const key = layerKey(values)
  if (layers.has(key)) return { state: 'known', why: say('It is on file already.') }
  layers.add(key)
  return { state: 'new', values, notes: [] }
}

const firstDay = '1950-01-01'

function dayOf(row: RowReader, field: string, { reading, today }: RowRules): string | null {
  const text = row.text(field)
  if (text === '') return null
  const day = readDay(text, reading.dayOrder ?? 'ymd')
  if (day === null || day < firstDay) {
    row.wrong(field, say('This is no day of the calendar; write it as 2026-04-15.'))
    return null
  }
  if (day > today) {
    row.wrong(field, say('{day} is still to come; give the day it was done.', { day: dayWords(day) }))
    return null
  }
  return day
}

export interface NewProduct {
  readonly id: string
  readonly sizeId: string
  readonly name: string
  readonly kind: ProductKind
  readonly family: CoatingFamily
  readonly content: Content | null
  /** The content as the list has it. */
  readonly label: string
}

const otherKinds: Readonly<Record<string, ProductKind>> = {
  shampoo: 'wash',
  'ceramic coating': 'coating',
  'panel wipe': 'wipe',
}

/** A product; one whose name is taken is left as it is. `names` holds those on file, in small letters. */
export function readProduct(
  cells: readonly string[],
  rules: RowRules,
  names: Set<string>,
): RowFound<NewProduct> {
  const row = new RowReader(cells, rules.reading)
  const name = row.read('name', text => checkText(text, 'name', say('The product’s name')), '')
  if (row.text('name') === '') row.wrong('name', say('The name is missing; write one.'))
  const said = row.text('kind')
  const kind = said === '' ? null : readWord(said, productKinds, otherKinds, kindWords)
  if (kind === null)
    row.wrong(
      'kind',
      say('Write one of {productKinds}.', { productKinds: productKinds.map(kindWords).join(', ') }),
    )
  const family = row.word(
    'family',
    text => readWord(text, coatingFamilies, {}, familyWords),
    'paint',
    coatingFamilies,
    familyWords,
  )
  const label = row.text('content')
  const { mark, volume } = rules.reading
  const content = label === '' ? null : readContent(label, { mark: mark ?? '.', usual: volume })
  if (label !== '' && content === null)
    row.wrong(
      'content',
      say('This is no content; write an amount with its unit, such as 500 ml, or leave it empty.'),
    )
  if (row.problems.length > 0 || kind === null) return { state: 'bad', problems: row.problems }
  if (names.has(name.toLowerCase()))
    return { state: 'known', why: say('{name} is on file already.', { name }) }
  names.add(name.toLowerCase())
  const cured = kind === 'coating' || kind === 'topper'
  return {
    state: 'new',
    values: {
      id: rules.newId(),
      sizeId: rules.newId(),
      name,
      kind,
      family,
      content,
      label: label.slice(0, 40),
    },
    notes: cured ? [say('It begins with common cure times: put in those of its data sheet.')] : [],
  }
}
