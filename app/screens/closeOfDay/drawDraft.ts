import type { DrawToConfirm } from '../../../main/api/views.ts'

/** What the crew says of one draw before it is confirmed. */
export interface DrawDraft {
  lotId: string | null
  amount: number
  /** The bottle's weight; null while it is not being weighed. */
  grossG: number | null
  weighing: boolean
  reason: string
  foundMore: boolean
  /** Why a second batch goes onto this car; asked for only where it does. */
  mixing: string
}

export function proposedDraft({ lotId, proposed }: DrawToConfirm): DrawDraft {
  return { lotId, amount: proposed, grossG: null, weighing: false, reason: '', foundMore: false, mixing: '' }
}

/** A tap of more or less; never under nothing. */
export function tapped(draft: DrawDraft, { tap }: DrawToConfirm, by: 1 | -1): DrawDraft {
  return { ...draft, amount: Math.max(0, Math.round((draft.amount + by * tap) * 100) / 100) }
}

/** Taken from another bottle than the one next in line, which wants a reason. */
export function outOfTurn(draft: DrawDraft, { lotId }: DrawToConfirm): boolean {
  return lotId !== null && draft.lotId !== lotId
}

/** As `shelf.confirmDraws` takes it. */
export function drawInput(draw: DrawToConfirm, draft: DrawDraft) {
  const reason = draft.reason.trim()
  const mixing = draft.mixing.trim()
  const said = {
    productId: draw.productId,
    lotId: draft.lotId,
    ...(outOfTurn(draft, draw) && reason ? { reason } : {}),
    ...(mixing ? { mixing } : {}),
  }
  if (draft.weighing && draft.grossG !== null)
    return { ...said, how: 'weighed' as const, weighed: { grossG: draft.grossG } }
  const how = draft.amount === draw.proposed ? ('proposed' as const) : ('corrected' as const)
  return { ...said, how, amount: draft.amount, ...(draft.foundMore ? { foundMore: true } : {}) }
}
