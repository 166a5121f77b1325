import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type * as Electron from 'electron'
import { createApp } from '../../api/app.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { findShop } from '../../services/desk/shopView.ts'
import { speaking, systemLanguage } from '../../services/desk/speaking.ts'
import { startBackups } from '../backupTimer.ts'
import { type Claim, claimDataFolder, readRunning } from '../dataFolder.ts'
import { faultTeller } from '../faultTeller.ts'
import { startFollowing } from '../followTimer.ts'
import { openShop } from '../openShop.ts'
import { startOutbox } from '../outboxTimer.ts'
import { windowIsOpen } from '../windowWords.ts'
import { saveDocument } from './documents.ts'
import { menuTemplate } from './menu.ts'
import { keepInside } from './navigation.ts'
import { guardPermissions } from './permissions.ts'
import { appOrigin, privilegedScheme, serveScheme } from './scheme.ts'
import { startOrSay } from './startOrSay.ts'
import { askBeforeClosing } from './unsaved.ts'
import { windowOptions } from './windowOptions.ts'
import { keepWindowState, readWindowState } from './windowState.ts'

export interface Place {
  dataDir: string
  demo: boolean
  /** The copy to restore before anything else; null: none. */
  restore: string | null
  /** Where the built renderer, the migrations and the migration engine lie. */
  rendererDir: string
  migrationsDir: string
  wasmPath: string
}

type Shell = Pick<
  typeof Electron,
  'app' | 'BrowserWindow' | 'dialog' | 'Menu' | 'protocol' | 'screen' | 'session' | 'shell'
>

/**
 * Opens the app in its one window. Must be called before the shell is ready. A second start on the same data folder
 * ends at once and brings the first one's window to the front.
 */
export function startWindow(shell: Shell, place: Place): void {
  const { app, protocol } = shell
  const windowDir = join(place.dataDir, 'window')
  mkdirSync(windowDir, { recursive: true, mode: 0o700 })
  app.setName('Lustrum')
  // The shell's lock belongs to this folder, so that two data folders may be open side by side.
  app.setPath('userData', windowDir)
  if (!app.requestSingleInstanceLock()) {
    app.quit()
    return
  }
  app.enableSandbox()
  protocol.registerSchemesAsPrivileged([privilegedScheme])
  app.whenReady().then(
    () =>
      speaking(systemLanguage(), () =>
        startOrSay(shell, place, restore => open(shell, { ...place, restore }, windowDir)),
      ),
    () => app.exit(1),
  )
}

async function claim(dataDir: string): Promise<Claim> {
  const claimed = claimDataFolder(dataDir, 'desktop')
  if (claimed) return claimed
  const running = await readRunning(dataDir)
  throw new Refusal(
    'already-open',
    '--data',
    dataDir,
    running?.address
      ? say(
          'Lustrum is already open in the browser with the data folder {dataDir}, at {address}. Close it first, or name another folder with --data.',
          { dataDir, address: running.address },
        )
      : say(
          'Lustrum is already open with the data folder {dataDir}. Close it first, or name another folder with --data.',
          { dataDir },
        ),
  )
}

async function open(shell: Shell, place: Place, windowDir: string): Promise<void> {
  const { app, BrowserWindow, dialog, Menu, protocol, screen, session } = shell
  const claimed = await claim(place.dataDir)
  const desk = await openShop(claimed, {
    dataDir: place.dataDir,
    demo: place.demo,
    restore: place.restore,
    migrations: { dir: place.migrationsDir, wasmPath: place.wasmPath },
    say: words => console.log(words),
  })
  // The window's own words are those of the shop as it is opened.
  const language = (await findShop(desk.store.read))?.language ?? systemLanguage()
  const onFault = faultTeller(desk)
  const handler = createApp({ desk, rendererDir: place.rendererDir, onFault })
  const stopFollowing = startFollowing(desk, onFault)
  const stopOutbox = startOutbox(desk, onFault)
  const stopBackups = startBackups(desk, onFault)
  serveScheme(protocol, request => handler.fetch(request))
  app.on('web-contents-created', (_event, contents) =>
    keepInside(contents, {
      openDocument: address =>
        void saveDocument(shell, request => handler.fetch(request), address).catch(onFault),
      // Windows, for one, takes no address longer than 2,081 characters.
      openOutside: address =>
        void shell.shell.openExternal(address).catch(() =>
          dialog.showErrorBox(
            'Lustrum',
            speaking(language, () =>
              say(
                'The system could not open this: it has no program for it, or the text is too long for that program. Copy the text instead.',
              ),
            ),
          ),
        ),
    }),
  )
  guardPermissions(session.defaultSession)
  const menu = speaking(language, () => menuTemplate(process.platform, !app.isPackaged))
  Menu.setApplicationMenu(Menu.buildFromTemplate(menu))

  const state = readWindowState(
    windowDir,
    screen.getAllDisplays().map(display => display.workArea),
  )
  const window = new BrowserWindow(windowOptions(state))
  if (state?.maximized) window.maximize()
  window.once('ready-to-show', () => window.show())
  window.on('close', () => keepWindowState(windowDir, window))
  askBeforeClosing(window, dialog, language)
  app.on('second-instance', () => {
    if (window.isMinimized()) window.restore()
    window.show()
    window.focus()
  })
  app.on('window-all-closed', () => app.quit())
  let closed = false
  app.on('will-quit', event => {
    if (closed) return
    closed = true
    // The shell does not wait for promises: it is held until the database is closed, then let go.
    event.preventDefault()
    Promise.all([stopFollowing(), stopOutbox(), stopBackups()])
      .then(() => desk.store.close())
      .then(
        () => {
          claimed.release()
          app.exit(0)
        },
        error => {
          console.error(error)
          app.exit(1)
        },
      )
  })
  await window.loadURL(`${appOrigin}/`)
  console.log(windowIsOpen)
}
