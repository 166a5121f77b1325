import { join } from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { inspect } from '../../main/store/backup/inspect.ts'
import { ShopServer } from '../e2e/server.ts'
import { letIn } from './letIn.ts'

let server: ShopServer
beforeEach(() => {
  server = new ShopServer({ now: '2026-04-15T13:40:00Z', demo: true })
})
afterEach(() => server.remove())

const days = 31

/** Everything that says where a car stands, row by row; and the customers by name. */
function kept(file: string) {
  const database = new Database(file, { readonly: true })
  const places = ['Job', 'JobStep', 'JobStepCrew'].map(table =>
    database.prepare(`select * from ${table} order by rowid`).all(),
  )
  const names = database.prepare("select name from Customer where name like 'Meanwhile %'").pluck().all()
  database.close()
  return { places, names: names.sort() }
}

test('the app killed while it lays the floor: every car stands where it stood, and what was answered is kept', async () => {
  await server.start()
  const file = join(server.dataDir, 'lustrum.db')
  const desk = await letIn(server)
  const { places } = kept(file)
  await desk.mutate('dayPlan.begin', { days })
  const answered: string[] = []
  let run = null
  // Into the middle of it: it has a plan, and is not done.
  while (!run?.found) {
    const name = `Meanwhile ${answered.length}`
    await desk.mutate('customers.save', { name, phone: null, email: null, note: '' })
    answered.push(name)
    run = (await desk.query('dayPlan.relay', { days })).run
  }
  await server.kill()
  expect(run).toMatchObject({ working: true, proven: false })
  expect(inspect(file).fault).toBeNull()
  expect(kept(file)).toEqual({ places, names: answered.sort() })
  await server.start()
  expect(server.output).toMatch(/not closed properly last time.*\nThe database is sound\./)
  const again = await letIn(server)
  // Only the search is lost.
  expect(await again.query('dayPlan.relay', { days })).toMatchObject({ run: null, failed: null })
  expect(kept(file)).toEqual({ places, names: answered })
})
