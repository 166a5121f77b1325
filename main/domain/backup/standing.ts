import { clockWords, dateOf, weekdayDate } from '../calendar/index.ts'
import { say } from '../language/index.ts'

const day = 24 * 60
/** Minutes a clock may be behind what it showed before, without anybody having set it: two machines differ by as much. */
const clockSlack = 10
/** Minutes a shop is given to name a second place before it is reminded. */
const graceForPlace = 7 * day

/** A folder that copies are carried to. */
export interface SecondPlace {
  /** As the owner named it. */
  readonly path: string
  /** Epoch minute of the newest good copy in it; null: none, or it cannot be looked into. */
  readonly newestAt: number | null
  /** Why the last copy could not be carried there, in words; null: it could. */
  readonly problem: string | null
}

export interface CopiesMade {
  readonly nowAt: number
  /** The shop's IANA zone. */
  readonly zone: string
  /** Epoch minutes of the oldest and the newest good copy on this computer; null: none yet. */
  readonly oldestAt: number | null
  readonly newestAt: number | null
  /** Why the last copy was not made, in words; null: it was. */
  readonly problem: string | null
  readonly place: SecondPlace | null
  /** Epoch minute of the last change anybody saved. */
  readonly lastSavedAt: number | null
}

export interface Warning {
  readonly about: 'copies' | 'place' | 'clock' | 'data' | 'restored'
  readonly words: string
}

/**
 * How the copies stand: one line on when the last good one was made and where it lies, and what somebody should hear
 * of, most pressing first.
 */
export function copiesStand(made: CopiesMade): { line: string; warnings: Warning[] } {
  const { nowAt, newestAt, place, problem } = made
  const when = (at: number) => momentWords(at, made)
  const warnings: Warning[] = []
  const because = problem === null ? '' : ` ${problem}`
  if (newestAt === null && problem !== null)
    warnings.push({
      about: 'copies',
      words: say("There is no copy of this shop's data.{because}", { because }),
    })
  else if (newestAt !== null && nowAt - newestAt > day)
    warnings.push({
      about: 'copies',
      words: say('The last good copy is more than a day old: {newestAt}.{because}', {
        newestAt: when(newestAt),
        because,
      }),
    })
  else if (problem !== null) warnings.push({ about: 'copies', words: problem })
  warnings.push(...placeWarnings(made))
  const { lastSavedAt } = made
  if (lastSavedAt !== null && lastSavedAt - nowAt > clockSlack)
    warnings.push({
      about: 'clock',
      words: say(
        "This computer's clock shows {nowAt}, but something was saved at {lastSavedAt}: set the clock right, or times and reminders will be wrong.",
        { nowAt: when(nowAt), lastSavedAt: when(lastSavedAt) },
      ),
    })
  return { line: standLine(newestAt, place, when), warnings }
}

function placeWarnings(made: CopiesMade): Warning[] {
  const { nowAt, newestAt, oldestAt, place } = made
  if (newestAt === null) return []
  const words = (() => {
    if (place === null)
      return oldestAt !== null && nowAt - oldestAt > graceForPlace
        ? say('All copies lie on this computer: name a second place for them in the settings, under Backups.')
        : null
    if (place.problem !== null) return place.problem
    return place.newestAt === null || newestAt - place.newestAt > day
      ? say('The newest copy in {path} is more than a day older than the one here.', { path: place.path })
      : null
  })()
  return words === null ? [] : [{ about: 'place', words }]
}

function standLine(newestAt: number | null, place: SecondPlace | null, when: (at: number) => string): string {
  if (newestAt === null) return say('No copy has been made yet.')
  const here = say('Last good copy: {newestAt}, on this computer', { newestAt: when(newestAt) })
  if (place === null) return say('{here} only.', { here })
  if (place.newestAt === null) return say('{here}; none in {path} yet.', { here, path: place.path })
  return place.newestAt >= newestAt
    ? say('{here} and in {path}.', { here, path: place.path })
    : say('{here}; in {path}: {newestAt}.', { here, path: place.path, newestAt: when(place.newestAt) })
}

/** "today at 09:40", "Mon 13 April at 17:00", with its year where that is another. */
export function momentWords(at: number, { nowAt, zone }: Pick<CopiesMade, 'nowAt' | 'zone'>): string {
  const [date, today] = [dateOf(at, zone), dateOf(nowAt, zone)]
  const time = clockWords(at, zone)
  return date === today
    ? say('today at {time}', { time })
    : say('{date} at {time}', { date: weekdayDate(date, today), time })
}
