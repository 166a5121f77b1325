import { expect, it } from 'vitest'
import { checkIntake, type SignedIntake, typedSignature } from '../../../main/domain/intake/checkIntake.ts'

const good: SignedIntake = {
  odometer: 0,
  keys: 0,
  damageAgreed: true,
  ownerName: 'Ines Vale',
  signature: 'M1 1L2 2L3 3L4 4',
}

it('lets through what was looked at together', () => expect(() => checkIntake(good)).not.toThrow())

it('lets a typed name stand for a signature, but not without the name', () => {
  expect(() => checkIntake({ ...good, signature: typedSignature })).not.toThrow()
  expect(() => checkIntake({ ...good, signature: typedSignature, ownerName: '' })).toThrow(
    expect.objectContaining({ field: 'ownerName' }),
  )
})

it.each<[string, Partial<SignedIntake>]>([
  ['draft.odometer', { odometer: null }],
  ['draft.keys', { keys: null }],
  ['draft.damageAgreed', { damageAgreed: false }],
  ['ownerName', { ownerName: ' ' }],
  ['signature', { signature: '' }],
  ['signature', { signature: 'M1 1L1 1' }],
])('refuses one without %s', (field, part) => {
  expect(() => checkIntake({ ...good, ...part })).toThrow(expect.objectContaining({ field }))
})
