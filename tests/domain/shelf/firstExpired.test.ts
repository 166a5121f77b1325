import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  byLastDay,
  lastDateOf,
  openLot,
  takeFirstExpired,
  usableOn,
} from '../../../main/domain/shelf/index.ts'
import { holdings, TODAY } from './arbitraries.ts'

const need = fc.integer({ min: 1, max: 200_000 })
const last = (day: number | null) => day ?? Number.POSITIVE_INFINITY

describe('first expired, first out', () => {
  it('leaves no usable lot behind that expires before one it takes from', () => {
    fc.assert(
      fc.property(holdings, need, (list, centi) => {
        const take = takeFirstExpired(list, centi, TODAY)
        const taken = new Map(take.use.map(entry => [entry.lotId, entry.centi]))
        for (const holding of list) {
          const rest = holding.centi - (taken.get(holding.lotId) ?? 0)
          expect(rest).toBeGreaterThanOrEqual(0)
          if (rest === 0 || !usableOn(holding, TODAY)) continue
          for (const other of list)
            if (taken.has(other.lotId) && other !== holding)
              expect(last(other.lastDay)).toBeLessThanOrEqual(last(holding.lastDay))
        }
      }),
    )
  })

  it('takes what it can and names the rest, and never what is past its date', () => {
    fc.assert(
      fc.property(holdings, need, (list, centi) => {
        const take = takeFirstExpired(list, centi, TODAY)
        const got = take.use.reduce((sum, entry) => sum + entry.centi, 0)
        const usable = list.filter(holding => usableOn(holding, TODAY))
        const there = usable.reduce((sum, holding) => sum + holding.centi, 0)
        expect(got + take.shortCenti).toBe(centi)
        expect(got).toBe(Math.min(centi, there))
        for (const { lotId } of take.use) expect(usable.some(holding => holding.lotId === lotId)).toBe(true)
      }),
    )
  })

  it('does not depend on the order the lots are read in', () => {
    fc.assert(
      fc.property(holdings, need, (list, centi) => {
        expect(takeFirstExpired([...list].reverse(), centi, TODAY)).toEqual(
          takeFirstExpired(list, centi, TODAY),
        )
      }),
    )
  })

  it('takes the opened bottle of two with the same date, and of two that keep', () => {
    for (const lastDay of [TODAY + 5, null]) {
      const sealed = { lotId: 'a', centi: 500, opened: false, lastDay }
      const open = { lotId: 'b', centi: 500, opened: true, lastDay }
      expect(takeFirstExpired([sealed, open], 100, TODAY).use).toEqual([{ lotId: 'b', centi: 100 }])
      expect(byLastDay(open, sealed)).toBeLessThan(0)
    }
  })

  it('puts a chosen lot first and goes on in turn', () => {
    const list = [
      { lotId: 'a', centi: 100, opened: false, lastDay: TODAY + 1 },
      { lotId: 'b', centi: 100, opened: false, lastDay: TODAY + 9 },
    ]
    expect(takeFirstExpired(list, 150, TODAY, 'b').use).toEqual([
      { lotId: 'b', centi: 100 },
      { lotId: 'a', centi: 50 },
    ])
  })
})

describe('a lot', () => {
  const lot = {
    id: 'a',
    productId: 'p',
    sizeId: null,
    batch: null,
    receivedOn: '2026-03-01',
    expiresOn: '2026-12-31',
    openedOn: null,
    lifeAfterOpeningDays: null,
  }

  it('keeps to the earlier of the printed date and the opened bottle’s own', () => {
    expect(lastDateOf(lot)).toBe('2026-12-31')
    expect(lastDateOf(openLot(lot, '2026-03-02', 30))).toBe('2026-04-01')
    expect(lastDateOf(openLot(lot, '2026-12-20', 30))).toBe('2026-12-31')
    expect(lastDateOf(openLot({ ...lot, expiresOn: null }, '2026-03-02', null))).toBeNull()
  })

  it('is opened once, and not before it came', () => {
    expect(() => openLot(openLot(lot, '2026-03-02', 30), '2026-03-03', 30)).toThrow(/open since 2026-03-02/)
    expect(() => openLot(lot, '2026-02-28', 30)).toThrow(/before the bottle came/)
  })

  it('may be used on its last day and not after', () => {
    const holding = { lotId: 'a', centi: 1, opened: false, lastDay: TODAY }
    expect(usableOn(holding, TODAY)).toBe(true)
    expect(usableOn(holding, TODAY + 1)).toBe(false)
  })
})
