import type { BrowserWindow, Dialog } from 'electron'

/** Asks before the window closes over something not saved; the shell by itself would keep it open without a word. */
export function askBeforeClosing(window: BrowserWindow, dialog: Pick<Dialog, 'showMessageBoxSync'>): void {
  window.webContents.on('will-prevent-unload', event => {
    const answer = dialog.showMessageBoxSync(window, {
      type: 'question',
      message: 'Not saved yet',
      detail: 'What you typed would be lost.',
      buttons: ['Stay here', 'Leave without saving'],
      defaultId: 0,
      cancelId: 0,
    })
    // To prevent what would prevent the unloading is to let the page go.
    if (answer === 1) event.preventDefault()
  })
}
