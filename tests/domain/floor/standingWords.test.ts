import { expect, test } from 'vitest'
import { isAmiss, type Standing, standingWords } from '../../../main/domain/floor/standingWords.ts'

const said = (standing: Partial<Standing>) =>
  standingWords(
    { standing: 'kept', lateMin: 0, lack: null, unfetchedAt: null, promisedAt: 900, ...standing },
    at => `at ${at}`,
  )

test('Each standing is said in one line, with its time', () => {
  expect(said({})).toBe('✓ on time for at 900')
  expect(said({ standing: 'none' })).toBe('only held, nothing promised yet')
  expect(said({ standing: 'late', lateMin: 45 })).toBe('⚑ running late, 45 min')
  expect(said({ standing: 'late', lateMin: 45, lack: 'its bay is closed' })).toBe(
    '⚑ running late, 45 min; its bay is closed',
  )
  expect(said({ standing: 'lacking', lack: 'somebody is missing' })).toBe('⚑ somebody is missing')
  expect(said({ standing: 'unfetched', unfetchedAt: 700 })).toBe('⚑ ready since at 700, not fetched')
})

test('Only a promise that is kept, or none at all, is nothing amiss', () => {
  const all = ['kept', 'none', 'late', 'lacking', 'unfetched'] as const
  expect(all.filter(standing => isAmiss({ standing }))).toEqual(['late', 'lacking', 'unfetched'])
})
