import { describe, expect, it } from 'vitest'
import { dayNumber } from '../../../main/domain/calendar/index.ts'
import { amountsOf, bottleWords, lotViews } from '../../../main/services/shelf/lotViews.ts'

const today = dayNumber('2026-04-15')
const row = (number: number, change: object = {}) =>
  ({
    id: `lot-${number}`,
    number,
    productId: 'one',
    sizeId: null,
    sizeLabel: null,
    batch: null,
    centi: 10_000,
    receivedOn: '2026-01-10',
    expiresOn: null,
    openedOn: null,
    lifeAfterOpeningDays: null,
    tareG: null,
    waterParts: null,
    ...change,
  }) as Parameters<typeof bottleWords>[0]

const keeps = row(1)
const open = row(2, { openedOn: '2026-04-03', lifeAfterOpeningDays: 91 })
const mixed = row(4, { receivedOn: '2026-04-10', openedOn: '2026-04-10', waterParts: 9 })
const gone = row(3, { expiresOn: '2026-04-14' })

describe('the bottles of a product', () => {
  it('are used in the order of their dates, the past ones last and never next', () => {
    const views = lotViews([gone, keeps, open], 'ml', today)
    expect(views.map(({ number, state, next }) => [number, state, next])).toEqual([
      [2, 'open', true],
      [1, 'sealed', false],
      [3, 'expired', false],
    ])
    expect(lotViews([gone], 'ml', today)[0]?.next).toBe(false)
  })

  it('hold all the ledger has, of which only what is in date may be used', () => {
    expect(amountsOf([gone, keeps, open], today)).toEqual({ onHand: 300, usable: 200 })
  })
})

describe('a bottle in words', () => {
  it('says what it is called, since when it is open, until when it may be used and what is left', () => {
    expect(bottleWords(open, 'ml', today)).toBe('no. 2, opened 3 April, use by 3 July, 100 ml left')
    expect(bottleWords(mixed, 'ml', today)).toBe('no. 4, mixed 10 April 1:9 with water, 100 ml left')
    expect(bottleWords(gone, 'ml', today)).toContain('past its date since 14 April')
    expect(bottleWords(keeps, 'ml', today)).toBe('no. 1, sealed, 100 ml left')
  })

  it('rounds what is left to what somebody can see', () => {
    expect(bottleWords({ ...keeps, centi: 37_409 }, 'ml', today)).toContain('374 ml left')
    expect(bottleWords({ ...keeps, centi: 26 }, 'ml', today)).toContain('0.3 ml left')
  })
})
