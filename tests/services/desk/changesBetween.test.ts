import { expect, it } from 'vitest'
import { changesBetween } from '../../../main/services/desk/changesBetween.ts'

it('names what differs with both values, and nothing that was not sent', () => {
  expect(changesBetween({ name: 'Bay 1', note: 'wet', id: 'x' }, { name: 'Bay 2', note: 'wet' })).toEqual({
    name: ['Bay 1', 'Bay 2'],
  })
})

it('takes a field that lacks for one that is empty', () => {
  expect(changesBetween({}, { phone: null })).toEqual({})
  expect(changesBetween({}, { phone: '+12125550143' })).toEqual({ phone: [null, '+12125550143'] })
})

it('minds the order of a list, not that of keys', () => {
  expect(changesBetween({ hours: { from: 1, to: 2 } }, { hours: { to: 2, from: 1 } })).toEqual({})
  expect(changesBetween({ ids: ['a', 'b'] }, { ids: ['b', 'a'] })).toHaveProperty('ids')
})
