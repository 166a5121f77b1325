import { expect, it } from 'vitest'
import { refuse } from '../../../main/domain/refusal.ts'
import { asField } from '../../../main/services/shelf/asField.ts'

const refused = (field: string) => () => refuse('bad', { [field]: 1 }, 'No.')

it('names a refusal by the field that was sent', async () => {
  await expect(asField('', refused('needCenti'))).rejects.toMatchObject({ field: 'amount', message: 'No.' })
  await expect(asField('draws.2', refused('why'))).rejects.toMatchObject({ field: 'draws.2.reason' })
  await expect(asField('', refused('expiresOn'))).rejects.toMatchObject({ field: 'expiresOn', code: 'bad' })
})

it('passes on what was done, and what is no refusal', async () => {
  await expect(asField('draws.0', () => 42)).resolves.toBe(42)
  const fault = new TypeError('broken')
  await expect(
    asField('draws.0', () => {
      throw fault
    }),
  ).rejects.toBe(fault)
})
