/** The audit lines as the history reads them: by an index, and never changed here. */
import { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

/** The different words in a column, found by leaping from one to the next in its index, however many lines there are. */
export async function wordsIn(tx: Tx, column: 'who' | 'act' | 'entity'): Promise<string[]> {
  const name = Prisma.raw(`"${column}"`)
  const rows = await tx.$queryRaw<{ word: string }[]>`
    with recursive each(word) as (
      select min(${name}) from AuditLine
      union all
      select (select min(${name}) from AuditLine where ${name} > each.word) from each where each.word is not null
    ) select word from each where word is not null limit 1000`
  return rows.map(({ word }) => word)
}
