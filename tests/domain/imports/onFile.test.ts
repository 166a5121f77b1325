import { expect, it } from 'vitest'
import { CarsOnFile, PeopleOnFile } from '../../../main/domain/imports/index.ts'

const oda = { id: 'a', name: 'Oda Brandt', phone: '+12125550131', email: null }
const wim = { id: 'b', name: 'Wim Alder', phone: null, email: null }

it('answers about people stand until somebody of a name that was asked about comes, goes or changes', () => {
  const people = new PeopleOnFile([oda, wim])
  expect(people.named('brandt, ODA')).toEqual([oda])
  expect(people.named('Ines Vale')).toEqual([])
  // What the list itself adds is no change of what is on file.
  people.add({ id: 'c', name: 'Ines Vale', phone: null, email: null })
  expect(people.stands([wim, { ...oda }])).toBe(true)
  expect(people.stands([oda])).toBe(true)
  expect(people.stands([oda, wim, { ...wim, id: 'd', name: 'Leila Okoro' }])).toBe(true)
  expect(people.stands([wim])).toBe(false)
  expect(people.stands([{ ...oda, phone: null }, wim])).toBe(false)
  expect(people.stands([{ ...oda, id: 'e' }, wim])).toBe(false)
  expect(people.stands([oda, wim, { ...wim, id: 'd', name: 'Vale Ines' }])).toBe(false)
})

it('answers about cars stand until one of a plate or VIN that was asked about comes, goes or changes', () => {
  const car = { id: 'a', plate: 'QLM 301', vin: '1M8GDM9AXKP042788', customerId: 'x' }
  const other = { id: 'b', plate: 'QLM 302', vin: null, customerId: 'x' }
  const cars = new CarsOnFile([car, other])
  expect(cars.find('qlm-301', null)).toBe(car)
  expect(cars.find('', '11111111111111111')).toBeUndefined()
  expect(cars.stands([car, other])).toBe(true)
  expect(cars.stands([car])).toBe(true)
  expect(cars.stands([car, { ...other, plate: '' }])).toBe(true)
  expect(cars.stands([car, { ...other, plate: 'QLM301' }])).toBe(false)
  expect(cars.stands([{ ...car, customerId: 'y' }, other])).toBe(false)
  expect(cars.stands([car, other, { ...other, id: 'c', plate: '', vin: '11111111111111111' }])).toBe(false)
})
