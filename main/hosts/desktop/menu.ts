import type { BaseWindow, BrowserWindow, MenuItemConstructorOptions } from 'electron'
import { say } from '../../domain/language/index.ts'

/** The menu: what a desktop expects, and nothing that the screens do themselves. */
export function menuTemplate(platform: NodeJS.Platform, developing: boolean): MenuItemConstructorOptions[] {
  const print: MenuItemConstructorOptions = {
    label: say('Print…'),
    accelerator: 'CmdOrCtrl+P',
    click: (_item, window?: BaseWindow) => (window as BrowserWindow | undefined)?.webContents.print(),
  }
  return [
    ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: say('&File'),
      submenu: [print, { type: 'separator' }, platform === 'darwin' ? { role: 'close' } : { role: 'quit' }],
    },
    { role: 'editMenu' },
    {
      label: say('&View'),
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        ...(developing
          ? ([{ type: 'separator' }, { role: 'reload' }, { role: 'toggleDevTools' }] as const)
          : []),
      ],
    },
    { role: 'windowMenu' },
  ]
}
