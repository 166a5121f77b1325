import { expect, it } from 'vitest'
import { momentsOf } from '../../../main/services/morning/morningMoments.ts'

type Cure = Parameters<typeof momentsOf>[1][number]
type Day = Parameters<typeof momentsOf>[0]

const day = { fromAt: 0, toAt: 1440 } as Day
const marks = {
  coatEndAt: 60,
  tackFreeAt: 120,
  recoatOpensAt: 180,
  recoatClosesAt: 300,
  topperAt: 240,
  topperClosesAt: 2_000,
  clock: null,
} as Cure['marks']
const cure = (change: Partial<Cure>) =>
  ({
    plate: 'KFR 204',
    productName: 'Ovrel Two',
    marks,
    touchAt: 120,
    driveAt: 600,
    advisedAt: 900,
    ...change,
  }) as Cure
const said = (change: Partial<Cure>) => momentsOf(day, [cure(change)]).map(({ at, what }) => `${at} ${what}`)

it('lets the last coat’s car go, and an earlier one be laid over', () => {
  expect(said({ next: null })).toEqual([
    '120 ▲ safe to touch',
    '600 ● earliest pick-up',
    '900 ○ recommended pick-up',
  ])
  expect(said({ next: null, driveAt: 900 })).toEqual(['120 ▲ safe to touch', '900 ○ recommended pick-up'])
  expect(said({ next: 'layer' })).toEqual([
    '120 ▲ safe to touch',
    '180 next layer may go on',
    '300 next layer at the latest',
  ])
})

it('leaves out what falls on another day', () => {
  expect(said({ next: 'topper' })).toEqual(['120 ▲ safe to touch', '240 ◆ topper may go on'])
  expect(said({ next: null, touchAt: 1440, driveAt: 1441, advisedAt: 1500 })).toEqual([])
})

it('puts the moments of all cars in one order', () => {
  const both = momentsOf(day, [cure({ next: null, touchAt: 700 }), cure({ next: null, touchAt: 650 })])
  expect(both.map(({ at }) => at)).toEqual([600, 600, 650, 700, 900, 900])
})
