/** What the first run and the shop's settings send. */
import { z } from 'zod'
import { conditions, handoverRules, unitSystems } from '../../domain/shop/index.ts'
import { accepted, capability, number, skill, text, version, weekly, whole } from '../desk/inputs.ts'

const basics = {
  name: text,
  zone: text,
  currency: text,
  units: z.enum(unitSystems),
  country: text,
  weekly,
}

export const shopSetUp = z.object({
  ...basics,
  bays: z.array(z.object({ name: text, capabilities: z.array(capability).max(4) })).max(60),
  crew: z.array(z.object({ name: text, skills: z.array(skill).max(3) })).max(60),
  /** Begin with the usual treatments and products, unpriced. */
  starters: z.boolean().default(true),
})
export type ShopSetUp = z.infer<typeof shopSetUp>

export const shopUpdate = z.object({
  ...basics,
  gridMin: whole('Give a number of minutes.'),
  handoverRule: z.enum(handoverRules),
  conditionFactors: z.record(z.enum(conditions), number('Give a number.')),
  phone: text.nullable(),
  email: text.nullable(),
  address: text.nullable(),
  version,
  accepted,
})
export type ShopUpdate = z.infer<typeof shopUpdate>
