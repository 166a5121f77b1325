import { expect, it } from 'vitest'
import { fillDemo } from '../../../main/services/demo/index.ts'
import { getIntake } from '../../../main/services/intake/intake.ts'
import { photoFile, sweepPhotos } from '../../../main/services/intake/photos.ts'
import { makeDesk } from '../makeDesk.ts'

it('the demo shows an intake that is signed, with marks, readings and a photo, and one that is begun', async () => {
  const desk = await makeDesk('2026-04-15T14:00:00Z')
  await fillDemo(desk)
  const rows = await desk.store.read.intake.findMany({ include: { entries: true } })
  const views = await Promise.all(rows.map(({ jobId }) => getIntake(desk, { jobId })))
  const [signed, begun] = views.sort((a, b) => b.entries.length - a.entries.length)
  const { draft, photos } = signed!.entries[0]!.content
  expect(draft.defects.map(({ photoIds }) => photoIds.length)).toEqual([0, 0, 1])
  expect(draft.thickness.length).toBeGreaterThan(9)
  expect(draft.gloss).toHaveLength(1)
  expect(photos).toHaveLength(1)
  expect(begun!.entries).toEqual([])
  expect(begun!.photos).toEqual([])
  expect(await sweepPhotos(desk)).toBe(0)
  const { bytes } = await photoFile(desk, { id: photos[0]!.id, small: true })
  // A JPEG begins so (ITU-T T.81, B.1.1.3).
  expect([...bytes.subarray(0, 2)]).toEqual([0xff, 0xd8])
})
