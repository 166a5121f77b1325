import sharp from 'sharp'

/** A drawing (SVG) as a photo might come, for a shop that is only invented. */
export function drawnPhoto(svg: string): Promise<Uint8Array> {
  return sharp(new TextEncoder().encode(svg)).png().toBuffer()
}
