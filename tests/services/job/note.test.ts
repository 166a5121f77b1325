import { expect, test } from 'vitest'
import { noteJob } from '../../../main/services/job/note.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

test('A note is a line of the job’s history and changes nothing of the job', async () => {
  const desk = await makeDesk('2026-04-15T12:10:00Z')
  const { id } = await bookJob(desk, await testShop(desk), { treatments: ['wash'] })
  const before = await desk.store.read.job.findUniqueOrThrow({ where: { id } })
  await noteJob(desk, { id, words: '  asks for a call  ' })
  expect(await desk.store.read.job.findUniqueOrThrow({ where: { id } })).toEqual(before)
  const lines = await desk.store.read.auditLine.findMany({ where: { entityId: id, act: 'noted' } })
  expect(lines).toMatchObject([{ who: 'front desk', at: desk.now(), detail: { words: 'asks for a call' } }])
  await expect(noteJob(desk, { id, words: ' ' })).rejects.toMatchObject({ field: 'words' })
  await expect(noteJob(desk, { id, words: 'x'.repeat(401) })).rejects.toMatchObject({ field: 'words' })
  await expect(noteJob(desk, { id: 'none', words: 'x' })).rejects.toMatchObject({ code: 'missing' })
})
