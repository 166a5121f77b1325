import type { TestShop } from '../services/testShop.ts'
import type { Api } from './makeApi.ts'

/** Books the soonest place for one of the test shop's vehicles; answers with the job as the api gives it. */
export async function bookOne(
  api: Api,
  shop: TestShop,
  treatment: keyof TestShop['treatments'],
  vehicle = 0,
) {
  const wish = { condition: 'good', treatmentIds: [shop.treatments[treatment]] }
  const offers = await api.query('booking.offers', { ...wish, sizeClass: 'medium' })
  const held = await api.mutate('booking.hold', {
    ...wish,
    vehicleId: shop.vehicles[vehicle],
    plan: offers.data.soonest.plan,
  })
  const { jobId, version } = held.data
  await api.mutate('booking.confirm', { jobId, version })
  return (await api.query('jobs.get', { id: jobId })).data
}
