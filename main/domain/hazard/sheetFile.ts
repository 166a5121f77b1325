/**
 * Whether bytes are a data sheet that came whole. What a file is, is read off the file itself: its head says what it is,
 * its tail whether the rest of it arrived.
 */
import { say } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export type SheetType = 'application/pdf' | 'image/png' | 'image/jpeg'

const mostBytes = 15 * 1024 * 1024

interface Kind {
  readonly type: SheetType
  readonly head: readonly number[]
  whole(bytes: Uint8Array): boolean
}

// Sources: ISO 32000-1, 7.5.2 and 7.5.5; PNG (W3C), 5.2 and 11.2.5; ITU-T T.81, table B.1 (SOI, EOI).
const kinds: readonly Kind[] = [
  { type: 'application/pdf', head: [0x25, 0x50, 0x44, 0x46, 0x2d], whole: pdfWhole },
  {
    type: 'image/png',
    head: [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    whole: bytes => tail(bytes, 64).includes('IEND'),
  },
  { type: 'image/jpeg', head: [0xff, 0xd8, 0xff], whole: bytes => tail(bytes, 64).includes('\xff\xd9') },
]

/**
 * The type of a data sheet: a PDF, or a picture of one.
 * @throws Refusal `file-size` empty or over 15 MB, `file-type` of another kind, `file-broken` where its end is missing.
 */
export function sheetTypeOf(bytes: Uint8Array, fileName: string): SheetType {
  if (bytes.length === 0) refuse('file-size', { file: 0 }, say('The file is empty.'))
  if (bytes.length > mostBytes)
    refuse(
      'file-size',
      { file: bytes.length },
      say('The file is larger than 15 MB; scan it at a lower resolution.'),
    )
  const kind = kinds.find(({ head }) => head.every((byte, i) => bytes[i] === byte))
  if (!kind)
    refuse('file-type', { file: fileName }, say('A data sheet is a PDF, or a picture (PNG, JPEG) of one.'))
  if (!kind.whole(bytes))
    refuse(
      'file-broken',
      { file: fileName },
      say(
        'This file is broken: its end is missing. Download it again, open it to look, then choose it here.',
      ),
    )
  return kind.type
}

/** A PDF ends with where its table of objects starts, and with `%%EOF` (readers look for it in the last kilobyte). */
function pdfWhole(bytes: Uint8Array): boolean {
  const end = tail(bytes, 1024)
  const startsAt = /startxref\s+(\d+)\s+%%EOF[^%]*$/.exec(end)?.[1]
  return startsAt !== undefined && Number(startsAt) < bytes.length
}

function tail(bytes: Uint8Array, length: number): string {
  return String.fromCharCode(...bytes.subarray(Math.max(0, bytes.length - length)))
}
