import { beforeEach, describe, expect, it } from 'vitest'
import { act } from '../../../main/services/desk/desk.ts'
import {
  archiveRow,
  assertNameFree,
  lastPosition,
  orderRows,
  removeRow,
  restoreRow,
  saveRow,
  saveSingle,
} from '../../../main/services/desk/keep.ts'
import { noJson } from '../../../main/store/json.ts'
import type { Tx } from '../../../main/store/store.ts'
import { makeDesk, type TestDesk } from '../makeDesk.ts'

let desk: TestDesk
beforeEach(async () => {
  desk = await makeDesk()
})

const bays = (tx: Tx) => ({ table: tx.bay, entity: 'bay' })
const wet = { name: 'Bay 1', capabilities: ['wet'] }

const save = (seen: { id?: string; version?: number }, data = wet, position = 0) =>
  act(desk, (tx, audit) => saveRow(audit, bays(tx), seen, { data, added: { position } }))
const bay = (id: string) => desk.store.read.bay.findUniqueOrThrow({ where: { id } })
const lines = async () =>
  (await desk.store.read.auditLine.findMany({ orderBy: { id: 'asc' } })).map(
    ({ who, at, act, entity, entityId, detail }) => ({ who, at, act, entity, entityId, detail }),
  )
const stale = (noun: string) => ({
  code: 'stale',
  message: `Somebody else changed this ${noun} meanwhile: look at it again, then repeat your change.`,
})

describe('saving', () => {
  it('adds a row with what only a new one has, and says so', async () => {
    const { id, version, before } = await save({}, wet, 3)
    expect(before).toBeNull()
    expect(version).toBe(1)
    expect(await bay(id)).toMatchObject({ ...wet, position: 3, version: 1, archivedAt: null })
    expect(await lines()).toEqual([
      { who: 'front desk', at: desk.now(), act: 'added', entity: 'bay', entityId: id, detail: wet },
    ])
  })

  it('changes the row seen, keeps its place, and notes only what is different', async () => {
    const { id } = await save({}, wet, 3)
    const saved = await save({ id, version: 1 }, { name: 'Bay 1', capabilities: ['wet', 'cure'] }, 9)
    expect(saved).toMatchObject({ id, version: 2, before: { version: 1, capabilities: ['wet'] } })
    expect(saved.changes).toEqual({ capabilities: [['wet'], ['wet', 'cure']] })
    expect(await bay(id)).toMatchObject({ capabilities: ['wet', 'cure'], position: 3, version: 2 })
    expect((await lines())[1]).toMatchObject({ act: 'changed', entityId: id, detail: saved.changes })
  })

  it('refuses the second of two windows, and one that names no version, and writes nothing', async () => {
    const { id } = await save({})
    await save({ id, version: 1 }, { ...wet, name: 'First' })
    await expect(save({ id, version: 1 }, { ...wet, name: 'Second' })).rejects.toMatchObject(stale('bay'))
    await expect(save({ id }, { ...wet, name: 'Third' })).rejects.toMatchObject(stale('bay'))
    expect((await bay(id)).name).toBe('First')
    expect(await lines()).toHaveLength(2)
  })

  it('keeps an emptied JSON column as null in the audit line, and adds what lies beneath the row', async () => {
    const data = { name: 'Mika', skills: ['wash'], weekly: noJson }
    await act(desk, (tx, audit) =>
      saveRow(
        audit,
        { table: tx.crewMember, entity: 'crew', noun: 'crew member' },
        {},
        {
          data,
          added: { position: 0 },
          detail: { badges: 2 },
        },
      ),
    )
    expect((await lines())[0]!.detail).toEqual({ name: 'Mika', skills: ['wash'], weekly: null, badges: 2 })
  })

  it('files a part under what it is part of', async () => {
    const { id } = await save({})
    const closure = { bayId: id, fromAt: 10, toAt: 20, reason: 'floor' }
    const kept = (tx: Tx) => ({ table: tx.bayClosure, entity: 'bay', noun: 'closure', partOf: id })
    const part = await act(desk, (tx, audit) => saveRow(audit, kept(tx), {}, { data: closure }))
    expect((await lines())[1]).toMatchObject({
      act: 'closure added',
      entity: 'bay',
      entityId: id,
      detail: { closureId: part.id, ...closure },
    })
    const removing = act(desk, (tx, audit) => removeRow(audit, kept(tx), { id: part.id, version: 2 }))
    await expect(removing).rejects.toMatchObject(stale('closure'))
  })
})

describe('saving what there is once only', () => {
  const mail = {
    host: 'mail.example.com',
    port: 587,
    security: 'tls',
    fromName: 'A',
    fromAddress: 'a@example.com',
  }
  const saveMail = (version: number | undefined, host: string) =>
    act(desk, (tx, audit) =>
      saveSingle(
        audit,
        { table: tx.mailSettings, entity: 'mail', noun: 'mail settings' },
        { key: { id: 1 }, version },
        {
          ...mail,
          host,
        },
      ),
    )

  it('begins with version 0 and goes on like any other row', async () => {
    expect(await saveMail(0, 'one.example.com')).toMatchObject({ version: 1, before: null })
    expect(await saveMail(1, 'two.example.com')).toMatchObject({
      version: 2,
      before: { host: 'one.example.com' },
    })
    await expect(saveMail(1, 'three.example.com')).rejects.toMatchObject(stale('mail settings'))
    await expect(saveMail(0, 'three.example.com')).rejects.toMatchObject(stale('mail settings'))
    await expect(saveMail(undefined, 'three.example.com')).rejects.toMatchObject(stale('mail settings'))
    expect(await desk.store.read.mailSettings.findFirst()).toMatchObject({
      host: 'two.example.com',
      version: 2,
    })
    expect((await lines())[1]).toMatchObject({
      act: 'changed',
      entityId: '1',
      detail: { host: ['one.example.com', 'two.example.com'] },
    })
  })

  it('refuses a version where nothing was saved yet', async () => {
    await expect(saveMail(3, 'one.example.com')).rejects.toMatchObject(stale('mail settings'))
    expect(await desk.store.read.mailSettings.count()).toBe(0)
  })
})

describe('putting away and taking back', () => {
  const archive = (seen: { id: string; version: number }, at = 77) =>
    act(desk, (tx, audit) => archiveRow(audit, bays(tx), seen, { at, detail: { why: 'sold' } }))
  const restore = (seen: { id: string; version: number }) =>
    act(desk, (tx, audit) => restoreRow(audit, bays(tx), seen, { position: 5 }))

  it('each once, on the version seen, with a line', async () => {
    const { id } = await save({})
    await expect(restore({ id, version: 1 })).rejects.toMatchObject(stale('bay'))
    await expect(archive({ id, version: 2 })).rejects.toMatchObject(stale('bay'))
    await archive({ id, version: 1 })
    expect(await bay(id)).toMatchObject({ archivedAt: 77, version: 2, position: 0 })
    await expect(archive({ id, version: 2 })).rejects.toMatchObject(stale('bay'))
    await expect(restore({ id, version: 1 })).rejects.toMatchObject(stale('bay'))
    await restore({ id, version: 2 })
    expect(await bay(id)).toMatchObject({ archivedAt: null, version: 3, position: 5 })
    expect((await lines()).map(line => [line.act, line.detail])).toEqual([
      ['added', wet],
      ['archived', { why: 'sold' }],
      ['restored', {}],
    ])
  })
})

it('takes a row out, and keeps what stood there', async () => {
  const { id } = await save({})
  await act(desk, (tx, audit) => removeRow(audit, bays(tx), { id, version: 1 }))
  expect(await desk.store.read.bay.count()).toBe(0)
  expect((await lines())[1]).toMatchObject({ act: 'removed', detail: { name: [null, 'Bay 1'] } })
})

describe('order', () => {
  const ids: string[] = []
  beforeEach(async () => {
    ids.length = 0
    for (const [i, name] of ['A', 'B', 'C'].entries()) ids.push((await save({}, { ...wet, name }, i)).id)
  })
  const order = (wanted: string[]) => act(desk, (tx, audit) => orderRows(audit, bays(tx), wanted))

  it('puts the rows in use where they were asked to be', async () => {
    const [a, b, c] = ids as [string, string, string]
    await order([c, a, b])
    const rows = await desk.store.read.bay.findMany({ orderBy: { position: 'asc' } })
    expect(rows.map(row => [row.name, row.position])).toEqual([
      ['C', 0],
      ['A', 1],
      ['B', 2],
    ])
    expect((await lines()).at(-1)).toMatchObject({ act: 'ordered', entityId: '', detail: { ids: [c, a, b] } })
  })

  it('refuses one left out, one twice, a stranger and one put away', async () => {
    const [a, b, c] = ids as [string, string, string]
    for (const wanted of [[a, b], [a, b, b], [a, b, 'x'], [a, b, c, c], []])
      await expect(order(wanted)).rejects.toMatchObject({ code: 'stale', field: 'ids' })
    await act(desk, (tx, audit) => archiveRow(audit, bays(tx), { id: c, version: 1 }, { at: 1 }))
    await expect(order([a, b, c])).rejects.toMatchObject({ code: 'stale' })
    await order([b, a])
  })

  it('finds the place behind all, those put away too', async () => {
    await act(desk, (tx, audit) => archiveRow(audit, bays(tx), { id: ids[2]!, version: 1 }, { at: 1 }))
    expect(await lastPosition(desk.store.read.bay)).toBe(3)
    expect(await lastPosition(desk.store.read.treatment)).toBe(0)
  })
})

describe('names', () => {
  it('are free unless another row in use bears them, capitals aside', async () => {
    const { id } = await save({})
    const twice = { code: 'name-twice', field: 'name' }
    const free = (row: { id?: string; name: string }) => assertNameFree(desk.store.read.bay, row, 'a bay')
    await expect(free({ name: 'BAY 1' })).rejects.toMatchObject(twice)
    await expect(free({ name: 'Bay 2' })).resolves.toBeUndefined()
    await expect(free({ id, name: 'bay 1' })).resolves.toBeUndefined()
    await act(desk, (tx, audit) => archiveRow(audit, bays(tx), { id, version: 1 }, { at: 1 }))
    await expect(free({ name: 'Bay 1' })).resolves.toBeUndefined()
  })
})
