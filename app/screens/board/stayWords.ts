import type { StayView } from '../../../main/api/views.ts'
import { nearWords } from '../../parts/time.ts'
import { leavingWords, nextWords } from './nextWords.ts'

/** What a stay is, for somebody who hears it instead of seeing it. */
export function stayWords(stay: StayView, zone: string, nowAt: number): string {
  const when = (at: number) => nearWords(at, zone, nowAt)
  const parts = stay.blocks.filter(block => block.kind !== 'wait').map(block => block.name)
  const cure = stay.blocks
    .map(block => block.cure)
    .filter(marks => marks !== null)
    .at(-1)
  return [
    `${stay.plate}, ${stay.customerName}, ${stay.bayName}, ${when(stay.fromAt)} to ${when(stay.toAt)}`,
    parts.join(', '),
    cure
      ? `by its profile may be touched from ${when(cure.tackFreeAt)}, may leave ${leavingWords[stay.leaving]} from ${when(cure.safeAt)}`
      : '',
    stay.next ? `next: ${nextWords(stay.next, nowAt, zone)}` : '',
    stay.status === 'held' ? 'held, not confirmed' : '',
    stay.late ? 'late against its promise' : '',
    stay.conflict ?? '',
  ]
    .filter(Boolean)
    .join('. ')
}
