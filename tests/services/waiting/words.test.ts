import { expect, test } from 'vitest'
import type { Floor } from '../../../main/services/floor/floor.ts'
import { goneWords, placeWords } from '../../../main/services/waiting/words.ts'

const at = (iso: string) => Temporal.Instant.from(iso).epochMilliseconds / 60_000
const floor = {
  zone: 'America/New_York',
  nowAt: at('2026-04-15T14:00Z'),
  shop: { name: 'Ashdown Paint Care' },
} as object as Floor
const entry = (plate: string) =>
  ({
    customer: { name: 'Ines Vale' },
    vehicle: { plate, colour: 'grey', make: 'Marlo' },
  }) as object as Parameters<typeof placeWords>[1]
const place = { dropOffAt: at('2026-04-17T12:00Z'), handoverAt: at('2026-04-20T21:30Z') }

test('who waits is told of the place by the shop’s own clock, in its name', () => {
  const lines = placeWords(floor, entry('KFR 204'), place).split('\n')
  expect(lines[0]).toBe('Dear Ines Vale,')
  expect(lines[2]).toMatch(/for your KFR 204: bring it .*17 April.*08:00.*goes home .*20 April.*17:30/)
  expect(lines.at(-1)).toBe('Ashdown Paint Care')
})

test('a car without a plate is called by its colour and make, also where another was faster', () => {
  expect(placeWords(floor, entry(''), place)).toContain('for your grey Marlo:')
  expect(goneWords(entry(''))).toMatch(
    /^Dear Ines Vale,\n\nthe place we offered you for your grey Marlo has gone/,
  )
})
