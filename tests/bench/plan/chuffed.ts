import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import type { FloorProblem } from '../../../main/domain/schedule/plan/types.ts'
import { chromiumArgs, findChromium } from '../../e2e/chromium.ts'
import { floorData } from './floorData.ts'

/** What a solver came to: the costs in their order where all of them are proven. */
export interface Theirs {
  readonly costs: number[] | undefined
  /** Seconds of search. */
  readonly seconds: number
  /** Seconds to read the problem and make it ready, where the solver tells them apart. */
  readonly preparing: number
}

export interface Chuffed {
  solve(floor: FloorProblem, limitS: number): Promise<Theirs>
  close(): Promise<void>
}

const library = '/minizinc.mjs'

/** What the page answers of one part of the objective. */
interface Answer {
  readonly status: string
  readonly text: string | null
  readonly seconds: number
  readonly preparing: number
  readonly fault: string | null
}

const kinds: Record<string, string> = {
  '.mjs': 'text/javascript',
  '.js': 'text/javascript',
  '.wasm': 'application/wasm',
}

/**
 * Chuffed, which learns clauses as our own solver does, as WebAssembly in a browser: the package has no other way to
 * run without an installed MiniZinc. Null where there is no browser.
 */
export async function openChuffed(): Promise<Chuffed | null> {
  const executablePath = findChromium()
  if (!executablePath) return null
  const folder = dirname(fileURLToPath(import.meta.resolve('minizinc/minizinc-worker.js')))
  const server = createServer(({ url = '/' }, response) => {
    const name = url.slice(1).replace(/\?.*/, '')
    const kind = kinds[name.slice(name.lastIndexOf('.'))] ?? 'application/octet-stream'
    if (name === '')
      response.setHeader('content-type', 'text/html').end('<!doctype html><title>Chuffed</title>')
    else if (!/^minizinc[\w.-]*$/.test(name)) response.writeHead(404).end()
    else response.setHeader('content-type', kind).end(readFileSync(join(folder, name)))
  })
  await new Promise<void>(done => server.listen(0, '127.0.0.1', done))
  const browser = await chromium.launch({ executablePath, args: chromiumArgs })
  const page = await browser.newPage()
  await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`)
  await page.evaluate(async library => (await import(library)).init({ numWorkers: 1 }), library)
  const model = readFileSync(fileURLToPath(new URL('./floor.mzn', import.meta.url)), 'utf8')
  const ask = (data: object, limitS: number) =>
    page.evaluate(
      async ({ library, model, data, limitMs }): Promise<Answer> => {
        const { Model } = await import(library)
        const asked = new Model()
        asked.addFile('floor.mzn', model)
        asked.addJson(data)
        const options = { solver: 'chuffed', 'free-search': true, statistics: true, 'time-limit': limitMs }
        try {
          const { status, solution, statistics } = await asked.solve({ options })
          const { solveTime: seconds = 0, initTime = 0, flatTime = 0 } = statistics
          const text = solution?.output.default ?? null
          return { status, text, seconds, preparing: initTime + flatTime, fault: null }
        } catch (fault) {
          return { status: 'ERROR', text: null, seconds: 0, preparing: 0, fault: String(fault) }
        }
      },
      { library, model, data, limitMs: limitS * 1000 },
    )
  return {
    async solve(floor, limitS) {
      const data = floorData(floor)
      const held = [0, 0, 0]
      let seconds = 0
      let preparing = 0
      for (const level of [1, 2, 3]) {
        const answer = await ask({ ...data, level, heldTardiness: held[0], heldBlocked: held[1] }, limitS)
        if (answer.fault !== null) throw new Error(`${floor.id} by Chuffed: ${answer.fault}`)
        seconds += answer.seconds
        preparing += answer.preparing
        if (answer.status !== 'OPTIMAL_SOLUTION') return { costs: undefined, seconds, preparing }
        held[level - 1] = Number(answer.text!.split(' ')[level - 1])
      }
      return { costs: held, seconds, preparing }
    },
    async close() {
      await browser.close()
      server.close()
    },
  }
}
