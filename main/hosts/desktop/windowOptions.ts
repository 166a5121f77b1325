import type { BrowserWindowConstructorOptions } from 'electron'
import type { WindowState } from './windowState.ts'

/** How the one window is made: a page in a sandbox, apart from everything of Node's, with no channel but the scheme. */
export function windowOptions(state: WindowState | null): BrowserWindowConstructorOptions {
  return {
    ...(state?.bounds ?? { width: 1366, height: 820 }),
    minWidth: 800,
    minHeight: 560,
    title: 'Lustrum',
    backgroundColor: '#f6f4ef',
    // Shown once it has something to show.
    show: false,
    webPreferences: {
      contextIsolation: true,
      sandbox: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      webviewTag: false,
      navigateOnDragDrop: false,
      safeDialogs: true,
      spellcheck: false,
    },
  }
}
