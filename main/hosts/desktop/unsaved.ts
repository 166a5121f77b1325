import type { BrowserWindow, Dialog } from 'electron'
import { type Language, languageNow, say } from '../../domain/language/index.ts'
import { speaking } from '../../services/desk/speaking.ts'

/** Asks before the window closes over something not saved; the shell by itself would keep it open without a word. */
export function askBeforeClosing(
  window: BrowserWindow,
  dialog: Pick<Dialog, 'showMessageBoxSync'>,
  language: Language = languageNow(),
): void {
  window.webContents.on('will-prevent-unload', event => {
    const words = speaking(language, () => ({
      message: say('Not saved yet'),
      detail: say('What you typed would be lost.'),
      buttons: [say('Stay here'), say('Leave without saving')],
    }))
    const answer = dialog.showMessageBoxSync(window, {
      type: 'question',
      ...words,
      defaultId: 0,
      cancelId: 0,
    })
    // To prevent what would prevent the unloading is to let the page go.
    if (answer === 1) event.preventDefault()
  })
}
