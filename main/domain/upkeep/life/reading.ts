import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/**
 * What is known of one life, as interval-censored life data: it was working at age `from` and gone at age `to`.
 * `from` 0: gone at the first look. `to` null: still working at `from`, the end not seen. `from` equal to `to`: the
 * end was seen happen. Ages may be in any unit (this app: days), as long as it is the same everywhere.
 */
export interface LifeReading {
  readonly from: number
  readonly to: number | null
  /** How many lives read exactly so; 1 when absent. */
  readonly count?: number
}

/** One look at a protectant: its age then, and whether it still worked. */
export interface Inspection {
  readonly age: number
  readonly working: boolean
}

/** Refuses ages that are no ages: negative, not finite, an end before the last time it worked, or an end at 0. */
export function checkReadings(readings: readonly LifeReading[], field = 'readings'): void {
  readings.forEach(({ from, to, count = 1 }, i) => {
    if (!Number.isFinite(from) || from < 0)
      refuse(
        'age-bad',
        { [`${field}.${i}.from`]: from },
        say('{from} is not an age; use a number from 0 up.', { from }),
      )
    if (to !== null && (!Number.isFinite(to) || to < from || to === 0))
      refuse(
        'age-backwards',
        { [`${field}.${i}.to`]: to },
        say('It cannot be gone at {to} and working at {from}; check which inspection came first.', {
          to,
          from,
        }),
      )
    if (!Number.isSafeInteger(count) || count < 1)
      refuse(
        'count-bad',
        { [`${field}.${i}.count`]: count },
        say('{count} lives is not a whole number from 1 up.', { count }),
      )
  })
}

/**
 * The looks at one life made into its reading. The end lies between the last look that found it working before the
 * first that found it gone; a later "working" after a "gone" is refused, because a protectant does not grow back: it
 * was renewed without being written down, or one of the two looks was wrong. No looks say nothing (null).
 */
export function readingOf(inspections: readonly Inspection[]): LifeReading | null {
  const looks = [...inspections].sort((a, b) => a.age - b.age || Number(b.working) - Number(a.working))
  const gone = looks.find(look => !look.working)
  const working = looks.filter(look => look.working).at(-1)
  if (gone && working && working.age > gone.age)
    refuse(
      'working-after-gone',
      { inspections: working.age },
      say(
        'It was gone at age {age} and working at {age2}; enter the renewal between, or correct one of them.',
        { age: gone.age, age2: working.age },
      ),
    )
  if (gone) {
    const from = working?.age ?? 0
    // Both on the day it was laid says nothing about a life; so does a look at age 0.
    return gone.age > 0 ? { from, to: gone.age } : null
  }
  return working && working.age > 0 ? { from: working.age, to: null } : null
}

/** How many lives a set of readings speaks of, and how many of them are known to have ended. */
export function countLives(readings: readonly LifeReading[]): { lives: number; ended: number } {
  let lives = 0
  let ended = 0
  for (const { to, count = 1 } of readings) {
    lives += count
    if (to !== null) ended += count
  }
  return { lives, ended }
}

/** The same readings with equal ones counted together, so that a fit walks over each once. */
export function pooled(readings: readonly LifeReading[]): LifeReading[] {
  const groups = new Map<string, LifeReading>()
  for (const { from, to, count = 1 } of readings) {
    const key = `${from} ${to}`
    groups.set(key, { from, to, count: count + (groups.get(key)?.count ?? 0) })
  }
  return [...groups.values()]
}
