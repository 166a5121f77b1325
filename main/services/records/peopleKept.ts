import { setImmediate as nextTurn } from 'node:timers/promises'
import { PeopleIndex } from '../../domain/search/index.ts'
import { fromJson } from '../../store/json.ts'
import { noteReads } from '../../store/reads.ts'
import type { Store } from '../../store/store.ts'

/** One shop's people in memory, with what was saved since they were last read. */
interface Kept {
  people: PeopleIndex
  /** Whose each car was when it was last read. */
  ownerOf: Map<string, string>
  touchedPeople: Set<string>
  touchedCars: Set<string>
  /** So much was written at once, as by an import, that nobody is named. */
  touchedAll: boolean
  /** Readings take turns. */
  ready: Promise<void>
}

/** More than this at once, and everybody is read anew. */
const most = 400

/** How many people are read between two turns of everybody else. */
const piece = 500

const keptOf = new WeakMap<Store, Kept>()

/** Everybody, as they are now: read once, then only those a save has named. */
export async function peopleOf(store: Store): Promise<PeopleIndex> {
  // Whoever finds them read already rests on them too.
  noteReads(['Contact', 'Customer', 'Vehicle'])
  const kept = keptOf.get(store) ?? keep(store)
  kept.ready = kept.ready.catch(() => {}).then(() => refresh(store, kept))
  await kept.ready
  return kept.people
}

function keep(store: Store): Kept {
  const kept: Kept = {
    people: new PeopleIndex(),
    ownerOf: new Map(),
    touchedPeople: new Set(),
    touchedCars: new Set(),
    touchedAll: false,
    ready: Promise.resolve(),
  }
  keptOf.set(store, kept)
  store.onCommit(touched => {
    for (const { entity, entityId } of touched) {
      if (entity === 'customer') kept.touchedPeople.add(entityId)
      if (entity === 'vehicle') kept.touchedCars.add(entityId)
      if (entity === 'import') kept.touchedAll = true
    }
  })
  kept.ready = readAll(store, kept)
  return kept
}

/** In pieces, with whatever else waits in between: twenty thousand people take half a second. */
async function readAll(store: Store, kept: Kept): Promise<void> {
  const people = new PeopleIndex()
  const ownerOf = new Map<string, string>()
  let after = ''
  for (;;) {
    const rows = await rowsOf(store, { id: { gt: after } }, piece)
    for (const row of rows) know({ people, ownerOf }, row)
    if (rows.length < piece) break
    after = rows.at(-1)!.id
    await nextTurn()
  }
  Object.assign(kept, { people, ownerOf })
}

function know({ people, ownerOf }: Pick<Kept, 'people' | 'ownerOf'>, row: Row): void {
  const { archivedAt, vehicles, tags, ...person } = row
  for (const car of vehicles) ownerOf.set(car.id, row.id)
  const cars = vehicles.sort((a, b) => (a.id < b.id ? -1 : 1))
  people.put({ ...person, tags: fromJson<string[]>(tags), archived: archivedAt !== null, cars })
}

async function refresh(store: Store, kept: Kept): Promise<void> {
  const people = [...kept.touchedPeople]
  const cars = [...kept.touchedCars]
  const all = kept.touchedAll || people.length + cars.length > most
  if (!all && people.length + cars.length === 0) return
  // What is saved while this reads is read the next time.
  kept.touchedPeople.clear()
  kept.touchedCars.clear()
  kept.touchedAll = false
  if (all) return readAll(store, kept)
  const owners = cars.flatMap(car => kept.ownerOf.get(car) ?? [])
  const before = [...new Set([...people, ...owners])]
  const rows = await rowsOf(store, {
    OR: [{ id: { in: before } }, { vehicles: { some: { id: { in: cars } } } }],
  })
  const there = new Set(rows.map(row => row.id))
  for (const id of before) if (!there.has(id)) kept.people.drop(id)
  for (const row of rows) know(kept, row)
}

type Row = Awaited<ReturnType<typeof rowsOf>>[number]

function rowsOf(store: Store, where: object, take?: number) {
  return store.read.customer.findMany({
    where,
    orderBy: { id: 'asc' },
    ...(take && { take }),
    select: {
      id: true,
      name: true,
      phone: true,
      email: true,
      tags: true,
      archivedAt: true,
      contacts: { select: { name: true, phone: true, email: true } },
      vehicles: {
        where: { archivedAt: null },
        // No order here: sorted rows of many parents cannot be asked for in parts, and SQLite takes a thousand at most.
        select: { id: true, plate: true, make: true, model: true, colour: true, year: true, vin: true },
      },
    },
  })
}
