import fc from 'fast-check'
import { expect, it } from 'vitest'
import { sayLine } from '../../../main/domain/history/index.ts'
import { speaking } from '../../../main/services/desk/speaking.ts'

const say = {
  when: (at: number) => `minute ${at}`,
  money: (minor: number) => `$${minor / 100}`,
  nameOf: (id: string) => (id === 'c1' ? 'Edda Marsh' : undefined),
  unitOf: (id: string) => (({ p1: 'ml', l1: 'piece' }) as const)[id],
}
const line = (act: string, detail: unknown, entity = 'vehicle', entityId = 'v1') =>
  sayLine({ act, entity, entityId, detail }, say)

it.each([
  ['changed', { sizeClass: ['medium', 'large'] }, 'changed the size from medium to large'],
  [
    'changed',
    { plate: ['', 'QLM 311'], note: ['old', null], year: [2019, 2020] },
    'changed the plate from nothing to QLM 311, the note from old to nothing and the year from 2019 to 2020',
  ],
  [
    'changed',
    { promisedAt: [5, 9], priceMinor: [1_250, 99] },
    'changed the promised from minute 5 to minute 9 and the price from $12.5 to $0.99',
  ],
  ['changed', { weekly: [[{ from: 1 }], [{ from: 2 }]] }, 'changed the weekly'],
  ['changed', { customerId: ['c1', 'gone'] }, 'changed the owner'],
  [
    'changed',
    { demo: [true, false], cutoffMin: [90, null] },
    'changed the demo from yes to no and the cutoff from 1 h 30 min to nothing',
  ],
  ['changed', {}, 'saved without a change'],
  ['offer changed', { article: ['A', 'B'] }, 'offer: changed the article from A to B'],
  [
    'added',
    { name: 'Edda', phone: null, customerId: 'c1', prices: { small: 1 } },
    'added: name Edda, owner Edda Marsh',
  ],
  ['size added', { label: '16 fl oz', labelCenti: 47_300 }, 'size added: label 16 fl oz, label 473'],
  ['removed', { name: [null, 'Wall'], count: [null, 3] }, 'removed: name Wall, count 3'],
  ['archived', {}, 'put away'],
  ['restored', {}, 'taken back into use'],
  ['ordered', { ids: ['a', 'b'] }, 'put in another order'],
  ['counted', { lotId: 'x', expectedCenti: 500, countedCenti: 450 }, 'counted: expected 5, counted 4.5'],
  ['drawn', { position: 3, centi: 1_000, how: 'weighed' }, 'drawn: amount 10, how weighed'],
  ['taken back', { seq: 2, centi: -250, reason: 'a slip' }, 'taken back: amount -2.5, reason a slip'],
  ['consent given', { channel: 'email', at: 7 }, 'consent given: channel email, time minute 7'],
  ['recipe changed', { steps: ['Wash', 'Wipe', 'Coat'] }, 'recipe: changed steps Wash, Wipe and Coat'],
  ['erased', { rows: 12, lines: 3 }, 'erased: name and addresses taken out everywhere'],
  ['something newer', null, 'something newer'],
])('says %s %j as "%s"', (act, detail, words) => {
  expect(line(act, detail)).toBe(words)
})

it.each<[string, string, object, string]>([
  ['p1', 'drawn', { centi: 1_250 }, 'drawn: amount 12.5 ml'],
  ['p1', 'changed', { orderPointCenti: [500, null] }, 'changed the order point from 5 ml to nothing'],
  ['p1', 'counted', { lotId: 'l1', countedCenti: 100 }, 'counted: counted 1 piece'],
  ['v1', 'mixed', { productId: 'p1', centi: 400 }, 'mixed: amount 4 ml'],
  ['p1', 'undone', { of: { act: 'drawn', detail: { centi: 300 } } }, 'taken back: “drawn: amount 3 ml”'],
])('says amounts of %s in its unit: %s %j', (id, act, detail, words) => {
  expect(line(act, detail, 'product', id)).toBe(words)
})

it('says amounts in the units of the shop', () => {
  const words = () => line('drawn', { centi: 2_957 }, 'product', 'p1')
  expect(speaking('en', words, { country: 'US', units: 'us' })).toBe('drawn: amount 1 fl oz')
})

it('says what is done to a job as the job’s page always did', () => {
  expect(line('held', { heldUntilAt: 5 }, 'job')).toBe('place held until minute 5')
  expect(line('held', { heldUntilAt: 5 })).toBe('held: held until minute 5')
})

it('keeps a long text to a line', () => {
  const words = line('added', { note: `first\r\n${'x'.repeat(500)}` })
  expect(words).toHaveLength('added: note '.length + 120)
  expect(words).not.toMatch(/[\r\n]/)
})

it('says anything at all in words, never as code', () => {
  fc.assert(
    fc.property(
      fc.constantFrom('added', 'changed', 'removed', 'held', 'x changed', 'x'),
      fc.object(),
      (act, detail) => {
        const words = line(act, detail)
        expect(words.length).toBeGreaterThan(0)
        expect(words).not.toMatch(/\[object|undefined|null,|NaN,/)
      },
    ),
  )
})
