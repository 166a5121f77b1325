import { beginCheck, beginTake, importStands } from '../../../main/services/imports/importing.ts'
import type { ReadInput } from '../../../main/services/imports/inputs.ts'
import { openFile } from '../../../main/services/imports/opened.ts'
import type { TestDesk } from '../makeDesk.ts'
import { importingEnds } from './ends.ts'

type Kind = Parameters<typeof openFile>[1]['kind']
type Reading = Partial<ReadInput['reading']>

export const openList = (desk: TestDesk, kind: Kind, text: string | Uint8Array, fileName = 'list.csv') =>
  openFile(desk, { kind, fileName, base64: Buffer.from(text as string).toString('base64') })

/** Looks a list through, and gives what was found. */
export async function checkList(desk: TestDesk, kind: Kind, text: string, change: Reading = {}) {
  const { fileId, reading } = await openList(desk, kind, text)
  const input = { fileId, reading: { ...reading, ...change } }
  beginCheck(desk, input)
  await importingEnds(desk)
  return { input, report: importStands(desk).report! }
}

/** The same, taken in. */
export async function takeList(desk: TestDesk, kind: Kind, text: string, change: Reading = {}) {
  const { input } = await checkList(desk, kind, text, change)
  beginTake(desk, input)
  await importingEnds(desk)
  const { report, failed } = importStands(desk)
  if (!report?.importId) throw new Error(failed ?? 'not taken in')
  return { ...report, importId: report.importId }
}
