import type { NextThingView } from '../../../main/api/views.ts'
import { clockWords, nearWords } from '../../parts/time.ts'

const names: Record<NextThingView['what'], string> = {
  touch: '▲ touch',
  layer: 'next layer',
  topper: '◆ topper',
  leave: '● may leave',
}

/** What a curing car may have done next and when: "◆ topper 14:20 to 15:20", "● may leave since 17:30". */
export function nextWords({ what, fromAt, untilAt }: NextThingView, nowAt: number, zone: string): string {
  const when = (at: number) =>
    Math.abs(at - nowAt) < 720 ? clockWords(at, zone) : nearWords(at, zone, nowAt)
  if (untilAt !== null && nowAt > untilAt) return `${names[what]} missed ${when(untilAt)}`
  if (fromAt > nowAt) return `${names[what]} ${when(fromAt)}${untilAt === null ? '' : ` to ${when(untilAt)}`}`
  return untilAt === null ? `${names[what]} since ${when(fromAt)}` : `${names[what]} until ${when(untilAt)}`
}
