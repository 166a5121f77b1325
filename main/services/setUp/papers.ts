/** How the shop's papers look: on which paper, in which colour, under which mark. */

import { createHash } from 'node:crypto'
import { inflateSync } from 'node:zlib'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import {
  checkPaperColour,
  checkText,
  type LogoHead,
  type PaperName,
  readLogo,
} from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { paperStyleOf } from '../desk/issuer.ts'
import { saveSingle } from '../desk/keep.ts'
import type { PapersInput } from './inputs.ts'

export type PapersView = Awaited<ReturnType<typeof getPapers>>

/** How the papers look now, the logo as its file's name. */
export async function getPapers(desk: Desk) {
  const { paper, colour, version, logo } = await paperStyleOf(desk.store.read)
  return { paper: paper as PaperName | null, colour, version, logoName: logo?.name ?? null }
}

/** Saves it; a logo left out stays as it is, null takes it off. The file before stays in the records. */
export async function savePapers(desk: Desk, input: PapersInput): Promise<{ version: number }> {
  const colour = checkPaperColour(input.colour)
  const head = input.logo ? readLogo(input.logo.bytes) : null
  if (head && input.logo) assertWhole(input.logo.bytes, head)
  return act(desk, async (tx, audit) => {
    const file = input.logo && head ? await keptLogo(tx, desk, input.logo, head) : null
    const data = {
      paper: input.paper,
      colour,
      ...(input.logo !== undefined && { logoFileId: file?.id ?? null }),
    }
    const kept = { table: tx.paperStyle, entity: 'papers' }
    const { version } = await saveSingle(audit, kept, { key: { id: 1 }, version: input.version }, data)
    return { version }
  })
}

function keptLogo(
  tx: Tx,
  desk: Desk,
  { fileName, bytes }: { fileName: string; bytes: Uint8Array },
  head: LogoHead,
) {
  return tx.storedFile.create({
    data: {
      name: checkText(fileName.replaceAll(/[/\\]/g, ' '), 'logo', say('The name of the file'), 120),
      type: head.type,
      bytes: new Uint8Array(bytes),
      size: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
      at: desk.now(),
      who: desk.who,
    },
  })
}

/** Refuses a PNG whose rows are not all there; what it unpacks to is bounded by what its head says. */
function assertWhole(bytes: Uint8Array, { unpacked }: LogoHead): void {
  if (unpacked === null) return
  const parts: Uint8Array[] = []
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at)) {
    const length = view.getUint32(at)
    if (view.getUint32(at + 4) === 0x49444154) parts.push(bytes.subarray(at + 8, at + 8 + length))
  }
  const size = () => {
    try {
      return inflateSync(Buffer.concat(parts), { maxOutputLength: unpacked + 1 }).length
    } catch {
      return -1
    }
  }
  if (size() !== unpacked)
    refuse(
      'logo-broken',
      { logo: bytes.length },
      say('This picture is broken; save it again and choose it once more.'),
    )
}
