/**
 * What a new shop may begin with: products by what they are, and treatments made of them. Minutes are rules of thumb
 * (common practice, no source) for the shop to correct; prices are left at 0, not priced. Cure figures are common
 * practice until the data sheet's are entered.
 */

import { commonPracticeProfile } from '../cure/index.ts'
import { say } from '../language/index.ts'
import type { SizeClass } from '../vehicle/index.ts'
import { type CarCheck, coatChecks, washChecks, wheelChecks } from './carChecks.ts'
import type { Treatment, TreatmentProduct, TreatmentStep } from './checkTreatment.ts'

/** The product's `id` is only good inside this list. */
export function starterProducts(): TreatmentProduct[] {
  const plain = (id: string, name: string, kind: TreatmentProduct['kind']): TreatmentProduct => ({
    id,
    name,
    kind,
    cureProfile: null,
  })
  return [
    plain('wash', say('Wash shampoo'), 'wash'),
    plain('decontaminant', say('Iron remover'), 'decontaminant'),
    plain('compound', say('Cutting compound'), 'compound'),
    plain('polish', say('Finishing polish'), 'polish'),
    plain('wipe', say('Panel wipe'), 'wipe'),
    { id: 'coating', name: say('Coating'), kind: 'coating', cureProfile: commonPracticeProfile() },
    { id: 'topper', name: say('Topper'), kind: 'topper', cureProfile: commonPracticeProfile() },
  ]
}

/** Treatments that name starter products by their list id, meant to be sold side by side. */
export function starterTreatments(): (Treatment & { summary: string })[] {
  const refine = step(say('Refine'), 'correct', 'polish', 'polish', 180, { productId: 'polish', ...long })
  const layer = [
    step(say('Wipe down'), 'wipe', 'clean', 'coat', 30, {
      productId: 'wipe',
      // Coated within 30 to 60 min of it (common practice, no source).
      nextWithinMin: 45,
      missed: 'again',
    }),
    step(say('Coat'), 'coat', 'clean', 'coat', 90, { productId: 'coating', sameBay: true }),
    step(say('Level and check under the lamp'), 'level', 'clean', 'coat', 30, { sameBay: true }),
  ]
  return [
    {
      name: say('Wash and decontaminate'),
      summary: say('Hand wash, iron and tar off, dried: what every other treatment begins with.'),
      prices: unpriced,
      steps: [
        step(say('Wash'), 'prepare', 'wet', 'wash', 60, { productId: 'wash' }),
        step(say('Decontaminate'), 'prepare', 'wet', 'wash', 45, {
          productId: 'decontaminant',
          sameBay: true,
        }),
        step(say('Dry and blow out'), 'dry', 'wet', 'wash', 20, { sameBay: true }),
      ],
      checks: saidChecks(washChecks),
    },
    {
      name: say('Polish, one step'),
      summary: say('Light marks out, gloss up. Not for satin, matte or film.'),
      prices: unpriced,
      steps: [step(say('Polish'), 'correct', 'polish', 'polish', 240, { productId: 'polish', ...long })],
    },
    {
      name: say('Correction, two steps'),
      summary: say('Cut, then refine. Measure the paint first; not for satin, matte or film.'),
      prices: unpriced,
      // 10 to 18 h by size on paint in good condition (common practice, no source).
      steps: [
        step(say('Cut'), 'correct', 'polish', 'polish', 450, { productId: 'compound', ...long }),
        step(say('Refine'), 'correct', 'polish', 'polish', 300, {
          productId: 'polish',
          ...long,
          sameBay: true,
        }),
        // Dust and oils of the polish, out of the seams too.
        step(say('Wash residue off and dry'), 'rinse', 'wet', 'wash', 20),
      ],
    },
    {
      name: say('Coating, one layer'),
      summary: say('A refining pass, wiped down and coated; the car then cures before it goes home.'),
      prices: unpriced,
      // A coating shows every mark under it, so the paint is refined first (common practice, no source).
      steps: [refine, ...layer],
      checks: saidChecks(coatChecks),
    },
    {
      name: say('Coating on satin, matte or film'),
      summary: say('Wiped down and coated without polishing; the car then cures before it goes home.'),
      prices: unpriced,
      steps: layer,
      checks: saidChecks(coatChecks),
    },
    {
      name: say('Topper'),
      summary: say('The sacrificial layer, over a coating or to renew one.'),
      prices: unpriced,
      steps: [step(say('Topper'), 'topper', 'clean', 'coat', 45, { productId: 'topper' })],
    },
    {
      name: say('Wheels off, cleaned behind'),
      summary: say('Wheels taken off, wells and calipers cleaned, wheels put back and torqued.'),
      prices: unpriced,
      steps: [
        step(say('Wheels off, clean behind'), 'prepare', 'wet', 'wash', 90),
        step(say('Dry, wheels on and torqued'), 'dry', 'wet', 'wash', 30, { sameBay: true }),
      ],
      checks: saidChecks(wheelChecks),
    },
  ]
}

const saidChecks = (checks: readonly CarCheck[]) =>
  checks.map(check => ({ ...check, words: say(check.words) }))

const unpriced = { small: 0, medium: 0, large: 0, xl: 0 }
const long = { splittable: true, byCondition: true }

/** Minutes on a medium car; others by size, to five minutes. */
function bySize(mediumMin: number): Record<SizeClass, number> {
  const scaled = (factor: number) => Math.round((mediumMin * factor) / 5) * 5
  return { small: scaled(0.85), medium: mediumMin, large: scaled(1.2), xl: scaled(1.4) }
}

function step(
  name: string,
  stage: TreatmentStep['stage'],
  needs: TreatmentStep['needs'],
  skill: TreatmentStep['skill'],
  mediumMin: number,
  more: Partial<TreatmentStep> = {},
): TreatmentStep {
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
    minutes: bySize(mediumMin),
    byCondition: false,
    productId: null,
    ...more,
  }
}
