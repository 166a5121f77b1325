import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { fileURLToPath } from 'node:url'
import Database from 'better-sqlite3'
import { inspect } from '../../../main/store/backup/inspect.ts'

const writer = fileURLToPath(new URL('../writer.ts', import.meta.url))

export interface Losses {
  /** Acts that were answered and are not there. */
  lost: number
  /** Acts of which only a part is there. */
  half: number
  /** Starts after which the database could not be read. */
  unreadable: number
}

export const noLosses: Losses = { lost: 0, half: 0, unreadable: 0 }

/** What the writer was answered, told against what is in the file: acts are numbered from 1 on without a gap. */
export function tally(file: string, answered: number): Losses {
  try {
    if (inspect(file).fault !== null) return { ...noLosses, unreadable: 1 }
  } catch {
    return { ...noLosses, unreadable: 1 }
  }
  const database = new Database(file, { readonly: true })
  try {
    const count = (sql: string) => database.prepare(sql).pluck().get() as number
    const customers = count('select count(*) from Customer')
    const vehicles = count(
      "select count(*) from Vehicle v join Customer c on c.id = v.customerId and c.name = 'Customer ' || substr(v.plate, 2)",
    )
    const lines = count("select count(*) from AuditLine where act = 'made'")
    return {
      lost: Math.max(0, answered - Math.min(customers, vehicles, lines)),
      half: Math.max(customers, vehicles, lines) - Math.min(customers, vehicles, lines),
      unreadable: 0,
    }
  } finally {
    database.close()
  }
}

/** Runs the writer on a database and kills it after `patience` ms of writing; the last number it was answered. */
export async function writeUntilKilled(file: string, first: number, patience: number): Promise<number> {
  const child = spawn(process.execPath, [writer, file, String(first)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  let output = ''
  child.stdout.on('data', chunk => {
    output += chunk
  })
  while (!output.includes(`\n${first}\n`)) await once(child.stdout, 'data')
  await new Promise(resolve => setTimeout(resolve, patience))
  child.kill('SIGKILL')
  await once(child, 'close')
  return Number(output.slice(0, output.lastIndexOf('\n')).split('\n').at(-1))
}
