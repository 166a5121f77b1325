import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { costMoves } from '../../../main/domain/shelf/index.ts'
import { ledger, move } from './arbitraries.ts'
import { jobCosts } from './jobCosts.ts'

const methods = fc.constantFrom('average', 'fifo' as const)

describe('costs', () => {
  it('conserve value: what was paid is what was used, lost, and is still there, to the minor unit', () => {
    fc.assert(
      fc.property(ledger, methods, (moves, method) => {
        const costs = costMoves(moves, method)
        const paid = moves.reduce((sum, entry) => sum + BigInt(entry.costMinor ?? 0), 0n)
        const rest = [...costs.byMove].filter(
          ([id]) => moves.find(entry => entry.id === id)!.kind !== 'receipt',
        )
        const gone = rest.reduce((sum, [, value]) => sum - BigInt(value), 0n)
        expect(gone + BigInt(costs.leftValueMinor)).toBe(paid)
        expect(costs.leftCenti).toBe(moves.reduce((sum, entry) => sum + entry.centi, 0))
        expect(costs.leftValueMinor).toBeGreaterThanOrEqual(0)
        if (costs.leftCenti === 0) expect(costs.leftValueMinor).toBe(0)
      }),
    )
  })

  it('go on from where they stopped: a part and the rest cost what the whole does', () => {
    let corrected = 0
    fc.assert(
      fc.property(ledger, methods, fc.nat(), (moves, method, cut) => {
        const used = moves.find(each => each.kind === 'use' && each.centi < -1)
        if (used)
          moves = [
            ...moves,
            move(moves.length, {
              kind: 'correction',
              centi: Math.ceil(-used.centi / 2),
              correctsId: used.id,
            }),
          ]
        const ordered = moves.toSorted((a, b) => a.seq - b.seq)
        const at = cut % (ordered.length + 1)
        const [first, rest] = [ordered.slice(0, at), ordered.slice(at)]
        const whole = costMoves(moves, method)
        const part = costMoves(first, method)
        const before = new Map(
          first.map(({ id, centi }) => [id, { centi, costMinor: part.byMove.get(id) ?? 0 }]),
        )
        const after = costMoves(rest, method, part.state, before)
        if (rest.some(each => each.correctsId !== null && before.has(each.correctsId))) corrected++
        expect(new Map([...part.byMove, ...after.byMove])).toEqual(whole.byMove)
        expect(after.state).toEqual(whole.state)
        expect(after.leftValueMinor).toBe(whole.leftValueMinor)
      }),
    )
    expect(corrected).toBeGreaterThan(5)
  })

  it('do not depend on the order the moves are read in', () => {
    fc.assert(
      fc.property(ledger, methods, (moves, method) => {
        expect(costMoves([...moves].reverse(), method).leftValueMinor).toBe(
          costMoves(moves, method).leftValueMinor,
        )
      }),
    )
  })

  it('of jobs and waste together are all that left the shelf', () => {
    fc.assert(
      fc.property(ledger, methods, (moves, method) => {
        const costs = costMoves(moves, method)
        const jobs = jobCosts(moves, new Map([['product', costs]])).reduce(
          (sum, job) => sum + job.costMinor,
          0,
        )
        const waste = moves
          .filter(entry => entry.kind === 'waste')
          .reduce((sum, entry) => sum - costs.byMove.get(entry.id)!, 0)
        const paid = moves.reduce((sum, entry) => sum + (entry.costMinor ?? 0), 0)
        expect(jobs + waste + costs.leftValueMinor).toBe(paid)
      }),
    )
  })

  it('bring the cost of a wrong use back with its correction', () => {
    const moves = [
      move(0, { kind: 'receipt', centi: 3000, costMinor: 1000 }),
      move(1, { kind: 'use', centi: -1000, jobId: 'job 1' }),
      move(2, { kind: 'correction', centi: 600, correctsId: 'move 1' }),
    ]
    const costs = costMoves(moves, 'fifo')
    expect([...costs.byMove.values()]).toEqual([1000, -333, 200])
    expect(jobCosts(moves, new Map([['product', costs]]))).toMatchObject([{ jobId: 'job 1', costMinor: 133 }])
  })

  it('let found stock carry no cost of its own', () => {
    const moves = [
      move(0, { kind: 'receipt', centi: 1000, costMinor: 900 }),
      move(1, { kind: 'count', centi: 500 }),
      move(2, { centi: -1500 }),
    ]
    expect(costMoves(moves, 'fifo').byMove.get('move 2')).toBe(-900)
    expect(costMoves(moves, 'average')).toMatchObject({ leftCenti: 0, leftValueMinor: 0 })
  })

  it('refuse a ledger that was used up before it was filled', () => {
    expect(() => costMoves([move(0, { centi: -5 })], 'fifo')).toThrow(/more than the ledger holds/)
  })
})
