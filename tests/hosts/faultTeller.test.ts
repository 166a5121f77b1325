import { dirname } from 'node:path'
import { expect, it, vi } from 'vitest'
import { createApp } from '../../main/api/app.ts'
import { faultTeller } from '../../main/hosts/faultTeller.ts'
import { keptFaults } from '../../main/store/faultLog.ts'
import { makeApi } from '../api/makeApi.ts'

it('puts a fault of the app to the log without its words, and to the console with them', async () => {
  const api = await makeApi()
  const told = vi.spyOn(console, 'error').mockReturnValue()
  const { store } = api.desk
  const broken = {
    ...api.desk,
    now: () => {
      throw new TypeError('Ansel Mirrow, +1 202 555 0110')
    },
  }
  const app = createApp({ desk: broken, rendererDir: api.rendererDir, onFault: faultTeller(api.desk) })
  const answer = await app.request('/trpc/system.now')
  const [fault] = keptFaults(dirname(store.source.file), 2)
  await api.close()
  expect(answer.status).toBe(500)
  expect(await answer.text()).not.toMatch(/Ansel|202/)
  expect(fault).toMatchObject({ at: api.desk.now(), asked: 'system.now' })
  expect(fault!.kind).toMatch(/TypeError$/)
  expect(JSON.stringify(fault)).not.toMatch(/Ansel|202 555/)
  expect(String(told.mock.calls[0]?.[0].cause)).toContain('Ansel Mirrow')
})
