import { expect, it } from 'vitest'
import { askFirst, listed } from '../../../main/services/desk/ask.ts'

const about = { field: 'id', lead: 'Still in use:' }

it('asks with the lines until the person has accepted, and never about nothing', () => {
  const ask = (lines: string[], accepted?: boolean) => () => askFirst('in-use', lines, { ...about, accepted })
  expect(ask(['Job 12'])).toThrow(
    expect.objectContaining({ code: 'in-use', field: 'id', message: 'Still in use:\nJob 12' }),
  )
  expect(ask(['Job 12'], true)).not.toThrow()
  expect(ask([])).not.toThrow()
})

it('lists twelve lines, and how many more there are', () => {
  const lines = Array.from({ length: 14 }, (_, i) => `Job ${i + 1}`)
  expect(listed('These:', lines).split('\n').slice(-2)).toEqual(['Job 12', 'and 2 more'])
  expect(listed('These:', lines.slice(0, 12)).split('\n').at(-1)).toBe('Job 12')
})
