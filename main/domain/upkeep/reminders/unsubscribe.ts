import { say } from '../../language/index.ts'
import { refuse } from '../../refusal.ts'

/** Where an owner can say "no more": at least one of them. */
export interface UnsubscribeWays {
  /** Such as `stop@example.com?subject=stop`. */
  readonly mailto?: string
  /** An https address that takes a POST (RFC 8058). */
  readonly https?: string
}

function uri(text: string, field: string): string {
  // Everything a URI may hold, and so neither line ends nor the brackets and commas that part a list.
  if (/^[A-Za-z0-9\-._~:/?#@!$&'*+=%[\]]+$/.test(text)) return `<${text}>`
  refuse(
    'link-bad',
    { [field]: text },
    say('"{text}" is not a link a header can hold; encode its special signs.', { text }),
  )
}

/**
 * The headers by which a mail program offers to unsubscribe. List-Unsubscribe: RFC 2369 section 3.2. One click needs
 * an https link: RFC 8058 section 3.1.
 */
export function unsubscribeHeaders({ mailto, https }: UnsubscribeWays): Record<string, string> {
  const ways: string[] = []
  if (mailto !== undefined) ways.push(uri(`mailto:${mailto}`, 'mailto'))
  if (https !== undefined) {
    if (!https.startsWith('https://'))
      refuse(
        'link-bad',
        { https },
        say('"{https}" does not begin with https://, as one click needs.', { https }),
      )
    ways.push(uri(https, 'https'))
  }
  if (ways.length === 0)
    refuse(
      'no-way-out',
      { mailto: null },
      say('Give an address or a link by which an owner can unsubscribe.'),
    )
  const headers: Record<string, string> = { 'List-Unsubscribe': ways.join(', ') }
  if (https !== undefined) headers['List-Unsubscribe-Post'] = 'List-Unsubscribe=One-Click'
  return headers
}
