import { expect, it } from 'vitest'
import { saveIntake, signIntake } from '../../../main/services/intake/intake.ts'
import { saveMeasuring } from '../../../main/services/intake/measuring.ts'
import { listMeters } from '../../../main/services/intake/meters.ts'
import { filledIntake, intakeDesk, signature } from './intakeDesk.ts'

const set = (part: object) => ({
  instrument: 'GM-1',
  tile: 'T-1',
  substrate: 'gloss' as const,
  geometryDeg: 20 as const,
  tileGu: 94.8 as number | null,
  startGu: 94.3 as number | null,
  endGu: null,
  panels: [],
  ...part,
})

it('lists each meter with each tile and angle from signed intakes, and none that was not read on its tile', async () => {
  const { desk, jobId, shop } = await intakeDesk()
  const gloss = [set({}), set({ geometryDeg: 60 }), set({ startGu: null }), set({ instrument: '' })]
  const draft = await filledIntake({ desk, jobId, shop }, { gloss })
  await saveIntake(desk, { jobId, version: 0, draft })
  expect(await listMeters(desk)).toEqual([])
  await signIntake(desk, { jobId, version: 1, draft, ownerName: 'Ines Vale', signature })
  expect(await listMeters(desk)).toEqual([
    expect.objectContaining({ instrument: 'GM-1', tile: 'T-1', geometryDeg: 20, readings: 1, next: null }),
    expect.objectContaining({ geometryDeg: 60, lastOffGu: expect.closeTo(-0.5, 9) }),
  ])
})

it('judges the next reading by what the shop allows', async () => {
  const { desk, jobId } = await intakeDesk()
  const { intake } = await signedThrice(desk, jobId)
  expect(intake).toBe(3)
  expect(await listMeters(desk)).toMatchObject([{ readings: 3, leaves: true }])
  const none = { floorUm: null, gaugeRepeatabilityUm: null, glossRepeatabilityGu: null }
  await saveMeasuring(desk, { ...none, glossAllowedGu: 10, version: 0 })
  expect(await listMeters(desk)).toMatchObject([{ readings: 3, leaves: false }])
})

/** Three signed pages of one intake on three days, as three cars would leave. */
async function signedThrice(desk: Awaited<ReturnType<typeof intakeDesk>>['desk'], jobId: string) {
  const { id: intakeId } = await desk.store.transact({ who: 'test', at: 0 }, tx =>
    tx.intake.create({ data: { jobId, draft: {} } }),
  )
  const pages = [94.8, 94.0, 93.6]
  for (const [i, startGu] of pages.entries())
    await desk.store.transact({ who: 'test', at: 0 }, tx =>
      tx.intakeEntry.create({
        data: {
          intakeId,
          number: i + 1,
          ownerName: 'Ines Vale',
          signature,
          signedAt: desk.now() - (3 - i) * 30 * 1440,
          content: { draft: { gloss: [set({ startGu })] } },
        },
      }),
    )
  return { intake: pages.length }
}
