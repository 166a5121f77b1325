import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type DrawRequest, FOUND_MORE } from '../../../main/domain/shelf/draw.ts'
import { appended, planDraw, usableOn } from '../../../main/domain/shelf/index.ts'
import { holdings, TODAY } from './arbitraries.ts'

const request = (part: Partial<DrawRequest>): DrawRequest => ({
  productId: 'product',
  unit: 'ml',
  holdings: [],
  needCenti: 1000,
  day: TODAY,
  at: 1,
  by: 'anna',
  stepId: 'step',
  jobId: 'job',
  ...part,
})

describe('a draw', () => {
  it('takes the whole amount or is refused; no lot ever ends below nothing', () => {
    fc.assert(
      fc.property(
        holdings,
        fc.integer({ min: 1, max: 300_000 }),
        fc.boolean(),
        (list, needCenti, foundMore) => {
          const usable = list.filter(holding => usableOn(holding, TODAY))
          const there = usable.reduce((sum, holding) => sum + holding.centi, 0)
          const inDate = list.some(holding => usableOn({ ...holding, centi: 1 }, TODAY))
          const plan = () => planDraw(request({ holdings: list, needCenti, foundMore }))
          if (needCenti > there && !foundMore) return void expect(plan).toThrow(/found more than counted/)
          if (needCenti > there && !inDate) return void expect(plan).toThrow(/No bottle/)
          const { moves, foundCenti } = plan()
          const before = new Map(list.map(holding => [holding.lotId, holding.centi]))
          const after = appended(before, moves)
          const sum = (balances: ReadonlyMap<string, number>) =>
            [...balances.values()].reduce((a, b) => a + b, 0)
          expect(sum(after)).toBe(sum(before) - needCenti + foundCenti)
          expect(foundCenti).toBe(Math.max(0, needCenti - there))
          for (const left of after.values()) expect(left).toBeGreaterThanOrEqual(0)
          const used = moves
            .filter(move => move.kind === 'use')
            .reduce((total, move) => total - move.centi, 0)
          expect(used).toBe(needCenti)
        },
      ),
    )
  })

  it('names the shortfall in the product’s unit', () => {
    const list = [{ lotId: 'a', centi: 1200, opened: true, lastDay: null }]
    expect(() => planDraw(request({ holdings: list, needCenti: 3000 }))).toThrow(
      'The shelf holds 12 ml that can be used, 18 ml short of 30 ml',
    )
  })

  it('records what was found before it is used, on the opened bottle the ledger called empty', () => {
    const list = [
      { lotId: 'a', centi: 0, opened: true, lastDay: TODAY + 3 },
      { lotId: 'b', centi: 0, opened: false, lastDay: TODAY + 1 },
    ]
    const { moves } = planDraw(request({ holdings: list, needCenti: 500, foundMore: true }))
    expect(moves.map(move => [move.kind, move.lotId, move.centi, move.why])).toEqual([
      ['count', 'a', 500, FOUND_MORE],
      ['use', 'a', -500, null],
    ])
  })

  it('says which sealed bottles it opens', () => {
    const list = [
      { lotId: 'a', centi: 300, opened: true, lastDay: TODAY + 3 },
      { lotId: 'b', centi: 3000, opened: false, lastDay: TODAY + 9 },
    ]
    expect(planDraw(request({ holdings: list })).opens).toEqual(['b'])
  })

  it('lets a person choose another bottle, with a reason that stays in the ledger', () => {
    const list = [
      { lotId: 'a', centi: 3000, opened: true, lastDay: TODAY + 3 },
      { lotId: 'b', centi: 3000, opened: false, lastDay: TODAY + 9 },
      { lotId: 'c', centi: 3000, opened: false, lastDay: TODAY - 1 },
    ]
    const override = { lotId: 'b', why: 'the open one has skinned over' }
    expect(planDraw(request({ holdings: list, override })).moves).toMatchObject([
      { lotId: 'b', why: override.why },
    ])
    expect(() => planDraw(request({ holdings: list, override: { ...override, why: ' ' } }))).toThrow(
      /out of turn/,
    )
    expect(() => planDraw(request({ holdings: list, override: { ...override, lotId: 'c' } }))).toThrow(
      /past its date/,
    )
  })
})
