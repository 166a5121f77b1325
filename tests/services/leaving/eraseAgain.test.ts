import { dirname, join } from 'node:path'
import { expect, it, onTestFinished } from 'vitest'
import { migrationsDir } from '../../../main/hosts/build.ts'
import { copyAtOnce, ownCopies } from '../../../main/services/backup/copying.ts'
import { copiesStanding } from '../../../main/services/backup/standing.ts'
import type { Desk } from '../../../main/services/desk/desk.ts'
import { cancelJob } from '../../../main/services/job/jobActs.ts'
import { erasePerson } from '../../../main/services/leaving/erase.ts'
import { eraseAgain } from '../../../main/services/leaving/eraseAgain.ts'
import { copiesDir } from '../../../main/store/backup/copies.ts'
import { addErased, readErased } from '../../../main/store/backup/erasedList.ts'
import { unpackCopy } from '../../../main/store/backup/readCopy.ts'
import { openStore } from '../../../main/store/store.ts'
import { makeFolder } from '../../store/openDatabase.ts'
import { bookJob } from '../bookJob.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'
import { testShop } from '../testShop.ts'

const nameOf = async ({ store }: Pick<Desk, 'store'>, id: string) =>
  (await store.read.customer.findUniqueOrThrow({ where: { id } })).name

/** The database of the newest copy in a folder of its own, with the list of who was erased beside it. */
async function olderDesk(desk: TestDesk): Promise<Desk> {
  const [copy] = await ownCopies(desk)
  const dataDir = makeFolder()
  await unpackCopy(copy!.path, null, dataDir)
  await addErased(copiesDir(dataDir), await readErased(copiesDir(dirname(desk.store.source.file))))
  const store = await openStore(join(dataDir, 'lustrum.db'), { dir: migrationsDir })
  onTestFinished(() => store.close())
  return { ...desk, store }
}

async function erased(desk: Desk, id: string): Promise<void> {
  const { version } = await desk.store.read.customer.findUniqueOrThrow({ where: { id } })
  await erasePerson(desk, { id, version, accepted: true })
}

it('erases again who was erased after the copy, once, and nobody else', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  await testShop(desk)
  const [one, other] = await desk.store.read.customer.findMany({ orderBy: { name: 'asc' } })
  await copyAtOnce(desk)
  await erased(desk, one!.id)
  const older = await olderDesk(desk)
  expect(await nameOf(older, one!.id)).toBe(one!.name)
  expect(await eraseAgain(older)).toBe(1)
  expect(await nameOf(older, one!.id)).toBe('erased person')
  expect(await nameOf(older, other!.id)).toBe(other!.name)
  expect(await eraseAgain(older)).toBe(0)
  expect((await copiesStanding(older)).warnings).toEqual([])
})

it('says on the first screen who is back and has a car booked, until they are erased', async () => {
  const desk = await makeDesk('2026-04-15T12:00:00Z')
  const shop = await testShop(desk)
  const { customer } = await desk.store.read.vehicle.findUniqueOrThrow({
    where: { id: shop.vehicles[0]! },
    include: { customer: true },
  })
  const { id, version } = await bookJob(desk, shop, { treatments: ['wash'] })
  const cancel = { id, version, reason: 'moved away' }
  await copyAtOnce(desk)
  await cancelJob(desk, cancel)
  await erased(desk, customer.id)
  const older = await olderDesk(desk)
  expect(await eraseAgain(older)).toBe(0)
  const said = async () =>
    (await copiesStanding(older)).warnings
      .filter(({ about }) => about === 'restored')
      .map(({ words }) => words)
  expect(await said()).toEqual([
    `Erased before, and back with an older copy: ${customer.name} (today at 08:00). Cancel what they have booked or hand it over, then erase them again under Customers.`,
  ])
  await cancelJob(older, cancel)
  await erased(older, customer.id)
  expect(await said()).toEqual([])
})
