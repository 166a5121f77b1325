/** Random shelves for the laws. */
import fc from 'fast-check'
import type { Holding, Move } from '../../../main/domain/shelf/index.ts'

export const TODAY = 20_000

export const holdings: fc.Arbitrary<Holding[]> = fc
  .array(
    fc.record({
      centi: fc.integer({ min: 0, max: 60_000 }),
      opened: fc.boolean(),
      lastDay: fc.option(fc.integer({ min: TODAY - 10, max: TODAY + 40 }), { nil: null }),
    }),
    { maxLength: 12 },
  )
  .map(list => list.map((entry, i) => ({ ...entry, lotId: `lot ${i}` })))

/** No unforeseen use for so many open days. */
export function noUseAhead(days: number) {
  const zeros = new Array<number>(days + 1).fill(0)
  return { meanCenti: zeros, variance: zeros }
}

export function move(seq: number, part: Partial<Move>): Move {
  return {
    id: `move ${seq}`,
    seq,
    lotId: 'lot 0',
    productId: 'product',
    kind: 'use',
    centi: -100,
    at: seq,
    by: 'anna',
    why: 'a reason',
    stepId: null,
    jobId: null,
    costMinor: part.kind === 'receipt' ? 0 : null,
    correctsId: null,
    ...part,
  }
}

/** A ledger of one product as a shop would write it: nothing ever goes below nothing, lots may mix. */
export const ledger: fc.Arbitrary<Move[]> = fc
  .array(
    fc.record({
      what: fc.constantFrom('receipt', 'receipt', 'use', 'use', 'use', 'waste', 'count', 'correct' as const),
      lot: fc.integer({ min: 0, max: 3 }),
      centi: fc.integer({ min: 1, max: 50_000 }),
      costMinor: fc.oneof(fc.integer({ min: 0, max: 99_999 }), fc.constant(9_007_199_254)),
      job: fc.integer({ min: 0, max: 4 }),
    }),
    { maxLength: 40 },
  )
  .map(entries => {
    const moves: Move[] = []
    const left = new Map<string, number>()
    for (const { what, lot, centi, costMinor, job } of entries) {
      const lotId = `lot ${lot}`
      const there = left.get(lotId) ?? 0
      const seq = moves.length
      const taken = -Math.min(centi, there)
      const wrong = moves.findLast(entry => entry.kind === 'use' && entry.lotId === lotId)
      let made: Move | null = null
      if (what === 'receipt') made = move(seq, { lotId, kind: 'receipt', centi, costMinor, why: null })
      else if (what === 'count') made = move(seq, { lotId, kind: 'count', centi })
      else if (what === 'correct' && wrong)
        made = move(seq, {
          lotId,
          kind: 'correction',
          centi: Math.min(centi, -wrong.centi),
          correctsId: wrong.id,
        })
      else if (there > 0 && (what === 'use' || what === 'waste'))
        made = move(seq, { lotId, kind: what, centi: taken, jobId: what === 'use' ? `job ${job}` : null })
      if (made === null) continue
      // A use is put right once at most here, so that no more comes back than it took.
      if (made.correctsId !== null && moves.some(entry => entry.correctsId === made.correctsId)) continue
      moves.push(made)
      left.set(lotId, there + made.centi)
    }
    return moves
  })
