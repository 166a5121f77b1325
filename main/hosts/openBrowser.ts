import { spawn } from 'node:child_process'
import { rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const pageFile = (dataDir: string) => join(dataDir, 'open.html')

/**
 * Asks the desktop to open an address; where it cannot, the printed address is still there. The address ends in a
 * secret and a command line can be read by every user of the computer, so what is opened is a page in the data folder,
 * readable by this user alone, that leads on.
 */
export function openBrowser(dataDir: string, address: string): void {
  const page = pageFile(dataDir)
  forgetPage(dataDir)
  writeFileSync(
    page,
    `<!doctype html><title>Lustrum</title><meta http-equiv="refresh" content="0;url=${address}">`,
    {
      mode: 0o600,
    },
  )
  const [command, ...args]: [string, ...string[]] =
    process.platform === 'darwin'
      ? ['open', page]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', page]
        : ['xdg-open', page]
  spawn(command, args, { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref()
}

/** Removes the page: it has been followed, or the app closes. */
export function forgetPage(dataDir: string): void {
  rmSync(pageFile(dataDir), { force: true })
}
