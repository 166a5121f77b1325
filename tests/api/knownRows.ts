import type { Store } from '../../main/store/store.ts'

/** The rows of a shop that an input may name, by table, each with the version it is at. */
export type KnownRows = Map<string, Map<string, number>>

/** Some rows of every table that has ids; looked up anew now and then, as acts add and change them. */
export async function knownRows({ read }: Store, random: () => number): Promise<KnownRows> {
  const tables = await read.$queryRaw<{ name: string; versioned: number }[]>`
    select t.name, exists (select 1 from pragma_table_info(t.name) where name = 'version') as versioned
    from sqlite_master t join pragma_table_info(t.name) c
    where t.type = 'table' and t.name not like '\\_%' escape '\\' and c.name = 'id' and c.type = 'TEXT'`
  const known: KnownRows = new Map()
  const stride = 1 + Math.floor(random() * 96)
  for (const { name, versioned } of tables) {
    const rows = await read.$queryRawUnsafe<{ id: string; version: number }[]>(
      `select id, ${versioned ? 'version' : '1 as version'} from "${name}" order by (rowid * ${stride}) % 97 limit 20`,
    )
    if (rows.length > 0) known.set(name, new Map(rows.map(({ id, version }) => [id, Number(version)])))
  }
  return known
}

/** Tables with a word of a field's name in theirs, as `vehicleId` means `Vehicle`; all where none has. */
export function tablesFor(known: KnownRows, field: string): string[] {
  const stem = field.replace(/Ids?$|s$/, '').toLowerCase()
  const tables = [...known.keys()]
  const kin = tables.filter(table => table.toLowerCase().includes(stem))
  return kin.length > 0 ? kin : tables
}
