import { beforeEach, expect, test } from 'vitest'
import { history } from '../../../main/services/history/history.ts'
import { finishStep } from '../../../main/services/job/jobSteps.ts'
import { getJob } from '../../../main/services/job/jobView.ts'
import { noteJob } from '../../../main/services/job/note.ts'
import { closeOfDay } from '../../../main/services/shelf/closeOfDay.ts'
import { confirmPlanned } from '../../../main/services/shelf/confirmPlanned.ts'
import { lotRows } from '../../../main/store/lotRows.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { book, type ShelfShop, shelfShop, stock, workUntil } from './shelfShop.ts'

let desk: TestDesk
let shop: ShelfShop

beforeEach(async () => {
  desk = await makeDesk('2026-04-15T11:00:00Z')
  shop = await shelfShop(desk)
})

const onHandMl = async () =>
  (await lotRows(desk.store.read, [shop.coating])).reduce((sum, row) => sum + row.centi / 100, 0)

/** A job whose first layer, 30 ml by its recipe, is finished. */
async function firstLayerDone() {
  const booked = await book(desk, shop)
  const coat = await desk.store.read.jobStep.findFirstOrThrow({
    where: { jobId: booked.jobId, stage: 'coat', kind: 'work' },
    orderBy: { position: 'asc' },
  })
  const done = await workUntil(desk, booked, coat.position)
  return { ...done, position: coat.position }
}

test('Steps that used what their recipe says are confirmed in one act', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 1)
  const step = await firstLayerDone()
  const { stepsToConfirm } = await closeOfDay(desk)
  expect(stepsToConfirm).toMatchObject([{ position: step.position, plain: true }])
  expect(await confirmPlanned(desk, { steps: [step] })).toEqual({ confirmed: 1, left: 0 })
  expect(await onHandMl()).toBe(20)
  expect((await closeOfDay(desk)).stepsToConfirm).toEqual([])
})

test('A step that wants a look is named, and nothing of the others is confirmed', async () => {
  const step = await firstLayerDone()
  expect((await closeOfDay(desk)).stepsToConfirm).toMatchObject([{ plain: false }])
  await stock(desk, shop.coating, shop.sizes.coating, 1)
  const gone = { jobId: 'gone', position: 0, version: 1 }
  await expect(confirmPlanned(desk, { steps: [step, gone] })).rejects.toMatchObject({
    code: 'missing',
    field: 'steps.1.jobId',
  })
  expect(await onHandMl()).toBe(50)
  await expect(confirmPlanned(desk, { steps: [{ ...step, version: 1 }] })).rejects.toMatchObject({
    code: 'stale',
  })
  await confirmPlanned(desk, { steps: [step] })
  await expect(confirmPlanned(desk, { steps: [step] })).rejects.toMatchObject({
    code: 'wants-a-look',
    field: 'steps.0.position',
  })
})

test('Finishing a step and confirming what it drew is one act', async () => {
  await stock(desk, shop.coating, shop.sizes.coating, 1)
  const booked = await book(desk, shop)
  const steps = await desk.store.read.jobStep.findMany({
    where: { jobId: booked.jobId },
    orderBy: { position: 'asc' },
  })
  const coat = steps.find(step => step.stage === 'coat' && step.kind === 'work')!
  const uses = async () => (await getJob(desk, { id: booked.jobId })).steps[coat.position]!.uses
  await workUntil(desk, booked, coat.position, async version => {
    expect(await uses()).toEqual(['30 ml of Ovrel Two'])
    return finishStep(desk, { id: booked.jobId, version, position: coat.position, asPlanned: true })
  })
  expect(await onHandMl()).toBe(20)
  expect((await closeOfDay(desk)).stepsToConfirm).toEqual([])
  expect(await uses()).toEqual([])
})

test('A note is kept with who said it, and an empty one is refused', async () => {
  const { jobId } = await book(desk, shop)
  await noteJob(desk, { id: jobId, words: 'Owner asks for a call on Thursday' })
  const { lines } = await history(desk, { entities: ['job'], entityId: jobId })
  expect(lines[0]).toMatchObject({ words: 'noted: Owner asks for a call on Thursday', who: desk.who })
  await expect(noteJob(desk, { id: jobId, words: ' ' })).rejects.toMatchObject({ field: 'words' })
  await expect(noteJob(desk, { id: 'gone', words: 'x' })).rejects.toMatchObject({ code: 'missing' })
})
