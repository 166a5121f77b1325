import { spawn } from 'node:child_process'

/** Asks the desktop to open an address; where it cannot, the printed address is still there. */
export function openBrowser(address: string): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', address]
        : ['xdg-open', address]
  spawn(command!, args, { stdio: 'ignore', detached: true })
    .on('error', () => {})
    .unref()
}
