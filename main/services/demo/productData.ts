import { type CureProfile, commonPracticeProfile, type Figure } from '../../domain/cure/index.ts'
import type { CoatingFamily, ProductKind } from '../../domain/shop/index.ts'

export interface DemoProduct {
  id: string
  name: string
  kind: ProductKind
  /** The paint unless said otherwise. */
  family?: CoatingFamily
  cureProfile: CureProfile | null
}

/** Common practice, but for the figures this invented data sheet gives. */
function sheet(figures: Partial<Omit<CureProfile, 'sources'>>): CureProfile {
  const profile = commonPracticeProfile()
  const given = Object.keys(figures).filter((key): key is Figure => key in profile.sources)
  return {
    ...profile,
    ...figures,
    sources: {
      ...profile.sources,
      ...Object.fromEntries(given.map(figure => [figure, 'data sheet' as const])),
    },
  }
}

/** Six invented products that cure, and the plain ones beside them. No figure here is any real product's. */
export const demoProducts: DemoProduct[] = [
  { id: 'demo-ovrel-one', name: 'Ovrel One', kind: 'coating', cureProfile: sheet({ tackFreeMin: 120 }) },
  {
    id: 'demo-ovrel-two',
    name: 'Ovrel Two',
    kind: 'coating',
    cureProfile: sheet({
      tackFreeMin: 90,
      recoat: { minMin: 60, maxMin: 180 },
      missedRecoat: 'Abrade lightly by hand, wipe, and lay the layer again.',
      topper: { minMin: 360, advisedMin: 720, maxMin: null, productIds: ['demo-ovrel-veil'] },
      handoverMin: 1080,
      handoverAdvisedMin: 1440,
      firstPeriod: { earlyMin: 720, lateMin: 1440, degree: 0.85 },
      temperature: { minC: 12, maxC: 28 },
    }),
  },
  {
    id: 'demo-tamsk-quick',
    name: 'Tamsk Quick',
    kind: 'coating',
    cureProfile: sheet({
      tackFreeMin: 45,
      topper: { minMin: 60, advisedMin: 60, maxMin: 180, productIds: ['demo-lindavel-top'] },
      handoverMin: 720,
      handoverAdvisedMin: 1440,
    }),
  },
  {
    id: 'demo-tamsk-rim',
    name: 'Tamsk Rim',
    kind: 'coating',
    family: 'wheels',
    cureProfile: sheet({ tackFreeMin: 30, keepDryMin: 720 }),
  },
  {
    id: 'demo-ovrel-veil',
    name: 'Ovrel Veil',
    kind: 'topper',
    cureProfile: sheet({ tackFreeMin: 30, handoverMin: 240, handoverAdvisedMin: 720 }),
  },
  {
    id: 'demo-lindavel-top',
    name: 'Lindavel Top',
    kind: 'topper',
    cureProfile: sheet({ tackFreeMin: 20, handoverMin: 300, handoverAdvisedMin: 780 }),
  },
  { id: 'demo-foam', name: 'Ambry Foam', kind: 'wash', cureProfile: null },
  { id: 'demo-iron', name: 'Ambry Iron', kind: 'decontaminant', cureProfile: null },
  { id: 'demo-cut', name: 'Grenn Cut', kind: 'compound', cureProfile: null },
  { id: 'demo-refine', name: 'Grenn Refine', kind: 'polish', cureProfile: null },
  { id: 'demo-wipe', name: 'Sethel Wipe', kind: 'wipe', cureProfile: null },
]
