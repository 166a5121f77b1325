import { Refusal } from '../refusal.ts'

export interface TransportEntry {
  readonly number: string
  readonly properShippingName: string
  /** Class or division of the main danger. */
  readonly class: string
  /** "II", "I, II or III"; null where the class has none. */
  readonly packingGroup: string | null
}

/**
 * UN numbers met in a detailing shop: number|class|packing groups|proper shipping name. The name and group on the product's
 * own data sheet, section 14, decide.
 * Source: UN Model Regulations, chapter 3.2, dangerous goods list; from memory (UN1866 read on a public data sheet).
 */
const rows = `
1002|2.2||AIR, COMPRESSED
1013|2.2||CARBON DIOXIDE
1090|3|II|ACETONE
1123|3|II or III|BUTYL ACETATES
1133|3|I, II or III|ADHESIVES containing flammable liquid
1139|3|I, II or III|COATING SOLUTION
1170|3|II or III|ETHANOL (ETHYL ALCOHOL) or ETHANOL SOLUTION (ETHYL ALCOHOL SOLUTION)
1173|3|II|ETHYL ACETATE
1193|3|II|ETHYL METHYL KETONE (METHYL ETHYL KETONE)
1202|3|III|GAS OIL or DIESEL FUEL or HEATING OIL, LIGHT
1203|3|II|MOTOR SPIRIT or GASOLINE or PETROL
1219|3|II|ISOPROPANOL (ISOPROPYL ALCOHOL)
1223|3|III|KEROSENE
1230|3|II|METHANOL
1263|3|I, II or III|PAINT or PAINT RELATED MATERIAL
1268|3|I, II or III|PETROLEUM DISTILLATES, N.O.S. or PETROLEUM PRODUCTS, N.O.S.
1294|3|II|TOLUENE
1300|3|II or III|TURPENTINE SUBSTITUTE
1307|3|II or III|XYLENES
1719|8|II or III|CAUSTIC ALKALI LIQUID, N.O.S.
1760|8|I, II or III|CORROSIVE LIQUID, N.O.S.
1789|8|II or III|HYDROCHLORIC ACID
1791|8|II or III|HYPOCHLORITE SOLUTION
1805|8|III|PHOSPHORIC ACID SOLUTION
1814|8|II or III|POTASSIUM HYDROXIDE SOLUTION
1824|8|II or III|SODIUM HYDROXIDE SOLUTION
1830|8|II|SULPHURIC ACID with more than 51% acid
1866|3|I, II or III|RESIN SOLUTION, flammable
1950|2||AEROSOLS
1987|3|II or III|ALCOHOLS, N.O.S.
1992|3|I, II or III|FLAMMABLE LIQUID, TOXIC, N.O.S.
1993|3|I, II or III|FLAMMABLE LIQUID, N.O.S.
2014|5.1|II|HYDROGEN PEROXIDE, AQUEOUS SOLUTION with not less than 20% but not more than 60% hydrogen peroxide
2052|3|III|DIPENTENE
2319|3|III|TERPENE HYDROCARBONS, N.O.S.
2672|8|III|AMMONIA SOLUTION with more than 10% but not more than 35% ammonia
2796|8|II|SULPHURIC ACID with not more than 51% acid
2817|8|II or III|AMMONIUM HYDROGENDIFLUORIDE SOLUTION
2922|8|I, II or III|CORROSIVE LIQUID, TOXIC, N.O.S.
2924|3|I, II or III|FLAMMABLE LIQUID, CORROSIVE, N.O.S.
2984|5.1|III|HYDROGEN PEROXIDE, AQUEOUS SOLUTION with not less than 8% but less than 20% hydrogen peroxide
3077|9|III|ENVIRONMENTALLY HAZARDOUS SUBSTANCE, SOLID, N.O.S.
3082|9|III|ENVIRONMENTALLY HAZARDOUS SUBSTANCE, LIQUID, N.O.S.
3175|4.1|II|SOLIDS CONTAINING FLAMMABLE LIQUID, N.O.S.
3264|8|I, II or III|CORROSIVE LIQUID, ACIDIC, INORGANIC, N.O.S.
3265|8|I, II or III|CORROSIVE LIQUID, ACIDIC, ORGANIC, N.O.S.
3266|8|I, II or III|CORROSIVE LIQUID, BASIC, INORGANIC, N.O.S.
3267|8|I, II or III|CORROSIVE LIQUID, BASIC, ORGANIC, N.O.S.
3295|3|I, II or III|HYDROCARBONS, LIQUID, N.O.S.
3469|3|I, II or III|PAINT, FLAMMABLE, CORROSIVE or PAINT RELATED MATERIAL, FLAMMABLE, CORROSIVE
3480|9||LITHIUM ION BATTERIES`

const entries: ReadonlyMap<string, TransportEntry> = new Map(
  rows
    .trim()
    .split('\n')
    .map(row => {
      const [digits, danger, groups, name] = row.split('|') as [string, string, string, string]
      const number = `UN${digits}`
      return [number, { number, properShippingName: name, class: danger, packingGroup: groups || null }]
    }),
)

/** "UN1263" from "un 1263", "UN-1263" or "1263"; refuses what is not a number of four digits. */
export function readUnNumber(text: string, field = 'unNumber'): string {
  const digits = /^(?:UN|ID)?[\s-]*(\d{4})$/i.exec(text.trim())?.[1]
  if (!digits)
    throw new Refusal(
      'un-number-bad',
      field,
      text,
      `"${text}" is not a UN number; copy the four digits from section 14 of the data sheet, such as UN1263.`,
    )
  return `UN${digits}`
}

/**
 * What the list says of a UN number, null where our short list does not hold it. A packing group from the data sheet takes
 * the place of the choices; one the entry does not know is refused.
 */
export function transportEntry(text: string, packingGroup?: string): TransportEntry | null {
  const entry = entries.get(readUnNumber(text))
  if (!entry || packingGroup === undefined) return entry ?? null
  if (!entry.packingGroup?.split(/, | or /).includes(packingGroup))
    throw new Refusal(
      'packing-group-bad',
      'packingGroup',
      packingGroup,
      `${entry.number} knows ${entry.packingGroup ? `packing group ${entry.packingGroup}` : 'no packing group'}, not ${packingGroup}.`,
    )
  return { ...entry, packingGroup }
}
