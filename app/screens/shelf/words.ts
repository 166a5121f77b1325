/** What the shelf's fixed words are called on screens. */

import type { MoveKind, OrderStatus, ServiceClass, ShelfUnit } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { DiscardReason } from '../../../main/domain/shelf/index.ts'

export const shelfUnitChoices: { value: ShelfUnit; label: string }[] = [
  { value: 'ml', label: say('Volume') },
  { value: 'g', label: say('Weight') },
  { value: 'piece', label: say('Pieces') },
]

export const serviceClassChoices: { value: ServiceClass; label: string }[] = [
  { value: 'vital', label: say('Vital: no job without it') },
  { value: 'usual', label: say('Usual') },
  { value: 'handy', label: say('Handy: something else does for a day') },
]

/** What was the matter with what is thrown away. */
export const discardChoices: { value: DiscardReason; label: string }[] = [
  { value: 'crystallised', label: say('Crystallised') },
  { value: 'skinned', label: say('Skinned over') },
  { value: 'cloudy', label: say('Cloudy') },
  { value: 'spilt', label: say('Spilt') },
  { value: 'expired', label: say('Past its date') },
  { value: 'other', label: say('Something else') },
]

export const moveWords: Record<MoveKind, string> = {
  receipt: say('received'),
  use: say('used'),
  waste: say('thrown away'),
  mix: say('mixed'),
  count: say('counted'),
  return: say('sent back'),
  correction: say('put right'),
}

export const orderStatusWords: Record<OrderStatus, string> = {
  draft: say('draft'),
  sent: say('sent'),
  partly: say('partly received'),
  received: say('received'),
  cancelled: say('cancelled'),
}
