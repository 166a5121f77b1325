import { beforeEach, expect, it } from 'vitest'
import { saveWasteRule, wasteRules } from '../../../main/services/shelf/wasteRules.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'

let desk: TestDesk

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
})

it('stand empty beside their caution until the shop writes one, and two windows never overwrite each other', async () => {
  expect((await wasteRules(desk)).map(({ stream, rule, version }) => [stream, rule, version])).toEqual([
    ['solventCloths', '', 0],
    ['uncuredResidue', '', 0],
    ['washWater', '', 0],
  ])
  const rule = 'Red can by bay 2, emptied on Fridays.'
  await saveWasteRule(desk, { stream: 'solventCloths', version: 0, rule: ` ${rule} ` })
  const save = (version: number) => saveWasteRule(desk, { stream: 'solventCloths', version, rule: '' })
  await expect(save(0)).rejects.toMatchObject({ code: 'stale' })
  expect((await wasteRules(desk))[0]).toMatchObject({ rule, version: 1 })
  expect(await desk.store.read.auditLine.findFirst({ where: { entity: 'waste rule' } })).toMatchObject({
    act: 'changed',
    detail: { rule: [null, rule] },
  })
  await save(1)
  expect((await wasteRules(desk))[0]).toMatchObject({ rule: '', version: 2 })
})
