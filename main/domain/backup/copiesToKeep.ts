import { dateOf, wallMinuteOf } from '../calendar/index.ts'

const hour = 60
const day = 24 * hour
/** How long each is kept, in minutes: one an hour, one a day, one a month. */
const hourlyFor = day
const dailyFor = 31 * day
const monthlyFor = 10 * 366 * day

/** No more copies than this are kept of what lies in the future: a clock once set wrong leaves them behind. */
const mostAhead = 24

/**
 * The moments, of those a copy was made at, whose copies are kept at `nowAt`: for a day the last of each hour, for a
 * month the last of each day, for ten years the last of each month, hours and days as the wall clock of `zone` counts
 * them. The newest is always kept, and so is the newest that is not ahead of the clock. All in epoch minutes; the answer is in order and names each moment once. What is
 * thinned out now would have gone later too, so it makes no difference how often this is asked.
 */
export function copiesToKeep(madeAt: readonly number[], nowAt: number, zone: string): number[] {
  const inOrder = [...new Set(madeAt)].sort((a, b) => a - b)
  const past = inOrder.filter(at => at <= nowAt)
  const ahead = inOrder.filter(at => at > nowAt).slice(-mostAhead)
  const buckets = new Map(past.map(at => [at, bucketsOf(at, zone)]))
  const lastOf = new Map(
    [...buckets].flatMap(([at, each]) => Object.values(each).map(key => [key, at] as const)),
  )
  const kept = past.filter(at => {
    const { ofHour, ofDay, ofMonth } = buckets.get(at) ?? bucketsOf(at, zone)
    const age = nowAt - at
    return (
      at === past.at(-1) ||
      (age <= hourlyFor && lastOf.get(ofHour) === at) ||
      (age <= dailyFor && lastOf.get(ofDay) === at) ||
      (age <= monthlyFor && lastOf.get(ofMonth) === at)
    )
  })
  return [...kept, ...ahead]
}

/** What a moment shares with the others of its hour, day and month. */
function bucketsOf(at: number, zone: string) {
  const date = dateOf(at, zone)
  return {
    ofHour: `${date} ${Math.floor(wallMinuteOf(at, zone) / hour)}`,
    ofDay: date,
    ofMonth: date.slice(0, 7),
  }
}
