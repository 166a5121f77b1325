/** Marks drawn as shapes, so that they print sharp at any size: hazard pictograms and QR codes. */
import QrCode from 'qrcode'
import { type PictogramCode, pictogram } from '../../domain/hazard/index.ts'
import type { Pdf } from './pdf.ts'

/** Draws a hazard pictogram `size` points wide, its top left corner at x, y. */
export function drawPictogram(pdf: Pdf, code: PictogramCode, x: number, y: number, size: number): void {
  pdf
    .save()
    .translate(x, y)
    .scale(size / 100)
  for (const { d, fill } of pictogram(code).layers) pdf.path(d).fill(fill)
  pdf.restore()
}

/** A pictogram in words, for who has it read to them. */
export const pictogramAlt = (code: PictogramCode) => `${code}: ${pictogram(code).symbol}`

/** Draws `text` as a QR code `size` points wide with its quiet zone of four modules, middling error correction. */
export function drawQr(pdf: Pdf, text: string, x: number, y: number, size: number): void {
  const { modules } = QrCode.create(text, { errorCorrectionLevel: 'M' })
  const module = size / (modules.size + 8)
  for (let row = 0; row < modules.size; row++)
    for (let column = 0; column < modules.size; column++)
      if (modules.get(row, column))
        pdf.rect(x + (column + 4) * module, y + (row + 4) * module, module, module)
  pdf.fill('#000000')
}
