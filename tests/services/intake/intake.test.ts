import { beforeEach, expect, test } from 'vitest'
import {
  correctIntake,
  getIntake,
  pasteThickness,
  saveAfter,
  saveIntake,
  signIntake,
} from '../../../main/services/intake/intake.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { filledIntake, type IntakeDesk, intakeDesk, signature } from './intakeDesk.ts'

let it: IntakeDesk
beforeEach(async () => {
  it = await intakeDesk()
})

const get = () => getIntake(it.desk, { jobId: it.jobId })
const defect = {
  id: 'd1',
  panel: 'Bonnet',
  kind: 'chip',
  severity: 'light',
  x: 210,
  y: 280,
  note: 'stone',
  photoIds: [],
} as const

test('A new intake knows the car, its finish panel by panel, and the unit of its dial', async () => {
  const view = await get()
  expect(view).toMatchObject({
    version: 0,
    entries: [],
    open: true,
    draft: { odometerUnit: 'mi', damageAgreed: false },
  })
  expect(view.facts).toMatchObject({
    plate: 'KFR 204',
    customerName: 'Ines Vale',
    vehicleWords: 'grey Marlo Wendrel',
  })
  expect(view.facts.finishes).toContainEqual({ panel: 'Roof', finish: 'gloss' })
  expect(view.cautions.join(' ')).toContain('Tape edges')
  await expect(getIntake(it.desk, { jobId: 'none' })).rejects.toMatchObject({
    code: 'missing',
    field: 'jobId',
  })
})

test('A panel with a finish of its own is told by it, the others by the car’s', async () => {
  const { vehicleId } = await it.desk.store.read.job.findUniqueOrThrow({ where: { id: it.jobId } })
  await it.desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.vehicle.update({
      where: { id: vehicleId },
      data: { panels: [{ panel: 'Roof', finish: 'film', since: null }] },
    }),
  )
  const { finishes } = (await get()).facts
  expect(finishes.filter(({ finish }) => finish !== 'gloss')).toEqual([{ panel: 'Roof', finish: 'film' }])
  expect(finishes).toHaveLength(11)
})

test('Is kept as often as wanted, and never over what somebody else saved meanwhile', async () => {
  const draft = await filledIntake(it, { defects: [{ ...defect, photoIds: [] }] })
  expect(await saveIntake(it.desk, { jobId: it.jobId, version: 0, draft })).toEqual({ version: 1 })
  await expect(saveIntake(it.desk, { jobId: it.jobId, version: 0, draft })).rejects.toMatchObject({
    code: 'stale',
  })
  expect(
    await saveIntake(it.desk, { jobId: it.jobId, version: 1, draft: { ...draft, note: 'two scratches' } }),
  ).toEqual({ version: 2 })
  expect(await get()).toMatchObject({
    version: 2,
    draft: { note: 'two scratches', defects: [defect], keys: 2 },
  })
})

test('Is signed with the name and the hand of the owner, and not a line is changed afterwards', async () => {
  const { desk, jobId } = it
  const draft = await filledIntake(it)
  const input = { jobId, version: 0, draft, ownerName: ' Ines Vale ', signature }
  await expect(signIntake(desk, { ...input, signature: 'M1 1' })).rejects.toMatchObject({
    field: 'signature',
  })
  await expect(signIntake(desk, { ...input, draft: { ...draft, keys: null } })).rejects.toMatchObject({
    field: 'draft.keys',
  })
  await signIntake(desk, input)
  const { entries } = await get()
  expect(entries).toMatchObject([
    { number: 1, ownerName: 'Ines Vale', signature, signedAt: desk.now(), corrects: null },
  ])
  await expect(saveIntake(desk, { jobId, version: 1, draft })).rejects.toMatchObject({ code: 'signed' })
  await expect(signIntake(desk, { ...input, version: 1 })).rejects.toMatchObject({ code: 'signed' })
  const stamp = { who: 'test', at: desk.now() }
  for (const meddle of [
    () => desk.store.transact(stamp, tx => tx.intakeEntry.updateMany({ data: { content: {} } })),
    () => desk.store.transact(stamp, tx => tx.intakeEntry.updateMany({ data: { signature: '' } })),
    () => desk.store.transact(stamp, tx => tx.intakeEntry.deleteMany()),
    () => desk.store.transact(stamp, tx => tx.intake.updateMany({ data: { draft: {} } })),
  ])
    await expect(meddle()).rejects.toThrow()
  const row = await desk.store.read.vehicle.findUniqueOrThrow({ where: { id: it.shop.vehicles[0]! } })
  await saveVehicle(desk, {
    ...row,
    paint: 'unknown',
    sizeClass: 'medium',
    finish: 'matte',
    panels: [],
    plate: 'NEW 100',
  })
  expect((await get()).entries).toEqual(entries)
})

test('A correction is a page of its own, with its reason and a signature', async () => {
  const { desk, jobId } = it
  const draft = await filledIntake(it)
  await signIntake(desk, { jobId, version: 0, draft, ownerName: 'Ines Vale', signature })
  const first = (await get()).entries[0]!
  const input = {
    jobId,
    correctsId: first.id,
    draft: { ...draft, keys: 1 },
    ownerName: 'Ines Vale',
    signature,
  }
  await expect(correctIntake(desk, { ...input, reason: ' ' })).rejects.toMatchObject({ field: 'reason' })
  await expect(correctIntake(desk, { ...input, correctsId: 'none', reason: 'x' })).rejects.toMatchObject({
    code: 'missing',
  })
  await correctIntake(desk, { ...input, reason: 'One key was the house’s' })
  const { entries, draft: last } = await get()
  expect(entries.map(({ number, corrects, reason }) => [number, corrects, reason])).toEqual([
    [1, null, ''],
    [2, 1, 'One key was the house’s'],
  ])
  expect(entries[0]).toEqual(first)
  expect(last.keys).toBe(1)
})

const set = (gu: number[], part = {}) => ({
  instrument: 'GM-1',
  tile: 'T-7',
  substrate: 'gloss' as const,
  geometryDeg: 20 as const,
  tileGu: 94.8,
  startGu: 94.8,
  endGu: 94.6,
  panels: [{ panel: 'Bonnet' as const, gu }],
  ...part,
})

test('Before and after stand side by side, at one angle, with what repeating a reading could make', async () => {
  const { desk, jobId } = it
  const draft = await filledIntake(it, {
    gauge: 'TG-3',
    gloss: [set([71, 72]), set([88], { geometryDeg: 60 })],
  })
  await signIntake(desk, { jobId, version: 0, draft, ownerName: 'Ines Vale', signature })
  // The same meter again: its serials are there, its tile has to be read anew.
  expect((await get()).after).toMatchObject({
    version: 0,
    content: { gauge: 'TG-3', gloss: [{ tile: 'T-7', startGu: null }, {}] },
  })
  const content = {
    gauge: 'TG-3',
    thickness: [{ panel: 'Bonnet' as const, spot: 1, um: 112 }],
    gloss: [set([84, 86])],
  }
  expect(await saveAfter(desk, { jobId, version: 0, content })).toEqual({ version: 1 })
  await expect(saveAfter(desk, { jobId, version: 0, content })).rejects.toMatchObject({ code: 'stale' })
  const { gained } = await get()
  // ISO 5725-6: 2.8 × 0.5 × √(1/4 + 1/4).
  expect(gained.gloss).toEqual([
    {
      panel: 'Bonnet',
      geometryDeg: 20,
      beforeGu: 71.5,
      afterGu: 85,
      changeGu: 13.5,
      limitGu: expect.closeTo(0.98995, 4),
      real: true,
    },
  ])
  // The Bonnet was not measured before.
  expect(gained.thickness).toEqual([])
})

test('What cannot be read is refused with its field, and pasted readings go behind those there are', async () => {
  const draft = await filledIntake(it, { thickness: [{ panel: 'Roof', spot: 1, um: 0 }] })
  await expect(saveIntake(it.desk, { jobId: it.jobId, version: 0, draft })).rejects.toMatchObject({
    code: 'thickness-bad',
  })
  const readings = [{ panel: 'Roof' as const, spot: 1, um: 99 }]
  expect(pasteThickness({ text: 'Roof 98', unit: 'um', readings })).toEqual({
    readings: [{ panel: 'Roof', spot: 2, um: 98 }],
  })
})
