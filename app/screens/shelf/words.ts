/** What the shelf's fixed words are called on screens. */
import type { MoveKind, OrderStatus, ServiceClass, ShelfUnit } from '../../../main/api/views.ts'

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

export const moveWords: Record<MoveKind, string> = {
  receipt: 'received',
  use: 'used',
  waste: 'thrown away',
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
