/** The ledger of consent: who agreed to what, when, on which form, in which words; and who takes it back. */

import { checkZone, momentWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkNote, checkText } from '../../domain/shop/index.ts'
import { type ConsentState, checkConsent } from '../../domain/upkeep/index.ts'
import { checkCountry } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk, stampOf } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { shopOf } from '../desk/shopView.ts'
import { addressKey, channels, type Reach, reachOf, stateOf } from '../upkeep/reach.ts'
import { checkLanguage } from '../upkeep/settings.ts'
import { stopMessages } from '../upkeep/stopMessages.ts'
import type { ConsentInput, ReachInput, WithdrawalInput } from './inputs.ts'

export type ConsentsView = Awaited<ReturnType<typeof listConsents>>

/** What an owner agrees to now, and everything they ever said about it, newest first. */
export async function listConsents(desk: Desk, input: { customerId: string }) {
  const tx = desk.store.read
  const reach = await ownerOf(tx, input.customerId)
  const { zone } = await shopOf(tx)
  const ledger = await tx.consent.findMany({
    where: { customerId: input.customerId },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  })
  const row = await tx.ownerReach.findUnique({ where: { customerId: input.customerId } })
  return {
    customerId: input.customerId,
    customerName: reach.owner.name,
    states: channels.map(channel => {
      const state = stateOf(reach, channel, desk.now())
      return { channel, address: reach.address[channel], state, words: stateWords(state, zone) }
    }),
    ledger: ledger.map(({ customerId: _, ...line }) => ({
      ...line,
      channel: line.channel as WithdrawalInput['channel'],
      what: line.what as 'given' | 'withdrawn',
    })),
    reach: {
      language: row?.language ?? null,
      zone: row?.zone ?? null,
      postal: row?.postal ?? '',
      country: row?.country ?? null,
      version: row?.version ?? 0,
    },
  }
}

function stateWords(state: ConsentState | null, zone: string): string {
  if (!state) return say('no address on file')
  if (state.given)
    return say('agreed since {sinceAt} ({source})', {
      sinceAt: momentWords(state.sinceAt, zone),
      source: state.source,
    })
  if (state.because === 'never') return say('has not agreed')
  const own = state.because === 'withdrawn'
  if (state.at === null) return own ? say('withdrawn') : say('somebody at this address withdrew')
  const at = momentWords(state.at, zone)
  return own ? say('withdrawn on {at}', { at }) : say('somebody at this address withdrew on {at}', { at })
}

async function ownerOf(tx: Tx, customerId: string): Promise<Reach> {
  const reach = (await reachOf(tx, [customerId])).get(customerId)
  if (!reach) refuse('missing', { customerId }, say('There is no such customer; look them up again.'))
  return reach
}

/** An owner agrees to be reached one way. */
export function giveConsent(desk: Desk, input: ConsentInput): Promise<{ id: string }> {
  const nowAt = desk.now()
  const at = input.at ?? nowAt
  if (at > nowAt)
    refuse('to-come', { at }, say('Consent cannot be dated in the future: give the time it was said.'))
  return desk.store.transact(stampOf(desk), async (tx, audit) => {
    const reach = await ownerOf(tx, input.customerId)
    const { customerId, channel } = input
    const source = checkNote(input.source, 'source', 120)
    const wording = checkNote(input.wording, 'wording', 1_000)
    const said = { channel, what: 'given', at, source, wording } as const
    const address = reach.address[channel]
    checkConsent({ ...said, personId: customerId, address })
    const { id } = await tx.consent.create({
      data: {
        ...said,
        customerId,
        address: address === null ? null : addressKey(address),
        who: desk.who,
      },
    })
    audit({ act: 'consent given', entity: 'customer', entityId: customerId, detail: { channel, at, source } })
    return { id }
  })
}

/** An owner wants no more: honoured at once, also for what is written and waits. */
export function withdrawConsent(desk: Desk, input: WithdrawalInput): Promise<{ stopped: number }> {
  return act(desk, async (tx, audit, at) => {
    await ownerOf(tx, input.customerId)
    const { customerId, channel } = input
    const source = checkNote(input.source, 'source', 120)
    const wording = checkNote(input.wording, 'wording', 1_000)
    const address = input.address?.trim() ? addressKey(input.address) : null
    await tx.consent.create({
      data: { customerId, channel, what: 'withdrawn', at, address, source, wording, who: desk.who },
    })
    const about = channel === 'all' ? { customerId } : { customerId, channel }
    const stopped = await stopMessages(tx, at, about, say('The owner has withdrawn the consent for it.'))
    audit({
      act: 'consent withdrawn',
      entity: 'customer',
      entityId: customerId,
      detail: { channel, source, stopped },
    })
    return { stopped }
  })
}

/** How an owner is written to: language, zone, and the lines of their postal address. */
export function saveReach(desk: Desk, input: ReachInput): Promise<{ version: number }> {
  const { customerId, version } = input
  const data = {
    language: input.language?.trim() ? checkLanguage(input.language) : null,
    zone: input.zone?.trim() ? checkText(input.zone, 'zone', say('The zone'), 60) : null,
    postal: checkNote(input.postal, 'postal', 400),
    country: input.country?.trim() ? checkCountry(input.country.trim().toUpperCase(), 'country') : null,
  }
  if (data.zone !== null) checkZone(data.zone)
  return act(desk, async (tx, audit) => {
    await ownerOf(tx, customerId)
    const kept = { table: tx.ownerReach, entity: 'customer' }
    const saved = await saveSingle(audit, kept, { key: { customerId }, version }, data)
    return { version: saved.version }
  })
}
