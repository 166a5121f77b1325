import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

export interface Running {
  pid: number
  host: 'desktop' | 'web'
  /** Where a browser gets in, for the web host. */
  entrance?: string
}

const markFile = (dataDir: string) => join(dataDir, 'running.json')

function alive(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM'
  }
}

/** Whether the process that left the mark is really serving: its number may since belong to another program. */
async function answers(running: Running): Promise<boolean> {
  if (!alive(running.pid)) return false
  if (!running.entrance) return true
  try {
    const answer = await fetch(running.entrance, { redirect: 'manual', signal: AbortSignal.timeout(2_000) })
    return answer.status === 303
  } catch {
    return false
  }
}

/** The app that already serves this data folder, if there is one; one data folder has one app. */
export async function findRunning(dataDir: string): Promise<Running | null> {
  let running: Running
  try {
    running = JSON.parse(readFileSync(markFile(dataDir), 'utf8')) as Running
  } catch {
    return null
  }
  return (await answers(running)) ? running : null
}

/** Leaves the mark, readable by this user only (it holds the entrance); returns how to take it away. */
export function markRunning(dataDir: string, running: Running): () => void {
  mkdirSync(dataDir, { recursive: true })
  rmSync(markFile(dataDir), { force: true })
  writeFileSync(markFile(dataDir), JSON.stringify(running), { mode: 0o600 })
  return () => rmSync(markFile(dataDir), { force: true })
}
