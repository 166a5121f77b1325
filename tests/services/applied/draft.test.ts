import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { checkDraft } from '../../../main/services/applied/draft.ts'
import type { AppliedFacts } from '../../../main/services/applied/facts.ts'
import type { AppliedDraft } from '../../../main/services/applied/inputs.ts'
import { getApplied } from '../../../main/services/applied/record.ts'
import { does, layeredCar } from '../cure/coatedCar.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { type TestShop, testShop } from '../testShop.ts'

const layer = (position: number, name: string): AppliedFacts['layers'][number] => ({
  position,
  name,
  productName: 'Ovrel Two',
  stage: 'coat',
  startAt: 0,
  endAt: 60,
  bayName: 'Bay 3',
  conditions: '',
  window: null,
  ageMin: null,
  referenceC: 20,
  parts: null,
  rule: '',
})
const facts: AppliedFacts = {
  shopName: 'Ashdown Paint Care',
  jobNumber: 1,
  customerName: 'Ines Vale',
  plate: 'KFR 204',
  vehicleWords: 'grey Marlo Wendrel',
  vin: null,
  odometer: '',
  treatments: [],
  leftAt: null,
  layers: [layer(2, 'First layer'), layer(4, 'Second layer')],
  heatings: [],
  overrides: [],
}
const entered = (position: number) => ({
  position,
  lot: '7K-114',
  who: 'Jo',
  zones: [{ name: 'Roof', finish: 'gloss' as const }],
})

describe('a record to be signed', () => {
  const draft: AppliedDraft = { layers: [entered(4), entered(2)], note: ' two coats ' }

  it('has each layer in the order it was laid, and nothing else', () => {
    expect(checkDraft({ ...draft, layers: [...draft.layers, entered(9)] }, facts)).toEqual({
      layers: [entered(2), entered(4)],
      note: 'two coats',
    })
  })

  it.each([
    ['lot', { lot: '  ' }, 'write the batch'],
    ['who', { who: ' ' }, 'write who laid it'],
    ['zones', { zones: [] }, 'choose the panels'],
  ])('is refused by the %s of a layer that proves nothing', (field, change, words) => {
    const bad = { ...draft, layers: [entered(2), { ...entered(4), ...change }] }
    expect(() => checkDraft(bad, facts)).toThrow(
      expect.objectContaining({
        code: 'incomplete',
        field: `draft.layers.1.${field}`,
        message: expect.stringContaining(`Second layer: ${words}`),
      }),
    )
  })

  it('is refused where a layer is not written of at all', () => {
    expect(() => checkDraft({ ...draft, layers: [entered(4)] }, facts)).toThrow(
      expect.objectContaining({ field: 'draft.layers.0.lot' }),
    )
  })
})

describe('what is filled in before anybody writes', () => {
  let desk: TestDesk
  let shop: TestShop
  let jobId: string
  beforeAll(async () => {
    desk = await makeDesk('2026-04-15T12:00:00Z')
    shop = await testShop(desk)
    jobId = await layeredCar(desk, shop)
    for (const position of [0, 1, 2]) await does(desk, jobId, position)
    const { id: productId } = await desk.store.read.product.findFirstOrThrow({ where: { name: 'Ovrel Two' } })
    await write(tx =>
      tx.lot.createMany({
        data: [
          { number: 1, openedOn: '2026-03-01', batch: '7K-114' },
          { number: 2, openedOn: '2026-04-01', batch: null },
          { number: 3, openedOn: null, batch: '7K-116' },
        ].map(lot => ({ ...lot, id: `lot ${lot.number}`, productId, receivedOn: '2026-02-01' })),
      }),
    )
  })
  afterAll(() => desk.close())
  type Write = Parameters<TestDesk['store']['transact']>[1]
  const write = (work: Write) => desk.store.transact({ who: 'test', at: desk.now() }, work)
  const seen = () => getApplied(desk, { jobId })

  it('offers the bottles of a layer’s product, the one opened last first', async () => {
    const { lots, draft } = await seen()
    expect(lots).toEqual([
      { position: 2, lots: ['bottle 2', 'bottle 1, batch 7K-114', 'bottle 3, batch 7K-116'] },
    ])
    // Nothing was drawn, so nobody says which it was.
    expect(draft.layers[0]?.lot).toBe('')
  })

  it('takes the bottle its step drew from, before one opened later', async () => {
    const { productId } = await desk.store.read.lot.findUniqueOrThrow({ where: { id: 'lot 1' } })
    const move = { lotId: 'lot 1', productId, at: desk.now(), by: 'test' }
    await write(async tx => {
      await tx.stockMove.create({ data: { ...move, kind: 'receipt', centi: 5_000 } })
      await tx.stockMove.create({ data: { ...move, kind: 'use', centi: -500, jobId, position: 2 } })
    })
    const { lots, draft } = await seen()
    expect(lots[0]?.lots).toEqual(['bottle 1, batch 7K-114', 'bottle 2', 'bottle 3, batch 7K-116'])
    expect(draft.layers[0]?.lot).toBe('bottle 1, batch 7K-114')
  })

  it('takes the whole paint, in the car’s finish, and those who were planned for it', async () => {
    const { draft } = await seen()
    expect(draft.layers).toHaveLength(1)
    expect(draft.layers[0]).toMatchObject({ position: 2, who: expect.stringMatching(/^(Jo|Sal)$/) })
    expect(draft.layers[0]?.zones).toHaveLength(11)
    expect(draft.layers[0]?.zones[0]).toEqual({ name: 'Bonnet', finish: 'gloss' })
  })

  it.each([
    ['Rims', { name: 'Wheels', finish: 'wheels' }],
    ['Windscreen', { name: 'Glass', finish: 'glass' }],
  ])('takes one zone for a step named %s', async (name, zone) => {
    await write(tx => tx.jobStep.updateMany({ where: { jobId, position: 2 }, data: { name } }))
    expect((await seen()).draft.layers[0]?.zones).toEqual([zone])
  })
})
