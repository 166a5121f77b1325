import { describe, expect, test } from 'vitest'
import { neighbour, nudge, otherBay } from '../../../../../app/screens/board/move/steps.ts'
import { at, board, stay } from '../sampleBoard.ts'

describe('moving by keys', () => {
  const view = board([])

  test('goes by the grid inside opening hours', () => {
    expect(nudge(view, { bayId: 'a', startAt: at(0, 9) }, 15).startAt).toBe(at(0, 9.25))
    expect(nudge(view, { bayId: 'a', startAt: at(0, 9) }, -60).startAt).toBe(at(0, 8))
  })

  test('leaps over the night, both ways', () => {
    const last = { bayId: 'a', startAt: at(0, 17.75) }
    const first = { bayId: 'a', startAt: at(1, 8) }
    expect(nudge(view, last, 15)).toEqual(first)
    expect(nudge(view, first, -15)).toEqual(last)
  })

  test('stays put at the ends of what is shown', () => {
    const first = { bayId: 'a', startAt: at(0, 8) }
    const last = { bayId: 'a', startAt: at(2, 17.75) }
    expect(nudge(view, first, -15)).toEqual(first)
    expect(nudge(view, last, 15)).toEqual(last)
  })

  test('changes the bay, and not beyond the first and last', () => {
    const place = { bayId: 'a', startAt: at(0, 9) }
    expect(otherBay(view, place, 1).bayId).toBe('b')
    expect(otherBay(view, place, -1).bayId).toBe('a')
  })
})

describe('looking by arrows', () => {
  const early = stay('early', 'a', at(0, 8), at(0, 10))
  const noon = stay('noon', 'a', at(0, 12), at(0, 14))
  const below = stay('below', 'c', at(0, 13), at(0, 15))
  const view = board([noon, below, early])

  test('runs along the bay in time', () => {
    expect(neighbour(view, early, 'right')).toBe(noon)
    expect(neighbour(view, noon, 'left')).toBe(early)
    expect(neighbour(view, noon, 'right')).toBe(noon)
  })

  test('skips an empty bay and takes the nearest in time', () => {
    expect(neighbour(view, early, 'down')).toBe(below)
    expect(neighbour(view, below, 'up')).toBe(noon)
  })
})
