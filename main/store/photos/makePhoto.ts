import { createHash } from 'node:crypto'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'

/** A photo as it is kept: upright, in plain colours, and without anything the camera wrote into it. */
export interface MadePhoto {
  /** A JPEG. */
  readonly bytes: Uint8Array
  /** The same, small enough for a list. */
  readonly small: Uint8Array
  /** Of `bytes`, hexadecimal: its name. */
  readonly sha256: string
  readonly width: number
  readonly height: number
}

export const mostPhotoBytes = 40 * 1024 * 1024
/** No camera of a phone makes more; beyond it a small file may unpack to gigabytes. */
const mostPixels = 120_000_000
/** A scratch is seen at this length of the long side, and a car of photos still fits a copy. */
const keptSide = 4_096
const smallSide = 480

// Source of the first bytes: ITU-T T.81 (JPEG), PNG (W3C) 5.2, RFC 9649 (WebP).
const heads: readonly (readonly number[])[] = [
  [0xff, 0xd8, 0xff],
  [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
  [0x52, 0x49, 0x46, 0x46],
]

/** What makes pictures, loaded with the first of them. */
async function sharpHere() {
  const { default: sharp } = await import('sharp')
  // One thread a picture, and one picture at a time (below): a burst of large photos leaves the desk its processor.
  sharp.concurrency(1)
  sharp.cache(false)
  return sharp
}

let last: Promise<unknown> = Promise.resolve()

/**
 * Makes what is kept of a photo, in threads of its own. What it is, is read off the file itself, and decoded to its end.
 * @throws Refusal `photo-size` empty or over 40 MB, `photo-type` for what is no photo whatever it is called,
 *   `photo-broken` where a part is missing or it is too large to unpack.
 */
export function makePhoto(bytes: Uint8Array, fileName: string): Promise<MadePhoto> {
  if (bytes.length === 0)
    refuse('photo-size', { photo: fileName }, say('The file is empty; take the photo again.'))
  if (bytes.length > mostPhotoBytes)
    refuse(
      'photo-size',
      { photo: fileName },
      say('The photo is larger than 40 MB; take it at a lower resolution.'),
    )
  if (!heads.some(head => head.every((byte, i) => bytes[i] === byte)))
    refuse(
      'photo-type',
      { photo: fileName },
      say('This is no photo: choose a JPEG, PNG or WebP file. A phone set to HEIC can be set to JPEG.'),
    )
  return inTurn(() => decoded(bytes, fileName))
}

function inTurn<T>(work: () => Promise<T>): Promise<T> {
  const done = last.then(work)
  last = done.catch(() => {})
  return done
}

/** The small one of a photo that was kept. */
export function makeSmall(bytes: Uint8Array): Promise<Uint8Array> {
  return inTurn(() => smallOf(bytes))
}

async function smallOf(bytes: Uint8Array): Promise<Uint8Array> {
  const sharp = await sharpHere()
  return sharp(bytes)
    .resize(smallSide, smallSide, { fit: 'inside', withoutEnlargement: true })
    .jpeg({ quality: 76 })
    .toBuffer()
}

async function decoded(bytes: Uint8Array, fileName: string): Promise<MadePhoto> {
  const sharp = await sharpHere()
  try {
    const kept = await sharp(bytes, { failOn: 'truncated', limitInputPixels: mostPixels })
      .autoOrient()
      .resize(keptSide, keptSide, { fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#fff' })
      .jpeg({ quality: 86 })
      .toBuffer({ resolveWithObject: true })
    const small = await smallOf(kept.data)
    const { width, height } = kept.info
    const sha256 = createHash('sha256').update(kept.data).digest('hex')
    return { bytes: kept.data, small, sha256, width, height }
  } catch {
    return refuse(
      'photo-broken',
      { photo: fileName },
      say('This photo is broken or too large to open: take it again, or send the original file.'),
    )
  }
}
