/** The demo's shelf: what it counts, in which sizes, from whom. Every name and figure is invented. */
import type { ShelfFields } from '../shelf/inputs.ts'

export interface DemoStock {
  productId: string
  unit: ShelfFields['unit']
  /** g/ml; null for pieces. */
  density: number | null
  lifeAfterOpeningDays: number | null
  place: string
  serviceClass: ShelfFields['serviceClass']
  /** The size it is bought in: as the label says, and as one was measured. */
  label: string
  content: number
  measured: number | null
  tareG: number | null
  /** Thirteen digits, the last the check digit; prefix 952 is kept for examples (GS1; from memory). */
  gtin: string
  supplierId: string
  article: string
  containersPerPack: number
  packPriceMinor: number
  /** From so many packs on a tenth cheaper; 0: no break. */
  breakFrom: number
  shelfLifeDays: number | null
  /** What was used before bookings were kept: times a week, and how much at a time. */
  timesAWeek: number
  amount: number
}

/** Two products that are counted in pieces; the liquids are the shop's own list. */
export const demoConsumables = [
  { id: 'demo-cloths', name: 'Lindavel Cloths', kind: 'consumable' as const, cureProfile: null },
  { id: 'demo-pads', name: 'Grenn Pads', kind: 'consumable' as const, cureProfile: null },
]

const stock = (
  productId: string,
  label: string,
  content: number,
  packPriceMinor: number,
  more: Partial<DemoStock>,
): DemoStock => ({
  productId,
  label,
  content,
  packPriceMinor,
  unit: 'ml',
  density: 1,
  lifeAfterOpeningDays: null,
  place: 'Rack by the wash bay',
  serviceClass: 'usual',
  measured: null,
  tareG: null,
  gtin: '',
  supplierId: 'demo-carrow',
  article: '',
  containersPerPack: 1,
  breakFrom: 0,
  shelfLifeDays: null,
  timesAWeek: 3,
  amount: 50,
  ...more,
})

const cabinet = 'Solvent cabinet'

export const demoStock: DemoStock[] = [
  stock('demo-ovrel-one', '50 ml', 50, 5_400, {
    density: 1.05,
    tareG: 61,
    gtin: '9520000000110',
    article: 'OV-1-50',
    place: cabinet,
    serviceClass: 'vital',
    lifeAfterOpeningDays: 30,
    shelfLifeDays: 365,
    breakFrom: 6,
    timesAWeek: 2,
    amount: 26,
  }),
  stock('demo-ovrel-two', '50 ml', 50, 6_900, {
    density: 1.06,
    tareG: 61,
    gtin: '9520000000127',
    article: 'OV-2-50',
    place: cabinet,
    serviceClass: 'vital',
    lifeAfterOpeningDays: 30,
    shelfLifeDays: 365,
    breakFrom: 6,
    timesAWeek: 3,
    amount: 25,
  }),
  stock('demo-tamsk-quick', '30 ml', 30, 3_200, {
    density: 1.02,
    tareG: 48,
    gtin: '9520000000134',
    supplierId: 'demo-dunvarrow',
    article: 'TQ30',
    place: cabinet,
    serviceClass: 'vital',
    lifeAfterOpeningDays: 60,
    shelfLifeDays: 540,
    timesAWeek: 1.5,
    amount: 24,
  }),
  stock('demo-tamsk-rim', '30 ml', 30, 2_400, {
    density: 1.02,
    tareG: 48,
    gtin: '9520000000141',
    supplierId: 'demo-dunvarrow',
    article: 'TR30',
    place: cabinet,
    lifeAfterOpeningDays: 60,
    shelfLifeDays: 540,
    timesAWeek: 1,
    amount: 12,
  }),
  stock('demo-ovrel-veil', '16 fl oz', 473.18, 3_900, {
    measured: 500,
    density: 0.99,
    tareG: 52,
    gtin: '9520000000158',
    article: 'OV-V-16',
    shelfLifeDays: 730,
    timesAWeek: 2,
    amount: 30,
  }),
  stock('demo-lindavel-top', '500 ml', 500, 4_400, {
    density: 0.97,
    tareG: 52,
    gtin: '9520000000165',
    supplierId: 'demo-dunvarrow',
    article: 'LT500',
    shelfLifeDays: 730,
    timesAWeek: 1,
    amount: 35,
  }),
  stock('demo-foam', '5 L', 5_000, 3_800, {
    density: 1.03,
    tareG: 240,
    gtin: '9520000000172',
    article: 'AF-5',
    timesAWeek: 6,
    amount: 80,
  }),
  stock('demo-iron', '5 L', 5_000, 6_200, {
    density: 1.1,
    tareG: 240,
    gtin: '9520000000189',
    article: 'AI-5',
    shelfLifeDays: 540,
    timesAWeek: 5,
    amount: 400,
  }),
  stock('demo-cut', '1 kg', 1_000, 3_600, {
    unit: 'g',
    density: null,
    tareG: 96,
    gtin: '9520000000196',
    supplierId: 'demo-dunvarrow',
    article: 'GC1',
    timesAWeek: 3,
    amount: 90,
  }),
  stock('demo-refine', '1 kg', 1_000, 3_600, {
    unit: 'g',
    density: null,
    tareG: 96,
    gtin: '9520000000202',
    supplierId: 'demo-dunvarrow',
    article: 'GR1',
    timesAWeek: 4,
    amount: 80,
  }),
  stock('demo-wipe', '5 L', 5_000, 4_900, {
    // A fifth of isopropanol in water (from memory of published tables of the mixture: 0.97 to 0.98 at 20 °C).
    density: 0.97,
    tareG: 240,
    gtin: '9520000000219',
    article: 'SW-5',
    place: cabinet,
    timesAWeek: 6,
    amount: 60,
  }),
  stock('demo-cloths', 'box of 50', 50, 2_900, {
    unit: 'piece',
    density: null,
    gtin: '9520000000226',
    article: 'LC-50',
    place: 'Coating bay',
    serviceClass: 'handy',
    timesAWeek: 6,
    amount: 6,
  }),
  stock('demo-pads', 'pack of 6', 6, 4_200, {
    unit: 'piece',
    density: null,
    gtin: '9520000000233',
    supplierId: 'demo-dunvarrow',
    article: 'GP6',
    place: 'Polishing bay',
    serviceClass: 'handy',
    // Washed and used again; now and then one is worn out.
    timesAWeek: 0.5,
    amount: 1,
  }),
]

export const demoSuppliers = [
  {
    id: 'demo-carrow',
    name: 'Carrow Supply',
    email: 'orders@carrow.example.com',
    phone: '+12125550171',
    account: 'K-1180',
    weekdays: [1, 2, 3, 4, 5],
    closedOn: [],
    cutoffMin: 14 * 60,
    leadMeanDays: 3,
    leadSdDays: 1,
    minimumOrderMinor: 0,
    carriageMinor: 900,
    freeCarriageFromMinor: 25_000,
  },
  {
    id: 'demo-dunvarrow',
    name: 'Dunvarrow Chemicals',
    email: 'desk@dunvarrow.example.com',
    phone: '+12125550172',
    account: '40-227',
    weekdays: [1, 2, 3, 4],
    closedOn: [],
    cutoffMin: 12 * 60,
    leadMeanDays: 5,
    leadSdDays: 2,
    minimumOrderMinor: 8_000,
    carriageMinor: 1_400,
    freeCarriageFromMinor: 40_000,
  },
]
