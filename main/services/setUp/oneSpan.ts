import { checkClosures, momentWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'

interface Stretch {
  fromAt: number
  toAt: number
}

/**
 * The calendar's check of closures on one more beside the `others`, with the fields as the one more has them (`fromAt`,
 * `toAt`) and the times in the shop's zone.
 */
export function checkOneSpan(others: readonly Stretch[], one: Stretch, zone: string): void {
  const spanOf = ({ fromAt, toAt }: Stretch) => ({ from: fromAt, to: toAt })
  try {
    checkClosures([...others, one].map(spanOf))
  } catch (error) {
    if (!(error instanceof Refusal)) throw error
    const field = error.field.endsWith('.to') ? 'toAt' : 'fromAt'
    throw new Refusal(error.code, field, one[field], wordsOf(error, others, one, zone))
  }
}

function wordsOf(error: Refusal, others: readonly Stretch[], one: Stretch, zone: string): string {
  if (error.code === 'closure-backwards')
    return say('{toAt} is not after {fromAt}; let it end after it begins.', {
      toAt: momentWords(one.toAt, zone),
      fromAt: momentWords(one.fromAt, zone),
    })
  const other = others.find(each => each.fromAt < one.toAt && one.fromAt < each.toAt)
  if (!other) return error.message
  return say('It overlaps the one from {fromAt} to {toAt}; join them or choose another time.', {
    fromAt: momentWords(other.fromAt, zone),
    toAt: momentWords(other.toAt, zone),
  })
}
