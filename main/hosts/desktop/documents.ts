import { writeFile } from 'node:fs/promises'
import { extname, join } from 'node:path'
import type * as Electron from 'electron'

type Shell = Pick<typeof Electron, 'app' | 'dialog' | 'shell'>

/**
 * Saves a document where the person says, and opens it with the system's own reader. Not in a window of ours: the
 * shell's PDF viewer does not show what comes from a scheme of the app's own (electron/electron#24859).
 */
export async function saveDocument(
  { app, dialog, shell }: Shell,
  fetch: (request: Request) => Response | Promise<Response>,
  address: string,
): Promise<void> {
  const refuse = (words: string) => dialog.showErrorBox('Lustrum', words)
  const answer = await fetch(new Request(address))
  if (!answer.ok) return refuse(await answer.text())
  const name = nameIn(answer.headers.get('content-disposition') ?? '')
  const { filePath } = await dialog.showSaveDialog({ defaultPath: join(app.getPath('documents'), name) })
  if (!filePath) return
  try {
    // As it comes: everything a shop keeps is too much to hold at once.
    await writeFile(filePath, answer.body ?? '')
  } catch (error) {
    return refuse(`${filePath} could not be written (${(error as Error).message}): choose another folder.`)
  }
  // Under another ending the system might run it instead of showing it.
  if (extname(filePath).toLowerCase() !== extname(name)) return
  const fault = await shell.openPath(filePath)
  if (fault) refuse(`It is saved as ${filePath}, but could not be opened: ${fault}`)
}

/** The file's name as the app gave it, without what a file system would take for more than a name. */
function nameIn(disposition: string): string {
  const name = /filename="([^"]*)"/.exec(disposition)?.[1] ?? ''
  return name.replaceAll(/[^\w.\- ]/g, '_').replace(/^\.+/, '') || 'document.pdf'
}
