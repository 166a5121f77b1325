import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/** One measured number; a bench file exports `async function* run()` that yields them. */
export interface Figure {
  bench: string
  /** What was measured, as in "12 bays, 500 stays". */
  case: string
  value: number
  /** ms, ratio, count, %, ... */
  unit: string
  /** The goal in words, or null where the number is only for information. */
  goal: string | null
  /** Whether the goal was met; null where there is none. */
  met: boolean | null
}

const names = [
  'promise',
  'shelf',
  'upkeep',
  'cure',
  'years',
  'intake',
  'papers',
  'plan',
  'board',
  'safety',
  'undo',
]

const fileOf = (name: string) => fileURLToPath(new URL(`./${name}.ts`, import.meta.url))

async function runOne(name: string): Promise<void> {
  const { run } = (await import(fileOf(name))) as { run(): AsyncGenerator<Figure> }
  for await (const figure of run()) console.log(JSON.stringify(figure))
}

if (import.meta.main) {
  const present = names.filter(name => existsSync(fileOf(name)))
  const asked = process.argv.slice(2)
  const unknown = asked.find(name => !present.includes(name))
  if (unknown !== undefined) {
    console.error(`There is no bench "${unknown}": choose of ${present.join(', ') || '(none yet)'}.`)
    process.exit(2)
  }
  if (asked.length === 1) await runOne(asked[0]!)
  // Each in a process of its own, so that none runs in another's heap.
  else
    for (const name of asked.length > 0 ? asked : present) {
      const { status } = spawnSync(process.execPath, [fileURLToPath(import.meta.url), name], {
        stdio: 'inherit',
      })
      if (status !== 0) process.exitCode = 1
    }
}
