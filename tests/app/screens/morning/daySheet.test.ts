import { expect, test } from 'vitest'
import { bayRows, crewRows, drawnSpan } from '../../../../app/screens/morning/daySheet.ts'
import type { MorningView } from '../../../../main/api/views.ts'

const block = (kind: string, fromAt: number, toAt: number, more = {}) => ({
  kind,
  fromAt,
  toAt,
  name: kind,
  crew: [],
  productId: null,
  cure: null,
  ...more,
})
const car = (blocks: object[], leaves = false) => ({
  jobId: 'j',
  plate: 'KFS 204',
  fromAt: 0,
  toAt: 900,
  leaves,
  blocks,
})
const sheet = (cars: object[]) =>
  ({ bays: [{ id: 'b', name: 'Bay 1', closures: [], cars }], crew: [] }) as unknown as MorningView
const barOf = (blocks: object[], leaves?: boolean) => bayRows(sheet([car(blocks, leaves)]))[0]!.bars[0]!

test('a wait under half an hour is not drawn, one of half an hour is', () => {
  const kinds = (wait: number) =>
    barOf([block('work', 0, 60), block('wait', 60, 60 + wait)]).parts.map(part => part.kind)
  expect(kinds(29)).toEqual(['work'])
  expect(kinds(30)).toEqual(['work', 'wait'])
})

test('a bar names its longest work and who does any of it', () => {
  const blocks = [
    block('work', 0, 10, { name: 'Wash', crew: ['Sal'] }),
    block('work', 10, 90, { name: 'Polish', crew: ['Jo'] }),
  ]
  expect(barOf(blocks).words).toBe('Polish · Sal · Jo')
})

test('a car nobody works on cures or waits, and says that it goes home', () => {
  const cure = block('hold', 0, 60, { cure: { coatEndAt: -30 }, productId: 'p' })
  expect(barOf([cure], true).words).toBe('cures · goes home')
  expect(barOf([cure]).parts).toEqual([{ kind: 'cure', fromAt: 0, toAt: 60, productId: 'p', coatEndAt: -30 }])
  expect(barOf([block('wait', 0, 60)]).words).toBe('waits')
})

test('by person, a step says where it is and with whom, and a helper that they help', () => {
  const steps = [
    {
      jobId: 'j',
      position: 2,
      plate: 'KFS 204',
      name: 'Polish',
      bayName: 'Bay 2',
      fromAt: 0,
      toAt: 9,
      with: ['Jo'],
      helps: true,
    },
  ]
  const crew = [{ id: 'p', name: 'Mika', present: [], steps }]
  const [row] = crewRows({ bays: [], crew } as unknown as MorningView)
  expect([row!.about, row!.bars[0]!.words]).toEqual(['away today', 'helps: Polish · Bay 2 · with Jo'])
})

test('a closed day is drawn over the usual hours', () => {
  expect(
    drawnSpan({
      open: [
        { from: 500, to: 600 },
        { from: 700, to: 900 },
      ],
      fromAt: 0,
    }),
  ).toEqual({ from: 500, to: 900 })
  expect(drawnSpan({ open: [], fromAt: 1000 })).toEqual({ from: 1480, to: 2080 })
})
