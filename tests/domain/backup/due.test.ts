import { describe, expect, it } from 'vitest'
import { copyIsDue, drillIsDue } from '../../../main/domain/backup/index.ts'

const nowAt = 29_604_270
const day = 24 * 60

describe('when a copy is due', () => {
  it.each([
    ['none was made', [], true],
    ['the last is 59 minutes old', [nowAt - 300, nowAt - 59], false],
    ['the last is an hour old', [nowAt - 60], true],
    ['the clock was set back past the last', [nowAt - 120, nowAt + 1], true],
    ['one was made this minute', [nowAt], false],
  ])('%s: %s is %s', (_, list, due) => {
    expect(copyIsDue(list, nowAt)).toBe(due)
  })
})

describe('when a copy is tried', () => {
  it.each([
    ['none was tried, and the oldest is a day old', null, nowAt - day, true],
    ['none was tried, and the oldest is younger', null, nowAt - day + 1, false],
    ['the last try was thirty days ago', nowAt - 30 * day, nowAt - 40 * day, true],
    ['the last try was less than thirty days ago', nowAt - 30 * day + 1, nowAt - 40 * day, false],
    ['the clock was set back past the last try', nowAt + 1, nowAt - day, true],
  ])('%s', (_, triedAt, oldestAt, due) => {
    expect(drillIsDue(triedAt, oldestAt, nowAt)).toBe(due)
  })
})
