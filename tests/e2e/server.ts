import { type ChildProcess, execFileSync, spawn } from 'node:child_process'
import { once } from 'node:events'
import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { askEntrance } from '../../main/hosts/web/entrances.ts'
import { clockEnv } from '../setup/clock.ts'
import { demoFolder } from './demoFolder.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

export interface ServerOptions {
  /** The instant the server's clock starts at, as 2026-04-15T07:40:00Z. */
  now: string
  /** Begin with the demo shop. */
  demo?: boolean | undefined
  /** Begin with a generated shop of so many years, whose present is `yearsNowAt`; the demo's rows are among its own. */
  years?: number | undefined
  /** More environment, such as the address of a mail server the test started. */
  env?: Record<string, string> | undefined
}

/** The real server, started by the real command, on a data folder of its own. */
export class ShopServer {
  /** The address that let the last browser in. */
  entrance = ''
  readonly dataDir = mkdtempSync(join(tmpdir(), 'lustrum-e2e-'))
  readonly #options: ServerOptions
  #process: ChildProcess | null = null
  #output = ''
  /** How often it was started; at which start each page was let in, and whether it has been sent elsewhere since. */
  #starts = 0
  readonly #letIn = new WeakMap<Page, { start: number; moved: boolean }>()

  constructor(options: ServerOptions) {
    this.#options = options
  }

  /** Where the app is, without the secret. */
  get address(): string {
    return new URL(this.entrance).origin
  }

  /** All that the server has said, over all its starts. */
  get output(): string {
    return this.#output
  }

  async start(now = this.#options.now): Promise<void> {
    if (this.#options.years && readdirSync(this.dataDir).length === 0)
      fillYears(this.dataDir, this.#options.years)
    if (this.#options.demo && readdirSync(this.dataDir).length === 0)
      cpSync(await demoFolder(now, () => filledWithDemo(now)), this.dataDir, { recursive: true })
    await this.#spawn(now)
  }

  /** Fills its empty folder with the demo shop by the real command, and ends in good order. */
  async fillDemo(): Promise<void> {
    await this.#spawn(this.#options.now, ['--demo'])
    await this.stop()
  }

  async #spawn(now: string, more: string[] = []): Promise<void> {
    this.#starts++
    const args = ['main/hosts/start.mjs', '--host', 'web', '--no-open', '--data', this.dataDir, '--port', '0']
    const child = spawn(process.execPath, [...args, ...more], {
      cwd: root,
      env: { ...process.env, ...clockEnv(), ...this.#options.env, LUSTRUM_NOW: now },
      stdio: ['ignore', 'pipe', 'pipe'],
    })
    this.#process = child
    const from = this.#output.length
    await new Promise<void>((resolve, reject) => {
      const timer = setTimeout(() => reject(new Error(`The server did not start:\n${this.#output}`)), 200_000)
      const hear = (chunk: Buffer) => {
        this.#output += chunk
        const entrance = /open at (http:\S+)/.exec(this.#output.slice(from))?.[1]
        if (!entrance) return
        this.entrance = entrance
        clearTimeout(timer)
        resolve()
      }
      child.stdout.on('data', hear)
      child.stderr.on('data', hear)
      child.once('exit', code => {
        clearTimeout(timer)
        reject(new Error(`The server ended with ${code}:\n${this.#output.slice(from)}`))
      })
    })
  }

  /** Ends it as pulling the plug would: no last word, nothing tidied. */
  async kill(): Promise<void> {
    await this.#end('SIGKILL')
  }

  /** Asks it to close. */
  async stop(): Promise<void> {
    await this.#end('SIGTERM')
  }

  async #end(signal: NodeJS.Signals): Promise<void> {
    const child = this.#process
    this.#process = null
    if (!child || child.exitCode !== null || child.signalCode !== null) return
    child.kill(signal)
    await once(child, 'exit')
  }

  /** Starts it again on the same data, after `kill` or `stop`; `now` sets its clock anew. */
  async restart(now?: string): Promise<void> {
    await this.stop()
    await this.start(now)
  }

  /** Lets the page in, unless this start has, and goes to a screen. */
  async enter(page: Page, path = '/'): Promise<void> {
    const letIn = this.#letIn.get(page)
    if (letIn?.start === this.#starts && page.url().startsWith(`${this.address}/`)) {
      // The first screen after the entrance has nothing to lose by not being loaded anew; later ones begin afresh.
      if (letIn.moved || path === '/') await page.goto(this.address + path)
      else await goOn(page, path)
      letIn.moved = true
      return
    }
    this.entrance = await this.#newEntrance()
    await page.goto(this.entrance)
    await page.waitForURL(({ pathname }) => !pathname.startsWith('/enter/'))
    this.#letIn.set(page, { start: this.#starts, moved: path !== '/' })
    if (path !== '/') await goOn(page, path)
  }

  /** Each lets one browser in, once. Busy, or on a connection just closed, a server may leave the first call unanswered. */
  async #newEntrance(): Promise<string> {
    for (let tries = 0; tries < 6; tries++) {
      const entrance = await askEntrance(this.dataDir)
      if (entrance) return entrance
    }
    throw new Error(`The server gives no entrance:\n${this.#output}`)
  }

  /** Ends it and takes its data away. */
  async remove(): Promise<void> {
    await this.kill()
    rmSync(this.dataDir, { recursive: true, force: true })
  }
}

function fillYears(dataDir: string, years: number): void {
  const script = fileURLToPath(new URL('../bench/years/fillFolder.ts', import.meta.url))
  execFileSync(process.execPath, [script, dataDir, String(years)], { cwd: root, stdio: 'inherit' })
}

async function filledWithDemo(now: string): Promise<string> {
  const shop = new ShopServer({ now })
  try {
    await shop.fillDemo()
    return shop.dataDir
  } catch (error) {
    await shop.remove()
    throw error
  }
}

/** Goes to a screen of the app that the page shows, without loading it anew. */
export async function goOn(page: Page, path: string): Promise<void> {
  await page.evaluate(to => history.pushState({}, '', to), path)
}
