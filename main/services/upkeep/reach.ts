/** How owners can be reached, and by which ways they agree to. */
import {
  type Channel,
  type ConsentEntry,
  type ConsentState,
  consentState,
} from '../../domain/upkeep/index.ts'
import { addressStops, type ConsentRow, consentRows, ownerRows } from '../../store/reachRows.ts'
import type { Tx } from '../../store/store.ts'

export const channels: readonly Channel[] = ['email', 'letter', 'call', 'text']

/** An address as it is kept in the ledger and compared: RFC 5321 leaves capitals to the server, people do not. */
export function addressKey(address: string): string {
  return address.replace(/\s+/g, '').toLowerCase()
}

export interface Owner {
  readonly id: string
  readonly name: string
  readonly phone: string | null
  readonly email: string | null
  /** Null: the shop's. */
  readonly language: string | null
  readonly zone: string | null
  readonly postal: string
}

export interface Reach {
  readonly owner: Owner
  /** Where each channel would go; null: no such address on file. */
  readonly address: Readonly<Record<Channel, string | null>>
  /** All consent that says something about this owner or their addresses. */
  readonly consents: readonly ConsentEntry[]
}

/** The owners asked for, with their addresses and everything they ever said about being written to. */
export async function reachOf(tx: Tx, customerIds: readonly string[]): Promise<Map<string, Reach>> {
  const ids = [...new Set(customerIds)]
  const [customers, own, stops] = await Promise.all([
    ownerRows(tx, ids),
    consentRows(tx, ids),
    addressStops(tx),
  ])
  own.sort((a, b) => (a.id < b.id ? -1 : 1))
  const byOwner = Map.groupBy(own, entry => entry.customerId)
  const byAddress = Map.groupBy(stops, entry => entry.address ?? '')
  return new Map(
    customers.map(({ postal: lines, ...customer }) => {
      const { id, phone, email } = customer
      const postal = lines ?? ''
      const letter = postal === '' ? null : inOneLine(postal)
      const others = [email, letter, phone].flatMap(each =>
        each === null ? [] : (byAddress.get(addressKey(each)) ?? []),
      )
      return [
        id,
        {
          owner: { ...customer, postal },
          address: { email, letter, call: phone, text: phone },
          consents: [...(byOwner.get(id) ?? []), ...others.filter(each => each.customerId !== id)].map(
            consentEntry,
          ),
        },
      ]
    }),
  )
}

/** What is written to is compared and may never break a line. */
function inOneLine(lines: string): string {
  return lines
    .split(/[\r\n]+/)
    .map(line => line.trim())
    .join(', ')
}

function consentEntry(row: ConsentRow): ConsentEntry {
  const { customerId, at, address, source, wording } = row
  return {
    personId: customerId,
    channel: row.channel as ConsentEntry['channel'],
    what: row.what as ConsentEntry['what'],
    at,
    address,
    source,
    wording,
  }
}

/** Whether an owner agrees to a channel now; null where there is no address for it. */
export function stateOf(reach: Reach, channel: Channel, nowAt: number): ConsentState | null {
  const address = reach.address[channel]
  return address === null
    ? null
    : consentState(reach.consents, reach.owner.id, channel, addressKey(address), nowAt)
}

/** The channels an owner agrees to now and has an address for. */
export function openChannels(reach: Reach, nowAt: number): Channel[] {
  return channels.filter(channel => stateOf(reach, channel, nowAt)?.given)
}

/** Why nobody may ring an owner now; null where they have agreed to calls and have a number. */
export function whyNoCall(reach: Reach, nowAt: number) {
  const state = stateOf(reach, 'call', nowAt)
  if (!state) return 'no-number'
  return state.given ? null : state.because
}
