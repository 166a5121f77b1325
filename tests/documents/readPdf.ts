import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'

export interface ReadPage {
  /** Points. */
  width: number
  height: number
  /** The words, line by line from the top. */
  lines: string[]
  /** How far the words reach to the right and down, in points from the left and from the foot. */
  reach: { right: number; foot: number }
  /** Filled shapes by colour, as the page draws them. */
  fills: string[]
}

/** A PDF as a reader of another make sees it. */
export async function readPdf(bytes: Uint8Array): Promise<{ title: string; pages: ReadPage[] }> {
  // The reader takes the buffer for itself.
  const task = getDocument({ data: Uint8Array.from(bytes), useSystemFonts: false, verbosity: 0 })
  const pdf = await task.promise
  const { info } = await pdf.getMetadata()
  const pages: ReadPage[] = []
  for (let number = 1; number <= pdf.numPages; number++) {
    const page = await pdf.getPage(number)
    const { width, height } = page.getViewport({ scale: 1 })
    const { items } = await page.getTextContent()
    const reach = { right: 0, foot: height }
    const byLine = new Map<number, { x: number; str: string }[]>()
    for (const item of items) {
      if (!('str' in item) || item.str.trim() === '') continue
      const y = Math.round(item.transform[5])
      // What is written upwards is as wide as its letters are high.
      const wide = item.transform[1] === 0 ? item.width : 0
      reach.right = Math.max(reach.right, item.transform[4] + wide)
      reach.foot = Math.min(reach.foot, y)
      byLine.set(y, [...(byLine.get(y) ?? []), { x: item.transform[4], str: item.str }])
    }
    const { fnArray, argsArray } = await page.getOperatorList()
    const fills = fnArray.flatMap((fn, i) => (fn === OPS.setFillRGBColor ? [String(argsArray[i])] : []))
    pages.push({
      width,
      height,
      reach,
      fills,
      lines: [...byLine.entries()]
        .sort((a, b) => b[0] - a[0])
        .map(([, parts]) =>
          parts
            .sort((a, b) => a.x - b.x)
            .map(part => part.str)
            .join(' '),
        ),
    })
  }
  await task.destroy()
  return { title: String((info as { Title?: string }).Title), pages }
}
