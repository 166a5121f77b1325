import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { appended, countMove } from '../../../main/domain/shelf/index.ts'
import { balanceAfter, checkMove, inLedgerOrder } from '../../../main/domain/shelf/ledger.ts'
import { ledger, move } from './arbitraries.ts'

describe('the ledger', () => {
  it('has one order, whatever the order its moves are read in', () => {
    fc.assert(
      fc.property(
        ledger.chain(moves =>
          fc.tuple(fc.constant(moves), fc.shuffledSubarray(moves, { minLength: moves.length })),
        ),
        ([moves, shuffled]) => {
          expect(inLedgerOrder(shuffled)).toEqual(moves)
        },
      ),
    )
  })

  it('never takes a lot below nothing, and says what to do', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 10_000 }),
        fc.integer({ min: 1, max: 20_000 }),
        (there, taken) => {
          if (taken <= there) expect(balanceAfter(there, { centi: -taken })).toBe(there - taken)
          else expect(() => balanceAfter(there, { centi: -taken })).toThrow(/found than counted/)
        },
      ),
    )
  })

  it('appends without touching what it was given', () => {
    const before = new Map([['lot 0', 500]])
    const after = appended(before, [move(1, { centi: -200 }), move(2, { kind: 'count', centi: 50 })])
    expect(before.get('lot 0')).toBe(500)
    expect(after.get('lot 0')).toBe(350)
    expect(() => appended(before, [move(1, { centi: -501 })])).toThrow(/holds 5 by the ledger/)
  })

  it.each([
    ['a receipt that takes away', { kind: 'receipt', centi: -5 }, 'sign-bad'],
    ['a use that adds', { kind: 'use', centi: 5 }, 'sign-bad'],
    ['an amount finer than a hundredth', { centi: -0.5 }, 'amount-bad'],
    ['nothing', { centi: 0 }, 'amount-bad'],
    ['nobody', { by: ' ' }, 'who-missing'],
    ['waste without a reason', { kind: 'waste', why: '' }, 'why-missing'],
    ['use for no step and no reason', { why: null }, 'why-missing'],
    ['a receipt without its cost', { kind: 'receipt', centi: 5, costMinor: null }, 'cost-misplaced'],
    ['a use with a cost', { costMinor: 5 }, 'cost-misplaced'],
    ['a use that corrects', { correctsId: 'move 3' }, 'corrects-misplaced'],
  ] as const)('refuses %s', (_, part, code) => {
    expect(() => checkMove(move(9, part))).toThrow(expect.objectContaining({ code }))
  })

  it('turns a count into the difference, and into nothing where there is none', () => {
    const counted = { lotId: 'lot 0', productId: 'product', at: 5, by: 'anna', why: 'evening count' }
    expect(countMove(1200, { ...counted, countedCenti: 1200 })).toBeNull()
    const found = countMove(1200, { ...counted, countedCenti: 900 })!
    expect(found).toMatchObject({ kind: 'count', centi: -300, why: 'evening count' })
    expect(balanceAfter(1200, found)).toBe(900)
    expect(() => countMove(1200, { ...counted, countedCenti: -1 })).toThrow(/cannot be counted/)
  })
})
