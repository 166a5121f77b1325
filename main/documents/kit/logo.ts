import type { Pdf } from './pdf.ts'

/** The shop's mark: a PNG or JPEG as it was uploaded. */
export interface Logo {
  bytes: Uint8Array
  /** Pixels. */
  width: number
  height: number
}

/** How large a logo stands in a box it is fitted into, in points. */
export function logoSize(
  logo: Logo,
  most: { width: number; height: number },
): { width: number; height: number } {
  const scale = Math.min(most.width / logo.width, most.height / logo.height)
  return { width: logo.width * scale, height: logo.height * scale }
}

/** Draws the logo with its top left corner at x, y. */
export function drawLogo(
  pdf: Pdf,
  logo: Logo,
  x: number,
  y: number,
  size: { width: number; height: number },
): void {
  // The package takes bytes of a Node buffer only.
  pdf.image(Buffer.from(logo.bytes), x, y, size)
}
