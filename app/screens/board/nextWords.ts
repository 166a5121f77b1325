import type { NextThingView } from '../../../main/api/views.ts'
import { clockWords, nearWords } from '../../parts/time.ts'

const names: Record<NextThingView['what'], string> = {
  touch: '▲ touch',
  layer: 'next layer',
  topper: '◆ topper',
  leave: '● may leave',
}

/** Which of the two rules is meant: the car stays until it may get wet, or leaves under a cover somebody confirmed. */
export const leavingWords: Record<NextThingView['leaving'], string> = { dry: 'dry', covered: 'under cover' }

/** What a curing car may have done next and when: "◆ topper 14:20 to 15:20", "● may leave dry since 17:30". */
export function nextWords(
  { what, fromAt, untilAt, leaving }: NextThingView,
  nowAt: number,
  zone: string,
): string {
  const when = (at: number) =>
    Math.abs(at - nowAt) < 720 ? clockWords(at, zone) : nearWords(at, zone, nowAt)
  const name = what === 'leave' ? `${names.leave} ${leavingWords[leaving]}` : names[what]
  if (untilAt !== null && nowAt > untilAt) return `${name} missed ${when(untilAt)}`
  if (fromAt > nowAt) return `${name} ${when(fromAt)}${untilAt === null ? '' : ` to ${when(untilAt)}`}`
  return untilAt === null ? `${name} since ${when(fromAt)}` : `${name} until ${when(untilAt)}`
}
