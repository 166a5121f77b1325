/** Reads reports of mail that came back: delivery status notifications (RFC 3464), and what servers write instead. */

export interface Bounced {
  address: string
  /** RFC 3463 code where there is one, else the words of the report. */
  status: string
  /** 5.x.x, or an action of "failed": it will not work later either. */
  permanent: boolean
  /** Message-ID of what came back, with its angle brackets. */
  messageId: string | null
}

const addressPattern = /[^\s<>;,"']+@[^\s<>;,"']+\.[^\s<>;,"']+/

/** The addresses a report speaks of, each once. */
export function readBounces(report: string): Bounced[] {
  const text = report.replaceAll(/\r\n?/g, '\n').replaceAll(/\n[ \t]+/g, ' ')
  const messageId = originalId(text)
  const found = new Map<string, Bounced>()
  // One block of fields per recipient, parted by an empty line (RFC 3464 section 2.3).
  for (const block of text.split(/\n\s*\n/)) {
    const recipient = field(block, 'Final-Recipient') ?? field(block, 'Original-Recipient')
    const address = addressPattern.exec(recipient ?? '')?.[0]
    if (address === undefined) continue
    const action = field(block, 'Action')?.toLowerCase() ?? ''
    const status = /\d\.\d{1,3}\.\d{1,3}/.exec(field(block, 'Status') ?? '')?.[0]
    found.set(address.toLowerCase(), {
      address,
      status: status ?? (action || 'no status given'),
      permanent: action === 'failed' || (action === '' && status?.startsWith('5') === true),
      messageId,
    })
  }
  if (found.size > 0) return [...found.values()]
  return plainReport(text, messageId)
}

/** A report in prose: an address beside a reply code of the 5 kind (RFC 5321 section 4.2.1). */
function plainReport(text: string, messageId: string | null): Bounced[] {
  const found = new Map<string, Bounced>()
  for (const block of text.split(/\n\s*\n/)) {
    const code = /\b(5\d\d)[ -]|\b(5\.\d{1,3}\.\d{1,3})\b/.exec(block)
    const address = addressPattern.exec(block)?.[0]
    if (!code || address === undefined) continue
    found.set(address.toLowerCase(), { address, status: code[2] ?? code[1]!, permanent: true, messageId })
  }
  return [...found.values()]
}

function field(block: string, name: string): string | undefined {
  return new RegExp(`^${name}:\\s*(.*)$`, 'im').exec(block)?.[1]?.trim()
}

/** The id of the message that came back: the last one in the report, since the report's own stands first. */
function originalId(text: string): string | null {
  const ids = [...text.matchAll(/^Message-ID:\s*(<[^<>\s]+>)/gim)].map(match => match[1]!)
  return ids.at(-1) ?? null
}
