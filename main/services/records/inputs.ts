import { z } from 'zod'
import { word } from '../../domain/language/index.ts'
import { customerKinds, paintSystems, panelFinishes, panelNames } from '../../domain/shop/index.ts'
import { accepted, date, edited, finish, id, number, oneRow, sizeClass, text } from '../desk/inputs.ts'

/** What is known of somebody: to look them up by, or to write them down. */
export const person = {
  name: text,
  kind: z.enum(customerKinds).default('person'),
  tags: z.array(z.string().max(200)).max(60).readonly().default([]),
  /** As typed; read in the shop's country unless it carries a country code. */
  phone: text.nullable().optional(),
  email: text.nullable().optional(),
  note: text.default(''),
}

const car = {
  /** Empty: none yet. */
  plate: text,
  make: text.default(''),
  model: text.default(''),
  colour: text.default(''),
  year: number(word('Give the model year in four digits.')).nullable().optional(),
  vin: text.nullable().optional(),
  sizeClass,
  finish,
  paint: z.enum(paintSystems).default('unknown'),
  /** Panels that are not as the rest. */
  panels: z
    .array(z.object({ panel: z.enum(panelNames), finish: z.enum(panelFinishes), since: date.nullable() }))
    .max(20)
    .readonly()
    .default([]),
  note: text.default(''),
}

export const customerInput = z.object({ ...edited, ...person, accepted })
export type CustomerInput = z.input<typeof customerInput>

export const vehicleInput = z.object({ ...edited, ...car, customerId: id })
export type VehicleInput = z.input<typeof vehicleInput>

/** Whose car is to be booked: one on file, a new one of somebody on file, or a new customer's. */
export const callerInput = z.union([
  z.object({ vehicleId: id }),
  z.object({ customerId: id, vehicle: z.object(car) }),
  z.object({ customer: z.object(person), vehicle: z.object(car), accepted }),
])
export type CallerInput = z.input<typeof callerInput>

export const customersFound = z.object({
  text: z.string().max(200),
  limit: z.int().min(1).max(200).optional(),
  /** How many are shown already. */
  cursor: z.int().min(0).max(10_000_000).optional(),
  archived: z.boolean().optional(),
})
export type CustomersFoundInput = z.input<typeof customersFound>

export const contactInput = z.object({
  ...edited,
  customerId: id,
  name: text,
  role: text.default(''),
  phone: text.nullable().optional(),
  email: text.nullable().optional(),
  callFirst: z.boolean().default(false),
})
export type ContactInput = z.input<typeof contactInput>

const short = z.string().max(200).default('')

/** What is typed of somebody so far. */
export const alikeInput = z.object({
  name: short,
  phone: short,
  email: short,
  plate: short,
  vin: short,
  /** Somebody on file already, who is not like themselves. */
  exceptId: id.optional(),
})
export type AlikeInput = z.input<typeof alikeInput>

/** Whose entry is taken where both say something. */
const side = z.enum(['kept', 'gone'])

export const mergeInput = z.object({
  kept: oneRow,
  gone: oneRow,
  take: z.object({ name: side, phone: side, email: side, postal: side }),
})
export type MergeInput = z.infer<typeof mergeInput>
