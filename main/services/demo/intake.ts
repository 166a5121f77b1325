/** Intakes of the demo shop: one signed, with what was measured and marked, and one begun this morning. */
import { measureRules } from '../../domain/measure/index.ts'
import { toJson } from '../../store/json.ts'
import type { MadePhoto } from '../../store/photos/makePhoto.ts'
import type { Tx } from '../../store/store.ts'
import type { IntakeDraft } from '../intake/inputs.ts'
import { contentOf, emptyDraft } from '../intake/intake.ts'
import { intakeJob } from '../intake/jobPaint.ts'
import type { Happened } from './happen.ts'
import { demoShop } from './shopData.ts'

const signature =
  'M60 130L84 60L110 128L132 74L150 132M180 96L214 92L196 128L180 108M232 132L250 84L262 130L282 88L300 132M330 60L322 132M352 92L348 132M376 132L384 96L408 96L412 132M440 150L420 160'

const spots = (panel: IntakeDraft['thickness'][number]['panel'], ...ums: number[]) =>
  ums.map((um, i) => ({ panel, spot: i + 1, um }))

const measured: Partial<IntakeDraft> = {
  gauge: 'TG-3107',
  thickness: [
    ...spots('Bonnet', 112, 118, 115),
    ...spots('Roof', 121, 119, 122),
    ...spots('Left doors', 117, 116, 120),
    ...spots('Right wing', 231, 224, 238),
  ],
  gloss: [
    {
      instrument: 'GM-20-118',
      tile: 'T-118',
      substrate: 'gloss',
      geometryDeg: 20,
      tileGu: 94.8,
      startGu: 94.8,
      endGu: 94.5,
      panels: [
        { panel: 'Bonnet', gu: [71.2, 72.4, 70.9] },
        { panel: 'Roof', gu: [68.8, 69.5, 69.1] },
      ],
    },
  ],
  airC: 18.5,
  panelC: 17.9,
}

const photoId = 'demo-photo-1'

const marked: IntakeDraft['defects'] = [
  {
    id: 'demo-mark-1',
    panel: 'Bonnet',
    kind: 'chip',
    severity: 'light',
    x: 150,
    y: 240,
    note: 'stone',
    photoIds: [],
  },
  {
    id: 'demo-mark-2',
    panel: 'Roof',
    kind: 'swirls',
    severity: 'moderate',
    x: 500,
    y: 290,
    note: '',
    photoIds: [],
  },
  {
    id: 'demo-mark-3',
    panel: 'Left doors',
    kind: 'scratch',
    severity: 'severe',
    x: 470,
    y: 480,
    note: 'down to the primer',
    photoIds: [photoId],
  },
]

/** A signed intake for the first car in the shop, and one begun for the second. */
export async function writeIntakes(tx: Tx, happened: readonly Happened[], photo: MadePhoto): Promise<void> {
  const here = happened.filter(({ job }) => job.status === 'inShop')
  for (const [
    i,
    {
      job: { id, arrivedAt },
    },
  ] of here.slice(0, 2).entries()) {
    if (i === 0) {
      const { sha256, width, height, bytes } = photo
      const kept = { sha256, width, height, size: bytes.length, name: 'left doors.png', who: 'Mika' }
      await tx.jobPhoto.create({ data: { id: photoId, jobId: id, at: arrivedAt ?? 0, ...kept } })
    }
    const job = await intakeJob(tx, id)
    const draft: IntakeDraft = {
      ...emptyDraft(false),
      ...measured,
      // The photo is of the first car.
      defects: i === 0 ? marked : marked.map(mark => ({ ...mark, photoIds: [] })),
      odometer: 41_210 + 7_300 * i,
      fuelEighths: 5,
      keys: 2,
      wax: 'none',
    }
    if (i > 0 || arrivedAt === null) {
      await tx.intake.create({ data: { jobId: id, draft: toJson(draft) } })
      continue
    }
    const agreed = { ...draft, damageAgreed: true, belongings: 'Child seat in the back' }
    const { id: intakeId } = await tx.intake.create({ data: { jobId: id, draft: toJson(agreed) } })
    const content = toJson(contentOf(job, { shopName: demoShop.name, rules: measureRules() }, agreed))
    await tx.intakeEntry.create({
      data: { intakeId, number: 1, content, ownerName: job.customer.name, signature, signedAt: arrivedAt },
    })
  }
}
