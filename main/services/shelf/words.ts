import { say } from '../../domain/language/index.ts'
import { amountWords, type Unit } from '../../domain/shelf/index.ts'

/** A line of the ledger in words: `used 38 ml of no. 412 for "First layer" of KFR 204`. */
export function moveWords(
  move: { kind: string; centi: number; lotNumber: number; why: string | null; correctsSeq: number | null },
  unit: Unit,
  job: { plate: string; stepName: string } | null,
): string {
  const amount = amountWords(Math.abs(move.centi), unit)
  const lot = say('no. {lotNumber}', { lotNumber: move.lotNumber })
  const why = move.why ? `: ${move.why}` : ''
  switch (move.kind) {
    case 'receipt':
      return say('received {amount} as {lot}', { amount, lot })
    case 'use':
      return job
        ? say('used {amount} of {lot} for "{stepName}" of {plate}{why}', {
            amount,
            lot,
            stepName: job.stepName,
            plate: job.plate,
            why,
          })
        : say('used {amount} of {lot}{why}', { amount, lot, why })
    case 'waste':
      return say('threw away {amount} of {lot}{why}', { amount, lot, why })
    case 'mix':
      return say('took {amount} of {lot}{why}', { amount, lot, why })
    case 'return':
      return say('sent back {amount} of {lot}{why}', { amount, lot, why })
    case 'count':
      return move.centi > 0
        ? say('counted {lot}: {amount} more than the ledger had{why}', { lot, amount, why })
        : say('counted {lot}: {amount} less than the ledger had{why}', { lot, amount, why })
    default: {
      const line = move.correctsSeq ?? ''
      return move.centi > 0
        ? say('put right line {line}: back into {lot} {amount}{why}', { line, lot, amount, why })
        : say('put right line {line}: out of {lot} {amount}{why}', { line, lot, amount, why })
    }
  }
}
