import { describe, expect, it } from 'vitest'
import { copiesStand } from '../../../main/domain/backup/index.ts'
import type { CopiesMade } from '../../../main/domain/backup/standing.ts'
import { minuteOf } from '../../../main/domain/calendar/index.ts'

const at = (iso: string) => minuteOf(Temporal.Instant.from(iso))
const nowAt = at('2026-04-15T12:30:00Z')

const stand = (over: Partial<CopiesMade>) =>
  copiesStand({
    nowAt,
    zone: 'America/New_York',
    oldestAt: nowAt - 30,
    newestAt: nowAt - 30,
    problem: null,
    place: null,
    lastSavedAt: nowAt,
    ...over,
  })
const words = (over: Partial<CopiesMade>) => stand(over).warnings.map(warning => warning.words)

describe('how the copies stand', () => {
  it('is one line: when, and where', () => {
    const path = 'E:\\Copies'
    const inPlace = (newestAt: number | null) => stand({ place: { path, newestAt, problem: null } }).line
    expect(stand({}).line).toBe('Last good copy: today at 08:00, on this computer only.')
    expect(stand({ newestAt: null }).line).toBe('No copy has been made yet.')
    expect(inPlace(nowAt - 30)).toBe('Last good copy: today at 08:00, on this computer and in E:\\Copies.')
    expect(inPlace(null)).toBe('Last good copy: today at 08:00, on this computer; none in E:\\Copies yet.')
    expect(inPlace(nowAt - 60 * 24)).toBe(
      'Last good copy: today at 08:00, on this computer; in E:\\Copies: Tue 14 April at 08:30.',
    )
  })

  it('is quiet while all is well, and in a new shop', () => {
    expect(words({})).toEqual([])
    expect(words({ oldestAt: null, newestAt: null })).toEqual([])
    expect(words({ place: { path: '/mnt/disk', newestAt: nowAt - 30, problem: null } })).toEqual([])
  })

  it('warns of a copy older than a day, not of one just a day old', () => {
    expect(words({ newestAt: nowAt - 1440 })).toEqual([])
    expect(words({ newestAt: nowAt - 1441, problem: 'The disk is full.' })).toEqual([
      'The last good copy is more than a day old: Tue 14 April at 08:29. The disk is full.',
    ])
  })

  it('says why there is none, and why the last one failed', () => {
    const problem = 'The disk is full.'
    expect(words({ oldestAt: null, newestAt: null, problem })).toEqual([
      "There is no copy of this shop's data. The disk is full.",
    ])
    expect(words({ problem })).toEqual([problem])
  })

  it('warns of a second place that is full or missing, left behind, or not named for a week', () => {
    const path = '/mnt/disk'
    const problem = 'The second place /mnt/disk is not there.'
    expect(words({ place: { path, newestAt: null, problem } })).toEqual([problem])
    const behind = ['The newest copy in /mnt/disk is more than a day older than the one here.']
    expect(words({ place: { path, newestAt: nowAt - 30 - 1441, problem: null } })).toEqual(behind)
    expect(words({ place: { path, newestAt: null, problem: null } })).toEqual(behind)
    expect(words({ oldestAt: nowAt - 7 * 1440 })).toEqual([])
    expect(words({ oldestAt: nowAt - 7 * 1440 - 1 })).toEqual([
      'All copies lie on this computer: name a second place for them in the settings, under Backups.',
    ])
  })

  it('warns of a clock that was set back, not of a minute or two', () => {
    expect(words({ lastSavedAt: nowAt + 10 })).toEqual([])
    expect(words({ lastSavedAt: nowAt + 1440 })).toEqual([
      "This computer's clock shows today at 08:30, but something was saved at Thu 16 April at 08:30: set the clock right, or times and reminders will be wrong.",
    ])
  })
})
