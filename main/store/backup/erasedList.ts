/*
 * Who was erased, by id and nothing else, beside the copies: a copy made before an erasure still holds the person, and
 * its database knows nothing of it.
 */
import { mkdir, open, readFile, rename } from 'node:fs/promises'
import { join } from 'node:path'

/** Epoch minutes of erasures, by the customer's id. */
export type ErasedList = Readonly<Record<string, number>>

const listFile = (folder: string) => join(folder, 'lustrum-erased.json')

/** The list in a folder of copies; nobody where there is none, or it cannot be read. */
export async function readErased(folder: string): Promise<ErasedList> {
  try {
    const kept = Object.entries(JSON.parse(await readFile(listFile(folder), 'utf8')) as object)
    return Object.fromEntries(kept.filter(([, at]) => Number.isSafeInteger(at)))
  } catch {
    return {}
  }
}

/** Adds to the list in a folder of copies; who is on it stays. Not by `writeWhole`: the folder may be far away. */
export async function addErased(folder: string, more: ErasedList): Promise<void> {
  const before = await readErased(folder)
  if (Object.keys(more).every(id => id in before)) return
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const fresh = `${listFile(folder)}.new`
  const file = await open(fresh, 'w', 0o600)
  try {
    await file.writeFile(JSON.stringify({ ...more, ...before }))
    await file.sync()
  } finally {
    await file.close()
  }
  await rename(fresh, listFile(folder))
}
