import type { StayView } from '../../../main/api/views.ts'
import { standingWords } from '../../../main/domain/floor/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { nearWords } from '../../parts/time.ts'
import { nextWords } from './nextWords.ts'

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
    cure ? cureWords(stay.leaving, { tackFreeAt: when(cure.tackFreeAt), safeAt: when(cure.safeAt) }) : '',
    stay.next ? say('next: {next}', { next: nextWords(stay.next, nowAt, zone) }) : '',
    stay.status === 'held' ? say('held, not confirmed') : '',
    standingWords(stay, when),
    stay.conflict ?? '',
  ]
    .filter(Boolean)
    .join('. ')
}

function cureWords(leaving: StayView['leaving'], values: { tackFreeAt: string; safeAt: string }): string {
  return leaving === 'dry'
    ? say('by its profile safe to touch from {tackFreeAt}, earliest pick-up {safeAt}', values)
    : say('by its profile safe to touch from {tackFreeAt}, earliest pick-up under cover {safeAt}', values)
}
