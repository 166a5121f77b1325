/** Just enough XML to write an invoice: elements, attributes, text, with what XML forbids taken out or escaped. */

export type Xml = string

/** An element; children that are empty are left out. */
export function element(
  name: string,
  content: string | readonly Xml[],
  attributes: Readonly<Record<string, string>> = {},
): Xml {
  const given = Object.entries(attributes)
    .map(([key, value]) => ` ${key}="${escaped(value)}"`)
    .join('')
  const inside = typeof content === 'string' ? escaped(content) : content.join('')
  return inside === '' ? '' : `<${name}${given}>${inside}</${name}>`
}

/** The document with its declaration. */
export const xmlDocument = (root: Xml): string => `<?xml version="1.0" encoding="UTF-8"?>\n${root}\n`

// What XML 1.0 has no place for (section 2.2): control characters and halves of pairs.
const controls = String.raw`[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]`
const halves = String.raw`[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]`
const placeless = new RegExp(`${controls}|${halves}`, 'g')

/** Text that any reader takes. */
function escaped(text: string): string {
  return text
    .replaceAll(placeless, '')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;')
}
