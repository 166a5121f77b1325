/**
 * Drawing stock for a step: which lots give how much, as moves ready for the ledger. Either the whole amount is drawn or
 * nothing is. Where the crew used more than the ledger knew of, the ledger was wrong, not the bottle: the difference is
 * recorded as found before it is used, so that no lot ever stands below nothing.
 */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { checkPositive, type Unit } from './amount.ts'
import { amountWords } from './amountWords.ts'
import { byLastDay, takeFirstExpired } from './firstExpired.ts'
import type { MoveDraft } from './ledger.ts'
import { type Holding, usableOn } from './lot.ts'

export interface DrawRequest {
  readonly productId: string
  readonly unit: Unit
  readonly holdings: readonly Holding[]
  readonly needCenti: number
  /** Day number of the draw. */
  readonly day: number
  readonly at: number
  readonly by: string
  readonly stepId: string | null
  readonly jobId: string | null
  readonly why?: string | null
  /** A lot to take first instead of the one next in line. Needs a reason. */
  readonly override?: { readonly lotId: string; readonly why: string } | undefined
  /** Draw beyond what the ledger knows, recording the rest as found more than counted. */
  readonly foundMore?: boolean | undefined
}

export interface DrawPlan {
  readonly moves: readonly MoveDraft[]
  /** Sealed lots this draw opens. */
  readonly opens: readonly string[]
  readonly foundCenti: number
}

export const FOUND_MORE = word('found more than counted')

/** Plans a draw. Refuses one beyond stock unless it is to be recorded as found. */
export function planDraw(request: DrawRequest): DrawPlan {
  const { holdings, needCenti, day, override, unit } = request
  checkPositive(needCenti, 'needCenti')
  if (override !== undefined) checkOverride(override, holdings, day)
  const { use, shortCenti } = takeFirstExpired(holdings, needCenti, day, override?.lotId ?? null)
  const opened = new Set(holdings.filter(holding => holding.opened).map(holding => holding.lotId))
  const plan = {
    opens: use.map(taken => taken.lotId).filter(lotId => !opened.has(lotId)),
    foundCenti: shortCenti,
  }
  const takes = use.map(taken => ({ ...taken }))
  if (shortCenti > 0) {
    const usable = needCenti - shortCenti
    if (request.foundMore !== true)
      refuse(
        'beyond-stock',
        { needCenti },
        say(
          'The shelf holds {usable} that can be used, {shortCenti} short of {needCenti}; correct the amount, or record it as {found}.',
          {
            usable: amountWords(usable, unit),
            shortCenti: amountWords(shortCenti, unit),
            needCenti: amountWords(needCenti, unit),
            found: say(FOUND_MORE),
          },
        ),
      )
    const lotId = takes.at(-1)?.lotId ?? emptiedLot(holdings, day)
    if (lotId === null)
      refuse(
        'no-lot',
        { needCenti },
        say('No bottle of this product is on the shelf in date; receive the one that was used first.'),
      )
    const last = takes.find(taken => taken.lotId === lotId)
    if (last) last.centi += shortCenti
    else takes.push({ lotId, centi: shortCenti })
    return {
      ...plan,
      moves: [found(request, lotId, shortCenti), ...takes.map(taken => drawn(request, taken))],
    }
  }
  return { ...plan, moves: takes.map(taken => drawn(request, taken)) }
}

function drawn(request: DrawRequest, taken: { lotId: string; centi: number }): MoveDraft {
  const why = request.override?.why ?? request.why ?? null
  return { ...base(request, taken.lotId), kind: 'use', centi: -taken.centi, why }
}

function found(request: DrawRequest, lotId: string, centi: number): MoveDraft {
  return { ...base(request, lotId), kind: 'count', centi, why: FOUND_MORE, stepId: null, jobId: null }
}

function base(request: DrawRequest, lotId: string) {
  const { productId, at, by, stepId, jobId } = request
  return { lotId, productId, at, by, stepId, jobId, costMinor: null, correctsId: null }
}

/** The bottle the crew most likely still found something in: an opened one, empty by the ledger, in date. */
function emptiedLot(holdings: readonly Holding[], day: number): string | null {
  const inDate = holdings.filter(holding => usableOn({ ...holding, centi: 1 }, day))
  const opened = inDate.filter(holding => holding.opened)
  return [...(opened.length > 0 ? opened : inDate)].sort(byLastDay)[0]?.lotId ?? null
}

function checkOverride(
  override: { readonly lotId: string; readonly why: string },
  holdings: readonly Holding[],
  day: number,
): void {
  const holding = holdings.find(entry => entry.lotId === override.lotId)
  if (!holding || !usableOn(holding, day))
    refuse(
      'override-unusable',
      { 'override.lotId': override.lotId },
      say('That bottle is empty or past its date; choose one that can be used.'),
    )
  if (!override.why.trim())
    refuse('why-missing', { 'override.why': override.why }, say('Say why this bottle is taken out of turn.'))
}
