import { expect, it } from 'vitest'
import { atWall } from '../../../main/domain/calendar/index.ts'
import { visitInTheWay } from '../../../main/services/floor/vehicleFree.ts'

const zone = 'America/New_York'
const at = (hour: number) => atWall('2026-04-15', hour * 60, zone)
const shop = { zone, nowAt: at(8), bayNames: new Map(), crewNames: new Map(), jobNames: new Map() }
const visit = { jobId: 'other', number: 12, plate: 'KFR 204', dropOffAt: at(10), handoverAt: at(14) }
const here = (from: number, to: number, plate = visit.plate) =>
  visitInTheWay(shop, [{ ...visit, plate }], { dropOffAt: at(from), handoverAt: at(to) })

it('lets a car come when it has just gone, and go when it just comes', () => {
  expect(here(14, 16)).toBeNull()
  expect(here(8, 10)).toBeNull()
})

it('says for which job the car is here already, and until when', () => {
  expect(here(13, 16)).toBe('KFR 204 is here for job 12 already, 10:00 to 14:00')
  expect(here(9, 11, '')).toBe('this vehicle is here for job 12 already, 10:00 to 14:00')
})
