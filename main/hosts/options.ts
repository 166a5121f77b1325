import { homedir } from 'node:os'
import { join, resolve } from 'node:path'
import { parseArgs } from 'node:util'
import { Refusal } from '../domain/refusal.ts'

export interface Options {
  host: 'desktop' | 'web'
  /** 0: the port of last time, or any that is free. */
  port: number
  dataDir: string
  demo: boolean
  open: boolean
  /** The copy to restore before anything else; null: none. */
  restore: string | null
}

/** Where this platform keeps an app's data. */
export function usualDataDir(platform: NodeJS.Platform, env: NodeJS.ProcessEnv, home: string): string {
  if (platform === 'win32') return join(env.APPDATA ?? join(home, 'AppData', 'Roaming'), 'Lustrum')
  if (platform === 'darwin') return join(home, 'Library', 'Application Support', 'Lustrum')
  return join(env.XDG_DATA_HOME || join(home, '.local', 'share'), 'lustrum')
}

/** The flags of `npm start`. Refuses what it does not know, naming it. */
export function readOptions(args: string[], env: NodeJS.ProcessEnv = process.env): Options {
  let values: {
    host?: string
    port?: string
    data?: string
    demo?: boolean
    'no-open'?: boolean
    restore?: string
  }
  try {
    values = parseArgs({
      args,
      options: {
        host: { type: 'string' },
        port: { type: 'string' },
        data: { type: 'string' },
        demo: { type: 'boolean' },
        'no-open': { type: 'boolean' },
        restore: { type: 'string' },
      },
    }).values
  } catch (error) {
    throw new Refusal(
      'bad-flag',
      'arguments',
      args,
      `${(error as Error).message} Known: --host desktop|web, --port N, --data DIR, --demo, --no-open, --restore FILE.`,
    )
  }
  const host = values.host ?? 'desktop'
  if (host !== 'desktop' && host !== 'web')
    throw new Refusal('bad-flag', '--host', host, `--host "${host}" is not known: use desktop or web.`)
  const port = Number(values.port ?? 0)
  if (!Number.isInteger(port) || port < 0 || port > 65_535)
    throw new Refusal(
      'bad-flag',
      '--port',
      values.port,
      `--port "${values.port}" is no port: use a whole number from 1 to 65535.`,
    )
  return {
    host,
    port,
    dataDir: resolve(values.data ?? usualDataDir(process.platform, env, homedir())),
    demo: values.demo ?? false,
    open: !(values['no-open'] ?? false),
    restore: values.restore === undefined ? null : resolve(values.restore),
  }
}
