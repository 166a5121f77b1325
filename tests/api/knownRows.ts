import Database from 'better-sqlite3'

/** The rows of a shop that an input may name, by table, each with the version it is at. */
export interface KnownRows {
  tables: ReadonlyMap<string, readonly string[]>
  /** Of every row there, by its id. */
  versions: ReadonlyMap<string, number>
  ids: readonly string[]
}

/** Reads some rows of every table that has ids, others each time; straight from the file, as it is asked for often. */
export function readKnown(file: string): { read(random: () => number): KnownRows; close(): void } {
  const database = new Database(file, { readonly: true })
  const names = database
    .prepare(
      `select t.name, exists (select 1 from pragma_table_info(t.name) where name = 'version') as versioned
       from sqlite_master t join pragma_table_info(t.name) c
       where t.type = 'table' and t.name not like '\\_%' escape '\\' and c.name = 'id' and c.type = 'TEXT'`,
    )
    .all() as { name: string; versioned: number }[]
  const some = names.map(({ name, versioned }) => ({
    name,
    rows: database.prepare(
      `select id, ${versioned ? 'version' : '1 as version'} from "${name}" order by (rowid * ?) % 97 limit 20`,
    ),
  }))
  return {
    read(random) {
      const stride = 1 + Math.floor(random() * 96)
      const tables = new Map<string, string[]>()
      const versions = new Map<string, number>()
      for (const { name, rows } of some) {
        const found = rows.all(stride) as { id: string; version: number }[]
        if (found.length === 0) continue
        tables.set(
          name,
          found.map(({ id }) => id),
        )
        for (const { id, version } of found) versions.set(id, version)
      }
      return { tables, versions, ids: versions.size > 0 ? [...versions.keys()] : ['none'] }
    },
    close: () => database.close(),
  }
}

/** Tables with a word of a field's name in theirs, as `vehicleId` means `Vehicle`; all where none has. */
export function tablesFor(known: KnownRows, field: string): string[] {
  const stem = field.replace(/Ids?$|s$/, '').toLowerCase()
  const tables = [...known.tables.keys()]
  const kin = tables.filter(table => table.toLowerCase().includes(stem))
  return kin.length > 0 ? kin : tables
}
