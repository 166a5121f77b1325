import { EventEmitter } from 'node:events'
import type * as Electron from 'electron'
import { expect, test } from 'vitest'
import { askBeforeClosing } from '../../../main/hosts/desktop/unsaved.ts'
import { strict } from './shell.ts'

// Electron's documentation of `will-prevent-unload`: preventing the event unloads the page all the same.
test.each([
  { answer: 'Stay here', goes: false },
  { answer: 'Leave without saving', goes: true },
])('a window over something not saved is closed only on request: $answer', ({ answer, goes }) => {
  const events = new EventEmitter()
  const window = strict<Electron.BrowserWindow>('window', {
    webContents: strict<Electron.WebContents>('webContents', {
      on: ((name: string, listener: () => void) => events.on(name, listener)) as never,
    }),
  })
  const showMessageBoxSync = ((_over: unknown, { buttons = [] }: Electron.MessageBoxSyncOptions) =>
    buttons.indexOf(answer)) as Electron.Dialog['showMessageBoxSync']
  askBeforeClosing(window, { showMessageBoxSync })
  let left = false
  events.emit('will-prevent-unload', { preventDefault: () => (left = true) })
  expect(left).toBe(goes)
})
