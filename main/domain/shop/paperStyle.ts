/** How a shop's papers may look: a colour that can be read on white, and a mark that any printer and reader takes. */
import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'

export const papers = ['A4', 'LETTER'] as const
export type PaperName = (typeof papers)[number]

/** The least contrast of small text with its ground. Source: WCAG 2.1, success criterion 1.4.3. */
const leastContrast = 4.5

/**
 * The contrast of a colour with white, 1 to 21. Source: WCAG 2.1, relative luminance and contrast ratio.
 * @param colour `#rrggbb`
 */
function contrastWithWhite(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map(at => {
    const share = Number.parseInt(colour.slice(at, at + 2), 16) / 255
    return share <= 0.03928 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4
  })
  return 1.05 / (0.2126 * red! + 0.7152 * green! + 0.0722 * blue! + 0.05)
}

/**
 * The colour as it is kept, `#rrggbb` in small letters.
 * @throws Refusal `colour-bad` for anything else, `colour-pale` where headings in it could not be read on white.
 */
export function checkPaperColour(colour: string, field = 'colour'): string {
  const plain = colour.trim().toLowerCase()
  if (!/^#[0-9a-f]{6}$/.test(plain))
    refuse('colour-bad', { [field]: colour }, say('Give the colour as # and six digits, such as #31456b.'))
  if (contrastWithWhite(plain) < leastContrast)
    refuse(
      'colour-pale',
      { [field]: colour },
      say('Too pale to be read on white paper; choose a darker one.'),
    )
  return plain
}

export interface LogoHead {
  type: 'image/png' | 'image/jpeg'
  /** Pixels. */
  width: number
  height: number
  /** Bytes of a PNG's rows once unpacked; null for a JPEG. */
  unpacked: number | null
}

export const logoMostBytes = 1024 * 1024
const [leastSide, mostSide] = [16, 3000]

/**
 * What a logo's file says of itself.
 * Sources: PNG (W3C), 5.2 and 11.2.2; ITU-T T.81, B.2.2 (frame header).
 * @throws Refusal `logo-size`, `logo-type`, `logo-broken`, `logo-form`: too large, not a PNG or JPEG, without its
 * head or end, or in a form that PDF readers do not all take (interlaced, 16 bits, four inks).
 */
export function readLogo(bytes: Uint8Array, field = 'logo'): LogoHead {
  const no = (code: string, words: string): never => refuse(code, { [field]: bytes.length }, words)
  if (bytes.length > logoMostBytes)
    no('logo-size', say('The logo is larger than 1 MB; save it smaller, 1000 pixels wide is plenty.'))
  const head = pngHead(bytes, no) ?? jpegHead(bytes, no)
  if (!head) return no('logo-type', say('A logo is a PNG or a JPEG picture; save it as one of them.'))
  const sides = [head.width, head.height]
  if (sides.some(side => side < leastSide || side > mostSide))
    no(
      'logo-size',
      say('The logo is {width} × {height} pixels; each side is between {leastSide} and {mostSide}.', {
        width: head.width,
        height: head.height,
        leastSide,
        mostSide,
      }),
    )
  return head
}

type No = (code: string, words: string) => never

const broken = word('This picture is broken: a part of it is missing. Save it again and choose it once more.')

function pngHead(bytes: Uint8Array, no: No): LogoHead | null {
  const sign = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
  if (!sign.every((byte, i) => bytes[i] === byte)) return null
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const end = String.fromCharCode(...bytes.subarray(-12))
  if (bytes.length < 57 || view.getUint32(12) !== 0x49484452 || !end.includes('IEND'))
    no('logo-broken', say(broken))
  const [width, height, depth, colours, interlaced] = [16, 20]
    .map(at => view.getUint32(at))
    .concat([bytes[24]!, bytes[25]!, bytes[28]!]) as [number, number, number, number, number]
  if (interlaced !== 0 || depth === 16)
    no('logo-form', say('Save the logo as an ordinary PNG: 8 bits a colour, not interlaced.'))
  const channels = { 0: 1, 2: 3, 3: 1, 4: 2, 6: 4 }[colours]
  if (channels === undefined) return no('logo-broken', say(broken))
  return {
    type: 'image/png',
    width,
    height,
    unpacked: height * (1 + Math.ceil((width * channels * depth) / 8)),
  }
}

function jpegHead(bytes: Uint8Array, no: No): LogoHead | null {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return null
  if (bytes.at(-2) !== 0xff || bytes.at(-1) !== 0xd9) no('logo-broken', say(broken))
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let at = 2
  while (at + 9 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!
    const frame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
    if (frame) {
      if (bytes[at + 9] === 4)
        no('logo-form', say('This JPEG is made for four printing inks; save it in ordinary colours (RGB).'))
      return {
        type: 'image/jpeg',
        height: view.getUint16(at + 5),
        width: view.getUint16(at + 7),
        unpacked: null,
      }
    }
    at += 2 + view.getUint16(at + 2)
  }
  return no('logo-broken', say(broken))
}
