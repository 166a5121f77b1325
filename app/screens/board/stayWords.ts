import type { StayView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
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
    say('{plate}, {customerName}, {bayName}, {fromAt} to {toAt}', {
      plate: stay.plate,
      customerName: stay.customerName,
      bayName: stay.bayName,
      fromAt: when(stay.fromAt),
      toAt: when(stay.toAt),
    }),
    parts.join(', '),
    cure
      ? say('by its profile may be touched from {tackFreeAt}, may leave {leavingWords} from {safeAt}', {
          tackFreeAt: when(cure.tackFreeAt),
          leavingWords: leavingWords[stay.leaving],
          safeAt: when(cure.safeAt),
        })
      : '',
    stay.next ? say('next: {next}', { next: nextWords(stay.next, nowAt, zone) }) : '',
    stay.status === 'held' ? say('held, not confirmed') : '',
    stay.late ? say('late against its promise') : '',
    stay.conflict ?? '',
  ]
    .filter(Boolean)
    .join('. ')
}
