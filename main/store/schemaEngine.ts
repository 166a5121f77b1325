import { readFile } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { bindMigrationAwareSqlAdapterFactory } from '@prisma/driver-adapter-utils'
import * as engine from '@prisma/schema-engine-wasm/schema_engine_bg'
import { sqliteAdapter } from './sqlite.ts'

type Engine = Awaited<ReturnType<typeof engine.SchemaEngine.new>>

let loading: Promise<void> | undefined

// More than its types tell of.
const whole: object = engine

/** Prisma's own migration engine; its WebAssembly is loaded by hand because Node cannot import it as a module. */
async function loadWasm(wasmPath?: string): Promise<void> {
  const path =
    wasmPath ??
    createRequire(import.meta.url)
      .resolve('@prisma/schema-engine-wasm/schema_engine_bg')
      .replace(/\.js$/, '.wasm')
  const { instance } = await WebAssembly.instantiate(await readFile(path), {
    './schema_engine_bg.js': whole as WebAssembly.ModuleImports,
  })
  const internals = whole as { __wbg_set_wasm(wasm: WebAssembly.Exports): void }
  internals.__wbg_set_wasm(instance.exports)
  ;(instance.exports.__wbindgen_start as () => void)()
}

/**
 * Runs `work` with the migration engine on a scratch database file, and lets go of the file afterwards: the engine
 * waits for the disk after every statement where it may, which a file that nobody uses yet does not need. `datamodels`
 * are schema files as [path, content].
 */
export async function withSchemaEngine<T>(
  file: string,
  work: (engine: Engine) => Promise<T>,
  datamodels?: [string, string][],
  wasmPath?: string,
): Promise<T> {
  loading ??= loadWasm(wasmPath)
  await loading
  const sqlite = sqliteAdapter(file, 'scratch')
  const connections: { dispose(): Promise<void> }[] = []
  const connect = sqlite.connect.bind(sqlite)
  sqlite.connect = async () => {
    const connection = await connect()
    connections.push(connection)
    return connection
  }
  const factory = bindMigrationAwareSqlAdapterFactory(sqlite)
  const instance = await engine.SchemaEngine.new({ datamodels }, () => undefined, factory)
  try {
    return await work(instance)
  } finally {
    instance.free()
    // The engine takes the file for itself and does not close what it opened.
    for (const connection of connections) await connection.dispose()
  }
}
