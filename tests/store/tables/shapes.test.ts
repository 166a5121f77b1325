import Database from 'better-sqlite3'
import { expect, inject, it } from 'vitest'
import { schemaOf } from '../../../main/domain/tables/index.ts'
import { tablesOf } from '../../../main/store/tables/shapes.ts'

const database = new Database(inject('emptyDatabase'), { readonly: true })
const tables = tablesOf(database)
database.close()

it('says of every table and every column that leaves what it means', () => {
  expect(tables.length).toBeGreaterThan(50)
  const said = ({ about, names }: (typeof tables)[number]['columns'][number]) => about || names
  const silent = tables.flatMap(({ model, about, columns }) => [
    ...(about ? [] : [model]),
    ...columns.filter(column => !said(column)).map(({ name }) => `${model}.${name}`),
  ])
  expect(silent, 'write it above the column in prisma/schema, after ///').toEqual([])
})

it('tells it to the reader of the JSON', () => {
  const { properties } = schemaOf(tables) as {
    properties: { tables: { properties: Record<string, { items: { properties: Record<string, object> } }> } }
  }
  const { id, customerId, plate, archivedAt } = properties.tables.properties.vehicles!.items.properties
  expect(id).toMatchObject({ description: 'By which other rows point to this one.' })
  expect(customerId).toMatchObject({ description: 'The id of a row of customers.' })
  expect(plate).toMatchObject({ description: 'Its number plate.' })
  expect(archivedAt).toMatchObject({
    description: expect.stringMatching(/^When it was put away; null: it is/),
  })
})
