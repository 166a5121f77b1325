import { expect, test } from 'vitest'
import {
  callerFrom,
  carCall,
  emptyCall,
  keepCall,
  keptCall,
  lanesOf,
  missingOf,
  rushCall,
} from '../../../../app/screens/book/call.ts'
import type { OffersView } from '../../../../main/api/views.ts'

function memory() {
  const kept = new Map<string, string>()
  return {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
    kept,
  }
}

test('a call is found again as it was left, and is yesterday’s after twelve hours', () => {
  const store = memory()
  const call = { ...emptyCall, customerName: 'Wren', isNew: true }
  keepCall(store, call, 1000)
  expect(keptCall(store, 1000 + 12 * 60 - 1)).toEqual(call)
  expect(keptCall(store, 1000 + 12 * 60)).toBe(emptyCall)
})

test('a call that is over leaves nothing behind, and what cannot be read is no call', () => {
  const store = memory()
  keepCall(store, { ...emptyCall, phone: '1' }, 0)
  keepCall(store, emptyCall, 1)
  expect(store.kept.size).toBe(0)
  store.setItem('lustrum.call', '{half')
  expect(keptCall(store, 1)).toBe(emptyCall)
})

test.each([
  ['Wren Calloway', 'customerName'],
  ['(212) 555-0188', 'phone'],
  ['+49 30 1234567', 'phone'],
  ['WRC 204', 'plate'],
  ['B-AB 1234', 'plate'],
  ['wren@example.com', 'email'],
] as const)('%s fills the field it belongs in', (text, field) => {
  expect(callerFrom(text)).toMatchObject({ isNew: true, [field]: text })
  expect(Object.values(callerFrom(text)).filter(value => value === text)).toHaveLength(1)
})

test('a car is named by its plate, or by make or colour until there is one', () => {
  const caller = { ...emptyCall, customerName: 'Wren' }
  expect(missingOf(emptyCall)).toBe('Whose car is it?')
  expect(missingOf(caller)).toMatch(/^Which car/)
  expect(missingOf({ ...caller, colour: 'sand' })).toBeNull()
  expect(missingOf({ ...caller, plate: 'W 1' })).toBeNull()
})

test('the same place under two names is one lane; what waits for goods has a lane of its own', () => {
  const offer = (at: number, more = {}) => ({
    feasible: true,
    plan: { steps: [], handover: at },
    ifHere: null,
    ...more,
  })
  const ifHere = { words: 'If it comes', offer: offer(5) }
  const offers = {
    soonest: offer(10, { ifHere }),
    leastBlocked: offer(20),
    askedDay: offer(10),
  } as unknown as OffersView
  const lanes = lanesOf(offers, kind => kind)
  expect(lanes.map(({ key, names, ifHere }) => [key, names, ifHere])).toEqual([
    ['soonest', ['soonest', 'askedDay'], null],
    ['leastBlocked', ['leastBlocked'], null],
    ['soonestIfHere', ['soonest'], 'If it comes'],
  ])
  const none = { ...offers, leastBlocked: { feasible: false, reasons: [] } } as unknown as OffersView
  expect(lanesOf(none, kind => kind).map(lane => lane.key)).toEqual(['soonest', 'soonestIfHere'])
})

test('a rush car fills in what was supposed of it, and takes nothing from the caller who is being typed in', () => {
  const rush = { treatmentIds: ['wash'], sizeClass: 'large', homeBy: '2026-04-16' } as const
  const caller = { ...emptyCall, customerName: 'Wren', isNew: true }
  expect(rushCall(caller, rush)).toEqual({
    ...caller,
    treatmentIds: ['wash'],
    sizeClass: 'large',
    wish: 'homeBy',
    wishedOn: '2026-04-16',
  })
  const onFile = { ...emptyCall, vehicleId: 'v', customerId: 'c', sizeClass: 'small' as const }
  expect(rushCall(onFile, rush)).toMatchObject({ sizeClass: 'small', treatmentIds: ['wash'] })
  const held = { ...emptyCall, heldJobId: 'j' }
  expect(rushCall(held, rush)).toBe(held)
})

test('a call about a car on file begins with it and its day, and never over a place that is held', () => {
  const caller = { customerId: 'c', customerName: 'Ines Vale', vehicleId: 'v', plate: 'KFS 204' }
  const typed = { ...emptyCall, customerName: 'somebody', treatmentIds: ['wash'] }
  expect(carCall(typed, caller, '2026-05-22')).toEqual({
    ...emptyCall,
    ...caller,
    wish: 'day',
    wishedOn: '2026-05-22',
  })
  expect(carCall(typed, caller, null)).toMatchObject({ wish: 'any', wishedOn: null, treatmentIds: [] })
  const held = { ...typed, heldJobId: 'job' }
  expect(carCall(held, caller, null)).toBe(held)
})
