/** A shop of twelve bays with a curing car in each, read every minute for two days, on a data folder of its own. */
import { commonPracticeProfile } from '../../../main/domain/cure/index.ts'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { databaseFile } from '../../../main/hosts/dataFolder.ts'
import { createToken } from '../../../main/services/cure/sensors.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { saveCustomer } from '../../../main/services/records/customers.ts'
import { saveVehicle } from '../../../main/services/records/vehicles.ts'
import { saveProduct } from '../../../main/services/setUp/products.ts'
import { setUpShop } from '../../../main/services/setUp/shopSetUp.ts'
import { saveReadings } from '../../../main/store/readingRows.ts'
import { openStore } from '../../../main/store/store.ts'

export const heldCars = 12
const readDays = 2

/** Fills the data folder; `nowAt` is the epoch minute the shop stands at. Answers a sensor's token for each bay. */
export async function heldShop(dataDir: string, nowAt: number): Promise<string[]> {
  const store = await openStore(databaseFile(dataDir), { dir: migrationsDir })
  const desk: Desk = { store, now: () => nowAt, who: 'bench' }
  await setUpShop(desk, {
    name: 'Ashdown Paint Care',
    zone: 'UTC',
    currency: 'EUR',
    units: 'metric',
    country: 'US',
    weekly: [1, 2, 3, 4, 5, 6, 7].map(weekday => ({ weekday, from: 480, to: 1080 })),
    bays: Array.from({ length: heldCars }, (_, i) => ({
      name: `Bay ${i + 1}`,
      capabilities: ['clean', 'cure'] as const,
    })).map(bay => ({ ...bay, capabilities: [...bay.capabilities] })),
    crew: [{ name: 'Jo', skills: ['coat'] }],
    starters: false,
  })
  const product = await saveProduct(desk, {
    name: 'Ovrel One',
    kind: 'coating',
    cureProfile: { ...commonPracticeProfile(), handoverMin: 1440, handoverAdvisedMin: 2880 },
  })
  const bays = await store.read.bay.findMany({ orderBy: { position: 'asc' } })
  const { id: customerId } = await saveCustomer(desk, { name: 'Ines Vale', note: '' })
  for (const [i, bay] of bays.entries()) {
    const plate = `BEN ${100 + i}`
    const car = { make: 'Marlo', model: 'Wendrel', colour: 'grey', finish: 'gloss' as const, note: '' }
    const vehicle = await saveVehicle(desk, { customerId, plate, sizeClass: 'medium', ...car })
    const readings = Array.from({ length: readDays * 1440 }, (_, k) => ({
      at: nowAt - readDays * 1440 + k,
      airC: 16 + 4 * Math.sin((k + 60 * i) / 229),
      panelC: null,
      humidityPercent: 48,
    }))
    await store.transact({ who: 'bench', at: nowAt }, async tx => {
      await saveReadings(tx, bay.id, 'imported', readings)
      await tx.job.create({ data: heldJob(i, vehicle.id, customerId, bay.id, product.id, nowAt) })
    })
  }
  const tokens: string[] = []
  for (const bay of bays) tokens.push((await createToken(desk, { bayId: bay.id, name: bay.name })).token)
  await store.close()
  return tokens
}

/** A layer finished some hours ago, and the hold it is in. */
function heldJob(
  i: number,
  vehicleId: string,
  customerId: string,
  bayId: string,
  productId: string,
  nowAt: number,
) {
  const endAt = nowAt - 180 - 45 * i
  const handoverAt = nowAt + 3 * 1440
  const step = { stage: 'coat', bayId, productId }
  const times = (from: number, to: number) => ({
    plannedAt: from,
    plannedEndAt: to,
    startAt: from,
    endAt: to,
  })
  return {
    number: i + 1,
    customerId,
    vehicleId,
    status: 'inShop',
    dropOffAt: endAt - 90,
    arrivedAt: endAt - 90,
    promisedAt: handoverAt,
    plannedHandoverAt: handoverAt,
    handoverAt,
    safeAt: endAt + 1440,
    advisedAt: endAt + 2880,
    createdAt: endAt - 2000,
    steps: {
      create: [
        {
          ...step,
          ...times(endAt - 90, endAt),
          position: 0,
          kind: 'work',
          name: 'Layer',
          needs: 'clean',
          minutes: 90,
          actualStartAt: endAt - 90,
          actualEndAt: endAt,
        },
        {
          ...step,
          ...times(endAt, endAt + 1440),
          position: 1,
          kind: 'hold',
          name: 'Cure',
          needs: 'cure',
          minutes: 1440,
        },
      ],
    },
  }
}
