import { beforeEach, describe, expect, test } from 'vitest'
import { commonPracticeProfile } from '../../main/domain/cure/index.ts'
import { type TestShop, testShop } from '../services/testShop.ts'
import { bookOne } from './bookOne.ts'
import { type Api, makeApi } from './makeApi.ts'

let api: Api
let shop: TestShop

beforeEach(async () => {
  api = await makeApi('2026-04-15T12:10:00Z')
  shop = await testShop(api.desk)
})

const list = async (input?: object) => (await api.query('products.list', input)).data
const named = async (name: string) =>
  (await list({ archived: true })).find((each: { name: string }) => each.name === name)
const inputOf = ({ id, version, name, kind, cureProfile }: Record<string, unknown>) => ({
  id,
  version,
  name,
  kind,
  cureProfile,
})

test('a product is added, changed, put away and taken back', async () => {
  const { data } = await api.mutate('products.save', {
    name: 'Grenn Cut',
    kind: 'compound',
    cureProfile: null,
  })
  const edit = { id: data.id, version: 1, name: 'Grenn Cut 2', kind: 'polish', cureProfile: null }
  await api.mutate('products.save', edit)
  expect(await named('Grenn Cut 2')).toMatchObject({ kind: 'polish', version: 2, usedIn: [] })
  await api.mutate('products.archive', { id: data.id, version: 2 })
  expect(await list()).toHaveLength(2)
  await api.mutate('products.restore', { id: data.id, version: 3 })
  expect(await list()).toHaveLength(3)
})

test('a profile comes back as it was saved, sources and all', async () => {
  const cureProfile = {
    ...commonPracticeProfile(),
    recoat: { minMin: 60, maxMin: 180 },
    missedRecoat: 'Abrade, wipe, coat again.',
    forcedCure: [{ panelC: 60, minutes: 30, standsForMin: 1440 }],
    rate: { rule: 'arrhenius', activationOverRK: 6_000 },
    sources: { ...commonPracticeProfile().sources, recoat: 'data sheet', rate: 'data sheet' },
  }
  await api.mutate('products.save', { name: 'Tamsk Quick', kind: 'coating', cureProfile })
  expect((await named('Tamsk Quick')).cureProfile).toEqual(cureProfile)
})

const profile = commonPracticeProfile()
test.each([
  ['no name', { name: '' }, 'name'],
  ['a kind nobody knows', { kind: 'wax' }, 'kind'],
  ['no profile', { cureProfile: null }, 'cureProfile'],
  ['a negative duration', { cureProfile: { ...profile, tackFreeMin: -30 } }, 'cureProfile.tackFreeMin'],
  ['half a minute', { cureProfile: { ...profile, keepDryMin: 90.5 } }, 'cureProfile.keepDryMin'],
  ['no figure at all', { cureProfile: { ...profile, handoverMin: null } }, 'cureProfile.handoverMin'],
  [
    'a recoat window that closes before it opens',
    { cureProfile: { ...profile, recoat: { minMin: 120, maxMin: 60 }, missedRecoat: 'x' } },
    'cureProfile.recoat.maxMin',
  ],
  [
    'a handover before 4 h that no data sheet gives (common practice, no source)',
    { cureProfile: { ...profile, handoverMin: 120, tackFreeMin: 60 } },
    'cureProfile.handoverMin',
  ],
  [
    'advised before the least',
    { cureProfile: { ...profile, handoverMin: 1000, handoverAdvisedMin: 900 } },
    'cureProfile.handoverAdvisedMin',
  ],
  [
    'humidity upside down',
    { cureProfile: { ...profile, humidity: { minPercent: 80, maxPercent: 20 } } },
    'cureProfile.humidity.maxPercent',
  ],
  [
    'a pace by a rule nobody knows',
    { cureProfile: { ...profile, rate: { rule: 'guess' } } },
    'cureProfile.rate.rule',
  ],
])('a coating with %s is refused with the field named, and nothing is kept', async (_, change, field) => {
  const input = { name: 'Tamsk Quick', kind: 'coating', cureProfile: profile, ...change }
  const answer = await api.mutate('products.save', input)
  expect(answer).toMatchObject({ status: 400, fault: { field } })
  expect(await list({ archived: true })).toHaveLength(2)
})

test('what does not cure takes no profile', async () => {
  const answer = await api.mutate('products.save', { name: 'Foam', kind: 'wash', cureProfile: profile })
  expect(answer).toMatchObject({ status: 400, fault: { reason: 'profile-useless', field: 'cureProfile' } })
})

test('an edit from a window that has not seen the last one is told so', async () => {
  const edit = inputOf(await named('Ovrel Two'))
  await api.mutate('products.save', { ...edit, name: 'Ovrel Deux' })
  expect((await api.mutate('products.save', { ...edit, name: 'Ovrel Zwei' })).status).toBe(409)
})

describe('a product that treatments use', () => {
  test('says which, and is not put away or made something else', async () => {
    const product = await named('Ovrel Two')
    expect(product.usedIn.map((each: { name: string }) => each.name).sort()).toEqual([
      'One layer and topper',
      'Two layers',
    ])
    const away = await api.mutate('products.archive', { id: product.id, version: product.version })
    expect(away).toMatchObject({ status: 400, fault: { reason: 'product-used' } })
    expect(away.message).toContain('Two layers')
    const other = await api.mutate('products.save', { ...inputOf(product), kind: 'wash', cureProfile: null })
    expect(other).toMatchObject({ status: 400, fault: { reason: 'product-used', field: 'kind' } })
  })

  test('keeps the window that a second layer needs', async () => {
    const product = inputOf(await named('Ovrel Two'))
    const cureProfile = { ...(product.cureProfile as object), recoat: null, missedRecoat: '' }
    const answer = await api.mutate('products.save', { ...product, cureProfile })
    expect(answer).toMatchObject({ status: 400, fault: { reason: 'no-second-layer', field: 'cureProfile' } })
    expect(answer.message).toContain('"Two layers"')
  })

  test('with a car booked on it, a changed profile is told first; a changed name is not', async () => {
    const job = await bookOne(api, shop, 'twoLayers')
    const product = inputOf(await named('Ovrel Two'))
    expect((await api.mutate('products.save', { ...product, name: 'Ovrel Deux' })).status).toBe(200)
    const cureProfile = { ...(product.cureProfile as object), handoverMin: 300 }
    const edit = { ...product, version: 2, cureProfile }
    const refused = await api.mutate('products.save', edit)
    expect(refused).toMatchObject({
      status: 400,
      fault: { reason: 'touches-bookings', field: 'cureProfile' },
    })
    expect(refused.message).toContain(`Job ${job.number} (KFR 204)`)
    expect((await api.mutate('products.save', { ...edit, accepted: true })).status).toBe(200)
  })
})
