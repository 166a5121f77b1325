import type * as Electron from 'electron'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { copiesDir } from '../../store/backup/copies.ts'
import { refusedStatus } from '../windowWords.ts'

/** Starts that a copy mends: where the database is at fault, or the copy that was chosen for it. */
const mended = new Set([
  'database-damaged',
  'database-missing',
  'database-foreign',
  'copy-damaged',
  'passphrase-wrong',
])

/**
 * Opens the window, or says why it does not open and ends; where a copy would mend that, the way to choose one stands
 * beside the words, for whoever has never seen a command line.
 */
export async function startOrSay(
  { app, dialog }: Pick<typeof Electron, 'app' | 'dialog'>,
  { dataDir, restore }: { dataDir: string; restore: string | null },
  open: (restore: string | null) => Promise<void>,
): Promise<void> {
  try {
    return await open(restore)
  } catch (error) {
    const refused = error instanceof Refusal
    const words = refused ? error.message : say('Lustrum could not start: {error}', { error: String(error) })
    console.error(words)
    if (refused && mended.has(error.code)) {
      const copy = await chooseCopy(dialog, dataDir, words)
      if (copy !== null) return startOrSay({ app, dialog }, { dataDir, restore: copy }, open)
    } else dialog.showErrorBox('Lustrum', words)
    app.exit(refused ? refusedStatus : 1)
  }
}

/** The copy to start with; null: none, Lustrum is closed. */
async function chooseCopy(dialog: Electron.Dialog, dataDir: string, words: string): Promise<string | null> {
  const { response } = await dialog.showMessageBox({
    type: 'error',
    title: 'Lustrum',
    message: words,
    buttons: [say('Restore from a copy'), say('Close')],
    defaultId: 0,
    cancelId: 1,
  })
  if (response !== 0) return null
  const { filePaths } = await dialog.showOpenDialog({
    title: say('Choose a copy of the shop'),
    defaultPath: copiesDir(dataDir),
    filters: [{ name: say('Copies of a shop'), extensions: ['lustrum-copy'] }],
    properties: ['openFile'],
  })
  // Nothing chosen: back to the words and the two ways on.
  return filePaths[0] ?? chooseCopy(dialog, dataDir, words)
}
