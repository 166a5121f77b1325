import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { createApp } from '../../main/api/app.ts'
import { queryInputs, queryPaths } from './queryInputs.ts'
import { yearsShop } from './yearsShop.ts'

it('answers every query of a shop of three years', async () => {
  const { dir, desk } = await yearsShop(undefined, 3)
  const rendererDir = join(dir, 'page')
  mkdirSync(rendererDir)
  const app = createApp({ desk, rendererDir })
  const ask = async (path: string, input: unknown) => {
    const tail = input === undefined ? '' : `?input=${encodeURIComponent(JSON.stringify(input))}`
    const answer = await app.request(`/trpc/${path}${tail}`)
    return { status: answer.status, text: await answer.text() }
  }
  const inputs = await queryInputs(desk)
  const queries = queryPaths()
  expect(
    queries.filter(path => !Object.hasOwn(inputs, path)),
    'give these an input in queryInputs.ts',
  ).toEqual([])
  const faults: string[] = []
  for (const path of queries) {
    const { status, text } = await ask(path, inputs[path])
    if (status !== 200) faults.push(`${path}: ${status} ${text}`)
  }
  expect(faults).toEqual([])
}, 300_000)
