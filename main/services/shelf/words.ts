import { formatMoney, majorOf } from '../../domain/money/index.ts'
import { amountWords, type Unit } from '../../domain/shelf/index.ts'

/** An amount in a sentence or on a document: `$48.00`, `€48.00`. The documents are written in English. */
export function moneyWords(amountMinor: number, currency: string): string {
  return formatMoney(amountMinor, currency, currency === 'USD' ? 'en-US' : 'en-GB')
}

/** An amount without its currency, where the head of the column names it: `1,234.50`. */
export function plainMoney(amountMinor: number, currency: string): string {
  const [whole = '', fraction] = majorOf(amountMinor, currency).split('.')
  const grouped = whole.replaceAll(/\B(?=(\d{3})+$)/g, ',')
  return fraction === undefined ? grouped : `${grouped}.${fraction}`
}

/** A line of the ledger in words: `used 38 ml of no. 412 for "First layer" of KFR 204`. */
export function moveWords(
  move: { kind: string; centi: number; lotNumber: number; why: string | null; correctsSeq: number | null },
  unit: Unit,
  job: { plate: string; stepName: string } | null,
): string {
  const amount = amountWords(Math.abs(move.centi), unit)
  const lot = `no. ${move.lotNumber}`
  const why = move.why ? `: ${move.why}` : ''
  switch (move.kind) {
    case 'receipt':
      return `received ${amount} as ${lot}`
    case 'use':
      return job
        ? `used ${amount} of ${lot} for "${job.stepName}" of ${job.plate}${why}`
        : `used ${amount} of ${lot}${why}`
    case 'waste':
      return `threw away ${amount} of ${lot}${why}`
    case 'mix':
      return `took ${amount} of ${lot}${why}`
    case 'return':
      return `sent back ${amount} of ${lot}${why}`
    case 'count':
      return `counted ${lot}: ${amount} ${move.centi > 0 ? 'more' : 'less'} than the ledger had${why}`
    default:
      return `put right line ${move.correctsSeq ?? ''}: ${move.centi > 0 ? 'back into' : 'out of'} ${lot} ${amount}${why}`
  }
}
