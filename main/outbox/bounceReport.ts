import { say } from '../domain/language/index.ts'
/**
 * Reads reports of mail that came back: delivery status notifications (RFC 3464), and what servers write instead. The
 * text is anybody's, so it is taken apart line by line and word by word: no pattern here looks further than a few
 * characters, and the time taken grows with the length and no faster.
 */

export interface Bounced {
  address: string
  /** RFC 3463 code where there is one, else the words of the report. */
  status: string
  /** 5.x.x, or an action of "failed": it will not work later either. */
  permanent: boolean
  /** Message-ID of what came back, with its angle brackets. */
  messageId: string | null
}

/** What matters stands before the message that came back; of a longer text only this many characters are read. */
const READ_CHARS = 256 * 1024

/** The addresses a report speaks of, each once. */
export function readBounces(report: string): Bounced[] {
  const blocks = blocksOf(report.slice(0, READ_CHARS))
  const messageId = originalId(blocks)
  const found = new Map<string, Bounced>()
  const add = (bounced: Omit<Bounced, 'messageId'>) =>
    found.set(bounced.address.toLowerCase(), { ...bounced, messageId })
  for (const lines of blocks) {
    const fields = fieldsOf(lines)
    const address = addressIn(fields.get('final-recipient') ?? fields.get('original-recipient') ?? '')
    if (address === null) continue
    const action = fields.get('action')?.toLowerCase() ?? ''
    const status = /\d\.\d{1,3}\.\d{1,3}/.exec(fields.get('status') ?? '')?.[0]
    add({
      address,
      status: status ?? (action || say('no status given')),
      permanent: action === 'failed' || (action === '' && status?.startsWith('5') === true),
    })
  }
  if (found.size > 0) return [...found.values()]
  // A report in prose: an address beside a reply code of the 5 kind (RFC 5321 section 4.2.1).
  for (const lines of blocks) {
    const block = lines.join('\n')
    const code = /\b(5\d\d)[ -]|\b(5\.\d{1,3}\.\d{1,3})\b/.exec(block)
    const address = addressIn(block)
    if (code && address !== null) add({ address, status: code[2] ?? code[1] ?? '', permanent: true })
  }
  return [...found.values()]
}

/** The lines between empty ones, folded lines joined: one block of fields per recipient (RFC 3464 section 2.3). */
function blocksOf(text: string): string[][] {
  const blocks: string[][] = []
  let block: string[] = []
  for (const line of text.replaceAll('\r\n', '\n').split(/[\r\n]/)) {
    const words = line.trim()
    if (words === '') {
      if (block.length > 0) blocks.push(block)
      block = []
    } else if (line !== line.trimStart() && block.length > 0) block.push(`${block.pop()} ${words}`)
    else block.push(words)
  }
  return block.length > 0 ? [...blocks, block] : blocks
}

/** A block's fields by name in small letters; of two with one name the first. */
function fieldsOf(lines: readonly string[]): Map<string, string> {
  const fields = new Map<string, string>()
  for (const line of lines) {
    const colon = line.indexOf(':')
    const name = line.slice(0, Math.max(0, colon)).toLowerCase()
    if (name !== '' && !fields.has(name)) fields.set(name, line.slice(colon + 1).trim())
  }
  return fields
}

/** The first word that is built like an address. */
function addressIn(text: string): string | null {
  for (const word of text.split(/[\s<>()[\]:;,"']/)) {
    const address = word.endsWith('.') ? word.slice(0, -1) : word
    const at = address.indexOf('@')
    const dot = address.lastIndexOf('.', address.length - 2)
    if (at > 0 && dot > at + 1) return address
  }
  return null
}

/** The id of the message that came back: the last one in the report, since the report's own stands first. */
function originalId(blocks: readonly string[][]): string | null {
  let last: string | null = null
  for (const lines of blocks)
    for (const line of lines) {
      if (line.slice(0, 11).toLowerCase() !== 'message-id:') continue
      const id = line.slice(11).trim()
      const end = id.indexOf('>')
      if (id.startsWith('<') && end > 1 && !/[\s<]/.test(id.slice(1, end))) last = id.slice(0, end + 1)
    }
  return last
}
