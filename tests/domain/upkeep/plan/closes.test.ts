import { describe, expect, it } from 'vitest'
import { visitAnswered } from '../../../../main/domain/upkeep/plan/closes.ts'
import { zone } from './arbitraries.ts'
import { yearly } from './samples.ts'

describe('which visit one done answers', () => {
  it.each([
    ['2027-03-20', null],
    ['2027-03-21', '2027-04-20'],
    ['2027-12-31', '2027-04-20'],
    ['2028-03-21', '2028-04-20'],
  ])('by dates, one done on %s answers %s', (doneOn, dueOn) => {
    expect(visitAnswered(yearly, [], doneOn, zone)).toBe(dueOn)
  })

  it('goes by the day agreed where it was moved', () => {
    const moved = [{ what: 'moved', dueOn: '2027-04-20', to: '2027-06-30' }] as const
    expect(visitAnswered(yearly, moved, '2027-05-15', zone)).toBeNull()
    expect(visitAnswered(yearly, moved, '2027-06-01', zone)).toBe('2027-04-20')
  })
})
