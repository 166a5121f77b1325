/*
 * The window's process, bundled to .build/main/desktop.mjs: what it needs lies beside it, in the project's .build as
 * in the package.
 */
import './temporal.ts'
import { homedir } from 'node:os'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { app, BrowserWindow, dialog, Menu, protocol, screen, session, shell } from 'electron'
import { usualDataDir } from '../options.ts'
import { startWindow } from './startWindow.ts'

const here = dirname(fileURLToPath(import.meta.url))

// Not strict: the shell has switches of its own on the same line.
const { values } = parseArgs({
  args: process.argv.slice(1),
  options: { data: { type: 'string' }, demo: { type: 'boolean' }, restore: { type: 'string' } },
  strict: false,
})

startWindow(
  { app, BrowserWindow, dialog, Menu, protocol, screen, session, shell },
  {
    dataDir: resolve(
      typeof values.data === 'string' ? values.data : usualDataDir(process.platform, process.env, homedir()),
    ),
    demo: values.demo === true,
    restore: typeof values.restore === 'string' ? resolve(values.restore) : null,
    rendererDir: join(here, '..', 'renderer'),
    migrationsDir: join(here, 'migrations'),
    wasmPath: join(here, 'schema_engine_bg.wasm'),
  },
)
