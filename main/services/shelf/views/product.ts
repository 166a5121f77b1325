import type { SizeClass } from '../../../domain/vehicle/index.ts'
import type { ShelfFields } from '../inputs.ts'
import type { AdviceView, ProjectionView } from './advice.ts'
import type { LotView, MoveView, ServiceClass, ShelfUnit } from './lots.ts'
import type { SafetyView } from './safety.ts'
import type { ProductValueView } from './value.ts'

export type { ShelfFields }

export interface SizeView {
  id: string
  version: number
  /** As printed: `16 fl oz`. */
  label: string
  labelAmount: number
  /** What such a container was found to hold. */
  measuredAmount: number | null
  /** `measures 3.1 % more than the label says`. */
  measuredWords: string | null
  tareG: number | null
  codes: string[]
  archivedAt: number | null
}

export interface SupplierOfferView {
  id: string
  version: number
  supplierId: string
  supplierName: string
  sizeId: string
  sizeLabel: string
  article: string
  containersPerPack: number
  packAmount: number
  breaks: { fromPacks: number; packPriceMinor: number }[]
  shelfLifeDays: number | null
  preferred: boolean
  /** Price of 100 units (100 ml) at each break, in minor units with decimals: compares sizes. */
  per100Minor: number[]
  archivedAt: number | null
}

/** A treatment's step that draws this product, with its recipe by size class. */
export interface RecipeView {
  treatmentId: string
  treatmentName: string
  treatmentVersion: number
  /** Of the step in its treatment. */
  position: number
  stage: string
  stepName: string
  bySize: Record<SizeClass, { amount: number; spread: number }>
}

/** What a treatment's steps draw, as `shelf.saveRecipe` takes it step by step. */
export interface TreatmentRecipesView {
  treatmentId: string
  version: number
  steps: {
    position: number
    stage: string
    stepName: string
    draws: {
      productId: string
      productName: string
      unit: ShelfUnit
      bySize: Record<SizeClass, { amount: number; spread: number }>
    }[]
  }[]
}

/** What steps really drew, beside their recipe; learned without letting a spill or a slip of the pen count. */
export interface LearningView {
  stage: string
  stepName: string
  sizeClass: SizeClass
  recipe: { amount: number; spread: number } | null
  /** Confirmed draws looked at, and those set aside as out of line. */
  steps: number
  outliers: number
  typical: number
  spread: number
  words: string
  byCrew: { crewId: string; name: string; steps: number; typical: number; words: string }[]
  /** What `shelf.useAsRecipe` would write; null where the recipe is good, or too few steps tell. */
  suggestion: { amount: number; spread: number; words: string } | null
}

export interface LedgerPage {
  /** Newest first. */
  moves: MoveView[]
  /** Pass as `before` for the page after; null: that was the last. */
  before: number | null
}

export interface ShelfProductView {
  id: string
  name: string
  kind: string
  /** Of the shelf's record; 0 where the product is not counted yet. */
  version: number
  /** Null: the product is not counted yet; `shelf.saveProduct` begins it. */
  shelf: ShelfFields | null
  onHand: number
  usable: number
  lots: LotView[]
  sizes: SizeView[]
  offers: SupplierOfferView[]
  recipes: RecipeView[]
  ledger: LedgerPage
  projection: ProjectionView | null
  advice: AdviceView | null
  learning: LearningView[]
  safety: SafetyView
  value: ProductValueView | null
  /** What the data sheet asks of the place it is kept in, in words. */
  storageWords: string | null
}

/** A line of the shelf's list. */
export interface ShelfListItem {
  id: string
  name: string
  kind: string
  /** Null: not counted yet. */
  unit: ShelfUnit | null
  place: string
  serviceClass: ServiceClass | null
  onHand: number
  usable: number
  lots: number
  openLot: LotView | null
  nextExpiry: string | null
  signalWord: string | null
  pictograms: string[]
}

/** What the owner has set for the shelf as a whole. */
export interface ShelfRulesView {
  services: Record<ServiceClass, number>
  holdRatePerYear: number
  lineCostMinor: number
  flammableLimitMl: number | null
  /** Chosen, or null for the one usual in the shop's country, which `regimeUsed` names. */
  regime: 'un-ghs' | 'eu-clp' | 'us-osha' | null
  regimeUsed: 'un-ghs' | 'eu-clp' | 'us-osha'
  version: number
}
