import type { Condition, Finish, PlaceView, SizeClass } from '../../../main/api/views.ts'

/** What is known of the caller and the car so far; nothing of it is saved before a place is held. */
export interface Draft {
  customerId: string | null
  customerName: string
  phone: string
  email: string
  vehicleId: string | null
  plate: string
  make: string
  model: string
  colour: string
  sizeClass: SizeClass
  finish: Finish
  treatmentIds: string[]
  condition: Condition
  askedDate: string | null
  /** Who has confirmed covered transport and storage; empty: the car stays until it may get wet. */
  coveredBy: string
}

const noCar = {
  vehicleId: null,
  plate: '',
  make: '',
  model: '',
  colour: '',
  sizeClass: 'medium',
  finish: 'gloss',
} satisfies Partial<Draft>

/** Nobody yet: what of one caller would be wrong of the next. */
export const nobody = {
  customerId: null,
  customerName: '',
  phone: '',
  email: '',
  ...noCar,
} satisfies Partial<Draft>

export const emptyDraft: Draft = {
  ...nobody,
  treatmentIds: [],
  condition: 'good',
  askedDate: null,
  coveredBy: '',
}

export const offerKinds = ['soonest', 'leastBlocked', 'askedDay'] as const
export type OfferKind = (typeof offerKinds)[number]

export type Chosen = { kind: OfferKind; offer: PlaceView } | null

export const conditions: { value: Condition; label: string }[] = [
  { value: 'good', label: 'Good' },
  { value: 'worn', label: 'Worn' },
  { value: 'heavy', label: 'Heavy' },
]
