import Database from 'better-sqlite3'

interface Column {
  name: string
  type: string
  pk: number
}

/** Who did it and what it is filed under is nobody's free text; the rest is. */
const filed =
  /^(who|by|signedBy|act|entity|kind|productName|warnings|status|state|slots|id|code|hash|mailId|date|columns|.*(Id|On))$/

function columnsOf(database: Database.Database, table: string): Column[] {
  return (database.pragma(`table_info("${table}")`) as Column[]).filter(({ type }) => /TEXT|JSONB/.test(type))
}

function tablesOf(database: Database.Database): string[] {
  const all = database
    .prepare("select name from sqlite_master where type = 'table'")
    .pluck()
    .all() as string[]
  return all.filter(name => !/^(sqlite_|_prisma)/.test(name))
}

/** Writes the words into every text of every table that has a row: behind what stands there, or into the JSON. */
export function plant(file: string, words: string): string[] {
  const database = new Database(file)
  const planted: string[] = []
  database.pragma('foreign_keys = off')
  // What is never changed lets its words be written only while an erasure is open.
  database.prepare(`insert into "Erasure" values ('plant', 1, 'test', 0)`).run()
  for (const table of tablesOf(database)) {
    // What the shop is set to must go on being readable.
    if (/^(Erasure|Shop|UpkeepSettings)$/.test(table)) continue
    for (const { name, type, pk } of columnsOf(database, table)) {
      if (pk || filed.test(name)) continue
      const fresh = type === 'TEXT' ? `coalesce("${name}", '') || ?` : 'json_array(?)'
      const one = `rowid = (select max(rowid) from "${table}")`
      const { changes } = database
        .prepare(`update "${table}" set "${name}" = ${fresh} where ${one}`)
        .run(words)
      if (changes > 0) planted.push(`${table}.${name}`)
    }
  }
  database.prepare(`update "Erasure" set "done" = 1`).run()
  database.close()
  return planted
}

/** Every column in which one of the patterns is found. */
export function columnsWith(file: string, patterns: readonly RegExp[]): string[] {
  const database = new Database(file, { readonly: true })
  const found = tablesOf(database).flatMap(table =>
    columnsOf(database, table)
      .filter(({ name }) =>
        database
          .prepare(`select cast("${name}" as text) from "${table}" where "${name}" is not null`)
          .pluck()
          .all()
          .some(text => patterns.some(pattern => pattern.test(String(text)))),
      )
      .map(({ name }) => `${table}.${name}`),
  )
  database.close()
  return found
}

/** Edda and her gate code 4411, but where an id spells them by chance. */
export const eddaOutsideIds = /(?<![\da-f-])(edda(?! marshall)|4411)(?![\da-f-])/i
