import {
  type CarCheck,
  coatChecks,
  type SizeClass,
  type TreatmentStep,
  washChecks,
} from '../../domain/shop/index.ts'

export interface DemoTreatment {
  id: string
  name: string
  summary: string
  prices: Record<SizeClass, number>
  checks: readonly CarCheck[]
  steps: TreatmentStep[]
}

/** Prices in dollars on a medium car; a fifth less for a small one, a fifth and two fifths more for the bigger ones. */
function priced(medium: number): Record<SizeClass, number> {
  const by = (factor: number) => Math.round((medium * factor) / 5) * 500
  return { small: by(0.8), medium: by(1), large: by(1.2), xl: by(1.4) }
}

function step(
  name: string,
  stage: TreatmentStep['stage'],
  needs: TreatmentStep['needs'],
  skill: TreatmentStep['skill'],
  mediumMin: number,
  more: Partial<TreatmentStep> = {},
): TreatmentStep {
  const by = (factor: number) => Math.round((mediumMin * factor) / 15) * 15
  return {
    name,
    stage,
    needs,
    skill,
    crew: 1,
    splittable: false,
    sameBay: false,
    waitMin: null,
    waitMax: null,
    minutes: { small: by(0.8), medium: by(1), large: by(1.2), xl: by(1.4) },
    byCondition: false,
    productId: null,
    ...more,
  }
}

const long = { splittable: true, byCondition: true }
const wash = step('Wash', 'prepare', 'wet', 'wash', 60, { productId: 'demo-foam' })
const decontaminate = step('Decontaminate', 'prepare', 'wet', 'wash', 30, {
  productId: 'demo-iron',
  sameBay: true,
})
/** Water runs out of seams for long: nothing is polished or laid before it is blown out. */
const dry = step('Dry and blow out', 'dry', 'wet', 'wash', 15, { sameBay: true })
/** Before a layer the paint is refined: a coating shows every mark under it. */
const refine = (mediumMin: number) =>
  step('Refine', 'correct', 'polish', 'polish', mediumMin, { productId: 'demo-refine', ...long })
/** What was wiped is coated within 30 to 60 min of it (common practice, no source), or wiped again. */
const wiped = { productId: 'demo-wipe', nextWithinMin: 45, missed: 'again' } as const
const wipe = step('Panel wipe', 'wipe', 'clean', 'coat', 30, wiped)
/** Laid where the car was wiped down, before dust settles, and levelled panel by panel while it is wet. */
const coat = (name: string, mediumMin: number, productId: string, more: Partial<TreatmentStep> = {}) => {
  const level = step('Level and check under the lamp', 'level', 'clean', 'coat', 15, { sameBay: true })
  const laid = step(name, 'coat', 'clean', 'coat', mediumMin, { productId, sameBay: true, ...more })
  const { small, medium, large, xl } = laid.minutes
  const minutes = { small: small - 15, medium: medium - 15, large: large - 15, xl: xl - 15 }
  return [
    { ...laid, minutes },
    { ...level, minutes: { small: 15, medium: 15, large: 15, xl: 15 } },
  ]
}
const topper = (mediumMin: number, productId: string) =>
  step('Topper', 'topper', 'clean', 'coat', mediumMin, { productId })

/** Ten treatments with times and prices that are rules of thumb (common practice, no source). */
export const demoTreatments: DemoTreatment[] = [
  {
    id: 'demo-wash',
    name: 'Wash and decontaminate',
    summary: 'Hand wash, iron and tar off, dried: what every other treatment begins with.',
    prices: priced(95),
    checks: washChecks,
    steps: [wash, decontaminate, dry],
  },
  {
    id: 'demo-one-step',
    name: 'One-step polish',
    summary: 'Light marks out and gloss up; trim dressed. Not for satin, matte or film.',
    prices: priced(420),
    checks: washChecks,
    steps: [
      wash,
      decontaminate,
      dry,
      step('Polish', 'correct', 'polish', 'polish', 210, { productId: 'demo-refine', ...long }),
      step('Dress trim and check', 'finish', 'clean', 'wash', 30),
    ],
  },
  {
    id: 'demo-two-step',
    name: 'Two-step correction',
    summary: 'Cut, then refine. The paint is measured first. Not for satin, matte or film.',
    prices: priced(1_280),
    checks: washChecks,
    steps: [
      wash,
      decontaminate,
      dry,
      step('Cut', 'correct', 'polish', 'polish', 450, { productId: 'demo-cut', ...long }),
      { ...refine(300), sameBay: true },
    ],
  },
  {
    id: 'demo-test-spot',
    name: 'Test spot',
    summary: 'One panel worked first, to see what the paint needs; the rest is quoted again from it.',
    prices: priced(60),
    checks: washChecks,
    steps: [wash, decontaminate, dry, step('Test spot', 'test', 'polish', 'polish', 45)],
  },
  {
    id: 'demo-wheels',
    name: 'Wheels coated',
    summary: 'Wheels cleaned, wiped and coated with Tamsk Rim.',
    prices: priced(240),
    checks: [...washChecks, ...coatChecks],
    steps: [
      wash,
      dry,
      step('Wipe wheels', 'wipe', 'clean', 'coat', 30, wiped),
      ...coat('Wheels', 60, 'demo-tamsk-rim'),
    ],
  },
  {
    id: 'demo-one-layer',
    name: 'One layer',
    summary:
      'A refining pass and one layer of Ovrel One; home the next day, once it may get wet. Not for satin, matte or film.',
    prices: priced(680),
    checks: [...washChecks, ...coatChecks],
    steps: [wash, decontaminate, dry, refine(150), wipe, ...coat('Layer', 105, 'demo-ovrel-one')],
  },
  {
    id: 'demo-two-layers',
    name: 'Two layers',
    summary:
      'A refining pass and two layers of Ovrel Two within its recoat window; the night belongs to the cure. Not for satin, matte or film.',
    prices: priced(1_290),
    checks: [...washChecks, ...coatChecks],
    steps: [
      wash,
      decontaminate,
      dry,
      refine(150),
      wipe,
      // A layer gone hard is abraded by hand before the next (common practice, no source).
      ...coat('First layer', 105, 'demo-ovrel-two', { missed: 'abrade', missedMin: 60 }),
      ...coat('Second layer', 90, 'demo-ovrel-two'),
    ],
  },
  {
    id: 'demo-layer-topper',
    name: 'Layer and topper',
    summary:
      'A refining pass, Tamsk Quick with Lindavel Top over it, one to two hours later as its sheet asks. Not for satin, matte or film.',
    prices: priced(890),
    checks: [...washChecks, ...coatChecks],
    steps: [
      wash,
      decontaminate,
      dry,
      refine(150),
      wipe,
      ...coat('Layer', 90, 'demo-tamsk-quick'),
      topper(45, 'demo-lindavel-top'),
    ],
  },
  {
    id: 'demo-topper',
    name: 'Topper renewed',
    summary: 'Washed, looked over, and Ovrel Veil renewed over the coating.',
    prices: priced(190),
    checks: [...washChecks, ...coatChecks],
    steps: [wash, dry, wipe, topper(45, 'demo-ovrel-veil')],
  },
  {
    id: 'demo-leather',
    name: 'Leather restored',
    summary:
      'Seats and wheel cleaned, coloured in and sealed by a leather worker from outside, asked two days before.',
    prices: priced(330),
    checks: [],
    steps: [step('Restore the leather', 'finish', 'clean', 'outside', 180)],
  },
]
