/** What the shelf's fixed words are called on screens. */

import type { MoveKind, OrderStatus, ServiceClass, ShelfUnit } from '../../../main/api/views.ts'
import type { DiscardReason } from '../../../main/domain/shelf/index.ts'

export const shelfUnitChoices: { value: ShelfUnit; label: string }[] = [
  { value: 'ml', label: 'Millilitres' },
  { value: 'g', label: 'Grams' },
  { value: 'piece', label: 'Pieces' },
]

export const serviceClassChoices: { value: ServiceClass; label: string }[] = [
  { value: 'vital', label: 'Vital: no job without it' },
  { value: 'usual', label: 'Usual' },
  { value: 'handy', label: 'Handy: something else does for a day' },
]

/** What was the matter with what is thrown away. */
export const discardChoices: { value: DiscardReason; label: string }[] = [
  { value: 'crystallised', label: 'Crystallised' },
  { value: 'skinned', label: 'Skinned over' },
  { value: 'cloudy', label: 'Cloudy' },
  { value: 'spilt', label: 'Spilt' },
  { value: 'expired', label: 'Past its date' },
  { value: 'other', label: 'Something else' },
]

export const moveWords: Record<MoveKind, string> = {
  receipt: 'received',
  use: 'used',
  waste: 'thrown away',
  mix: 'mixed',
  count: 'counted',
  return: 'sent back',
  correction: 'put right',
}

export const orderStatusWords: Record<OrderStatus, string> = {
  draft: 'draft',
  sent: 'sent',
  partly: 'partly received',
  received: 'received',
  cancelled: 'cancelled',
}
