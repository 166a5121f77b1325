/** The intake report: one signed page of the car as it came, with the drawing of its marks and its photos. */
import { type BodyShape, drawCar, pictureSize, type Severity } from '../domain/intake/index.ts'
import { say } from '../domain/language/index.ts'
import type { Fact, Issuer } from './kit/frame.ts'
import { linesOf } from './kit/lines.ts'
import { makeSheet } from './kit/makeSheet.ts'
import type { Paper } from './kit/pdf.ts'
import { ink, quiet, type Sheet } from './kit/sheet.ts'
import { drawFacts, drawTable } from './kit/table.ts'
import { drawLine, heightOf } from './kit/write.ts'

export interface IntakeReport {
  at: number
  paper: Paper
  issuer: Issuer
  /** `Intake of KFR 204` */
  title: string
  /** `job 12, page 1` */
  reference: string
  to: readonly string[]
  facts: readonly Fact[]
  car: readonly Fact[]
  /** What this page corrects, or by which it is corrected; empty: neither. */
  standing: readonly string[]
  shape: BodyShape
  /** In the coordinates of the drawing; each in words too. */
  marks: readonly { x: number; y: number; severity: Severity; words: string }[]
  thickness: readonly { panel: string; readings: string; typical: string; least: string; says: string }[]
  /** What the thickness was judged by. */
  judged: string
  /** JPEGs, each with its name; null: it is not there any more. */
  photos: readonly { name: string; jpeg: Uint8Array | null; width: number; height: number }[]
  signed: string
  /** The path of the signature, 600 wide and 200 high; null: the typed name stands for it. */
  signature: string | null
}

/** The report as a PDF. */
export function intakeReportPdf(report: IntakeReport): Promise<Uint8Array<ArrayBuffer>> {
  const { at, paper, issuer, title, reference, to, facts } = report
  return makeSheet({ title, at, paper, issuer, reference, to, facts }, sheet => {
    for (const words of report.standing) sheet.paragraph(words, { font: 'bold' })
    sheet.heading(say('The car as it came'))
    drawFacts(sheet, report.car)
    sheet.heading(say('Marks'))
    drawMarks(sheet, report)
    if (report.thickness.length > 0) drawThickness(sheet, report)
    if (report.photos.length > 0) drawPhotos(sheet, report.photos)
    sheet.heading(say('Signed'))
    const { signature } = report
    if (signature !== null)
      sheet.figure(
        say('Signature: {words}', { words: report.signed }),
        (x, y) => {
          const { pdf } = sheet
          pdf.save().translate(x, y).scale(0.3)
          pdf.path(signature).lineWidth(4).strokeColor(ink).stroke()
          pdf.restore()
        },
        { width: 180, height: 60 },
      )
    sheet.paragraph(report.signed)
  })
}

const line = '#8a8f98'
const fill: Readonly<Record<Severity, string>> = { light: '#ffffff', moderate: '#ffd9a0', severe: '#f3a6a0' }

function drawMarks(sheet: Sheet, { shape, marks }: IntakeReport): void {
  const scale = Math.min(1, (sheet.width - 60) / pictureSize.width)
  const size = { width: pictureSize.width * scale, height: pictureSize.height * scale }
  const car = drawCar(shape)
  const { pdf } = sheet
  const alt = say(
    '{shape} from above, nose to the left: {defects, plural, one {1 mark} other {{defects} marks}}',
    {
      shape: say(shape),
      defects: marks.length,
    },
  )
  sheet.figure(
    alt,
    (x, y) => {
      pdf.save().translate(x, y).scale(scale).lineWidth(2)
      for (const wheel of car.wheels) pdf.circle(wheel.x, wheel.y, 32).fillAndStroke('#d9dce1', line)
      for (const { path } of car.panels) pdf.path(path).fillAndStroke('#f6f7f9', line)
      for (const path of car.glass) pdf.path(path).fillAndStroke('#dfe8f0', line)
      for (const mark of marks) pdf.circle(mark.x, mark.y, 17).fillAndStroke(fill[mark.severity], ink)
      pdf.restore()
      const style = { font: 'bold', size: 8 } as const
      pdf.fillColor(ink)
      for (const [i, mark] of marks.entries()) {
        const place = { x: x + mark.x * scale - 10, y: y + mark.y * scale - 5, width: 20 }
        const [number] = linesOf(pdf, String(i + 1), style, 20)
        if (number) drawLine(pdf, number, style, { ...place, align: 'centre' })
      }
    },
    size,
  )
  sheet.gap(4)
  if (marks.length === 0) sheet.paragraph(say('No marks were found.'))
  for (const [i, { words }] of marks.entries()) sheet.paragraph(`${i + 1}. ${words}`)
}

function drawThickness(sheet: Sheet, { thickness, judged }: IntakeReport): void {
  sheet.heading(say('Paint thickness'))
  drawTable(
    sheet,
    [
      { title: say('Panel') },
      { title: say('Readings') },
      { title: say('Typical'), width: 'fit', align: 'right' },
      { title: say('Thinnest'), width: 'fit', align: 'right' },
      { title: say('What it says') },
    ],
    thickness.map(({ panel, readings, typical, least, says }) => [panel, readings, typical, least, says]),
  )
  sheet.paragraph(judged, { colour: quiet, size: 8.5, before: 4 })
}

const between = 12
const tallest = 200

/** Two beside each other, each with its name under it. */
function drawPhotos(sheet: Sheet, photos: IntakeReport['photos']): void {
  sheet.heading(say('Photos'))
  const wide = (sheet.width - between) / 2
  for (let i = 0; i < photos.length; i += 2) {
    const row = photos.slice(i, i + 2)
    const sizes = row.map(({ width, height }) => {
      const scale = Math.min(wide / width, tallest / height)
      return { width: width * scale, height: height * scale }
    })
    const tall = Math.max(...sizes.map(size => size.height))
    const under = { size: 8, colour: quiet, width: wide }
    const names = row.map(({ name, jpeg }, k) => {
      const words = `${i + k + 1}. ${name}`
      return jpeg ? words : say('{words} (deleted)', { words })
    })
    const style = { font: 'regular', size: under.size } as const
    const named = Math.max(...names.map(words => heightOf(sheet.pdf, words, style, wide)))
    sheet.need(tall + 2 + named)
    const top = sheet.y
    for (const [k, { jpeg }] of row.entries()) {
      sheet.y = top
      const size = sizes[k]!
      const indent = k * (wide + between)
      const x = sheet.left + indent
      if (jpeg)
        sheet.figure(names[k]!, (left, y) => sheet.pdf.image(Buffer.from(jpeg), left, y, size), size, x)
      sheet.y = top + tall + 2
      sheet.paragraph(names[k]!, { ...under, indent })
    }
    sheet.y = top + tall + 2 + named
    sheet.gap(6)
  }
}
