import { expect, it } from 'vitest'
import { commonPracticeProfile, ruleOf } from '../../../main/domain/cure/index.ts'
import type { Coat } from '../../../main/domain/floor/cureMarks.ts'
import {
  type CuringProduct,
  cautionLines,
  cautionWords,
  cureWords,
} from '../../../main/domain/floor/index.ts'

const profile = commonPracticeProfile()
const product = (id: string, change: Partial<CuringProduct> = {}): CuringProduct => ({
  id,
  name: id,
  kind: 'wash',
  cureProfile: null,
  caution: null,
  ...change,
})

it('says what the safety data sheet asks where it was entered, else what is usual and who decides', () => {
  expect(cautionWords(product('Ovrel Two', { kind: 'coating', caution: 'Wear a mask.' }))).toBe(
    'Wear a mask.',
  )
  // Common practice, no source.
  expect(cautionWords(product('Ovrel Two', { kind: 'coating' }))).toMatch(
    /^Ovrel Two: usual care is gloves and eye protection.*no flame.*\(common practice\)\. Read its safety data sheet first/,
  )
  expect(cautionWords({ name: 'Plain wipe', kind: 'wipe' })).toContain('no spark')
})

it('has a line for each chemical, those that cure first, then by name', () => {
  const products = [
    product('Zorin wash'),
    product('Cloths', { kind: 'consumable' }),
    product('Amber wash'),
    product('Yarrow veil', { kind: 'topper', cureProfile: profile }),
    product('Birch coat', { kind: 'coating', cureProfile: profile }),
  ]
  const lines = cautionLines(new Map(products.map(each => [each.id, each])))
  expect(lines.map(line => line.productId)).toEqual(['Birch coat', 'Yarrow veil', 'Amber wash', 'Zorin wash'])
  expect(lines[2]).toMatchObject({
    productName: 'Amber wash',
    words: expect.stringContaining('Amber wash: '),
  })
})

const endAt = 1_000
const coat = (actual: boolean): Coat => ({
  index: 0,
  product: { ...product('Ovrel Two', { kind: 'coating' }), cureProfile: profile },
  startAt: endAt - 60,
  endAt,
  nextMin: { recoat: 0, topper: 0 },
  actual,
  laid: null,
})
const rule = ruleOf(profile, 'handoverSafe')
const safeAt = endAt + (rule?.ageMin ?? 0)
const words = (actual: boolean, nowAt: number) =>
  cureWords(coat(actual), 'covered', nowAt, at => `minute ${at}`)

it('names the figure that rules the handover and whether it is met, and never calls a coating safe', () => {
  expect(rule?.ageMin).toBeGreaterThan(0)
  expect(words(false, 0)).toBe(`Ovrel Two. ${rule?.words} With the coat as planned that is minute ${safeAt}.`)
  expect(words(true, safeAt - 1)).toContain(`That figure is met from minute ${safeAt}; not before.`)
  expect(words(true, safeAt)).toContain(`That figure is met since minute ${safeAt}.`)
  for (const said of [words(false, 0), words(true, 0), words(true, safeAt)])
    expect(said).not.toMatch(/\bsafe\b/i)
})

it('names the time it has to stay dry where the car leaves without a cover', () => {
  const dry = ruleOf(profile, 'keepDryEnds')
  expect(dry?.ageMin).toBeGreaterThan(rule?.ageMin ?? 0)
  expect(cureWords(coat(true), 'dry', 0, at => `minute ${at}`)).toBe(
    `Ovrel Two. ${dry?.words} That figure is met from minute ${endAt + (dry?.ageMin ?? 0)}; not before.`,
  )
})
