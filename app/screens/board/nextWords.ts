import type { NextThingView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { clockWords, nearWords } from '../../parts/time.ts'

const names: Record<Exclude<NextThingView['what'], 'leave'>, string> = {
  touch: say('▲ touch'),
  layer: say('next layer'),
  topper: say('◆ topper'),
}

/** Which of the two rules is meant: the car stays until it may get wet, or leaves under a cover somebody confirmed. */
const leaves: Record<NextThingView['leaving'], string> = {
  dry: say('● pick-up'),
  covered: say('● pick-up under cover'),
}

/** What a curing car may have done next and when: "◆ topper 14:20 to 15:20", "● pick-up since 17:30". */
export function nextWords(
  { what, fromAt, untilAt, leaving }: NextThingView,
  nowAt: number,
  zone: string,
): string {
  const when = (at: number) =>
    Math.abs(at - nowAt) < 720 ? clockWords(at, zone) : nearWords(at, zone, nowAt)
  const name = what === 'leave' ? leaves[leaving] : names[what]
  if (untilAt !== null && nowAt > untilAt)
    return say('{name} missed {untilAt}', { name, untilAt: when(untilAt) })
  if (fromAt > nowAt)
    return untilAt === null
      ? `${name} ${when(fromAt)}`
      : say('{name} {fromAt} to {untilAt}', { name, fromAt: when(fromAt), untilAt: when(untilAt) })
  return untilAt === null
    ? say('{name} since {fromAt}', { name, fromAt: when(fromAt) })
    : say('{name} until {untilAt}', { name, untilAt: when(untilAt) })
}
