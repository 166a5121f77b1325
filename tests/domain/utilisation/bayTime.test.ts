import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type BayVisit, bayTime } from '../../../main/domain/utilisation/index.ts'

const day = { fromAt: 0, toAt: 1440, open: [{ from: 480, to: 1080 }], closed: [] }

test('a wash, a coat and its cure over night, by hand', () => {
  // 08:00 to 09:00 worked, 09:00 to 10:00 waited, 16:00 to 18:00 worked, cured until midnight.
  const visits: BayVisit[] = [
    { from: 480, to: 600, work: [{ from: 480, to: 540 }], holds: [] },
    { from: 960, to: 1500, work: [{ from: 960, to: 1080 }], holds: [{ from: 1080, to: 1500 }] },
  ]
  expect(bayTime(day, visits)).toEqual({ handsOnMin: 180, blockedMin: 60, idleMin: 360, freeCureMin: 360 })
})

test('a closed bay is neither open nor empty', () => {
  expect(bayTime({ ...day, closed: [{ from: 0, to: 780 }] }, [])).toMatchObject({ idleMin: 300 })
})

/** The same minute by minute. */
function counted(
  { fromAt, toAt, open, closed }: typeof day & { closed: { from: number; to: number }[] },
  visits: BayVisit[],
) {
  const used = { handsOnMin: 0, blockedMin: 0, idleMin: 0, freeCureMin: 0 }
  const inside = (spans: readonly { from: number; to: number }[], t: number) =>
    spans.some(({ from, to }) => from <= t && t < to)
  for (let t = fromAt; t < toAt; t++) {
    const here = visits.filter(({ from, to }) => from <= t && t < to)
    if (!inside(open, t)) {
      if (here.some(visit => inside(visit.holds, t))) used.freeCureMin++
    } else if (inside(closed, t)) continue
    else if (here.some(visit => inside(visit.work, t))) used.handsOnMin++
    else if (here.length > 0) used.blockedMin++
    else used.idleMin++
  }
  return used
}

test('it is what counting minute by minute gives', () => {
  const span = fc
    .tuple(fc.nat(120), fc.integer({ min: 1, max: 60 }))
    .map(([from, length]) => ({ from, to: from + length }))
  const spans = fc.array(span, { maxLength: 3 })
  const visit = fc.tuple(span, spans, spans).map(([stay, work, holds]) => ({ ...stay, work, holds }))
  fc.assert(
    fc.property(spans, spans, fc.array(visit, { maxLength: 4 }), (open, closed, visits) => {
      const week = { fromAt: 10, toAt: 150, open, closed }
      expect(bayTime(week, visits)).toEqual(counted(week as never, visits))
    }),
  )
})
