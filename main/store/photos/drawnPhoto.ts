/** A drawing (SVG) as a photo might come, for a shop that is only invented. */
export async function drawnPhoto(svg: string): Promise<Uint8Array> {
  const { default: sharp } = await import('sharp')
  return sharp(new TextEncoder().encode(svg)).png().toBuffer()
}
