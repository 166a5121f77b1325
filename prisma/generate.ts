import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

/**
 * Writes the typed client. Prisma's command line would first download a schema engine it does not need for this, so
 * it is pointed at an executable that is surely there.
 */
export function generateClient(): void {
  const prisma = fileURLToPath(new URL('../node_modules/prisma/build/index.js', import.meta.url))
  const config = fileURLToPath(new URL('prisma.config.ts', import.meta.url))
  const run = spawnSync(process.execPath, [prisma, 'generate', '--config', config, '--no-hints'], {
    env: { ...process.env, PRISMA_SCHEMA_ENGINE_BINARY: process.execPath, PRISMA_HIDE_UPDATE_MESSAGE: '1' },
    encoding: 'utf8',
  })
  if (run.status !== 0) throw new Error(`prisma generate failed:\n${run.stdout}\n${run.stderr}`)
  writeWords()
}

/** Keeps what the schema says of its tables and columns, which the client drops: an export tells it to its reader. */
function writeWords(): void {
  const dir = new URL('schema/', import.meta.url)
  const words: Record<string, Record<string, string>> = {}
  for (const name of readdirSync(dir).sort()) {
    let model = ''
    let said: string[] = []
    for (const line of readFileSync(new URL(name, dir), 'utf8').split(/\r?\n/)) {
      const [, comment] = /^\s*\/\/\/ ?(.*)$/.exec(line) ?? []
      if (comment !== undefined) {
        said.push(comment)
        continue
      }
      const [, begun] = /^model (\w+)/.exec(line) ?? []
      if (begun) model = begun
      const column = begun ? '' : /^ {2}(\w+) /.exec(line)?.[1]
      if (model && column !== undefined && said.length > 0)
        words[model] = { ...words[model], [column]: said.join(' ') }
      said = []
    }
  }
  const target = fileURLToPath(new URL('../main/store/generated/words.ts', import.meta.url))
  const text = `export const words: Record<string, Record<string, string>> = ${JSON.stringify(words, null, 2)}\n`
  writeFileSync(target, text)
}

if (import.meta.main) generateClient()
