import { dateOf, dayWords } from '../../domain/calendar/index.ts'
import { say, word } from '../../domain/language/index.ts'
import { foundOn, type PanelLook } from '../../domain/upkeep/index.ts'
import { fromJson } from '../../store/json.ts'
import type { UpkeepEntry } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { ownersOf } from './changeHands.ts'
import type { LayerView } from './layers.ts'

const channelWords: Record<string, string> = {
  email: word('e-mail'),
  letter: word('letter'),
  call: word('call'),
  text: word('text'),
}

export interface TimelineEntry {
  on: string
  kind:
    | LayerView['stage']
    | 'job'
    | 'visit'
    | 'skipped'
    | 'moved'
    | 'inspection'
    | 'away'
    | 'sold'
    | 'hands'
    | 'reminder'
  words: string
  /** Takes this entry back, where that can be done. */
  actId: string | null
  jobId: string | null
  /** The look this tells of, which `upkeep.voidInspection` takes back. */
  inspectionId: string | null
}

/** Everything that happened to a car's paint here, newest first. */
export async function timelineOf(
  tx: Tx,
  vehicleId: string,
  zone: string,
  layers: readonly LayerView[],
): Promise<TimelineEntry[]> {
  const [entries, inspections, jobs, messages, owners] = await Promise.all([
    tx.upkeepEntry.findMany({
      where: { vehicleId, voidedAt: null },
      include: { plan: { select: { title: true } } },
      orderBy: { seq: 'asc' },
    }),
    tx.inspection.findMany({
      where: { layer: { vehicleId }, voidedAt: null },
      include: { layer: { include: { product: { select: { name: true } } } } },
    }),
    tx.job.findMany({
      where: { vehicleId, status: 'handedOver' },
      include: { treatments: { orderBy: { position: 'asc' } } },
    }),
    tx.message.findMany({ where: { vehicleId, sentAt: { not: null } } }),
    ownersOf(tx, vehicleId),
  ])
  const plain = { actId: null, jobId: null, inspectionId: null }
  const lines: TimelineEntry[] = [
    ...layers.map(layer => ({
      ...plain,
      on: layer.laidOn,
      kind: layer.stage,
      words: say('{productName} laid', { productName: layer.productName }),
    })),
    ...jobs.map(job => ({
      ...plain,
      on: dateOf(job.leftAt ?? job.handoverAt, zone),
      kind: 'job' as const,
      words: say('job {number}: {treatments}', {
        number: job.number,
        treatments: job.treatments.map(each => each.name).join(', '),
      }),
      jobId: job.id,
    })),
    ...inspections.map(({ id, onDay, working, panels, note, layer }) => ({
      ...plain,
      on: onDay,
      kind: 'inspection' as const,
      inspectionId: id,
      words: `${layer.product.name} ${lookWords(working, fromJson<PanelLook[] | null>(panels))}${note === '' ? '' : `: ${note}`}`,
    })),
    ...entries.flatMap(entry => entryLine(entry, entry.plan?.title ?? '', zone)),
    ...owners.map(({ onDay, fromName, toName }) => ({
      ...plain,
      on: onDay,
      kind: 'hands' as const,
      words: say('from {fromName} to {toName}', { fromName, toName }),
    })),
    ...messages.map(({ sentAt, createdAt, channel, outcome, subject }) => ({
      ...plain,
      on: dateOf(sentAt ?? createdAt, zone),
      kind: 'reminder' as const,
      words: say('reminder by {channel}: {subject}{outcome}', {
        channel: say(channelWords[channel] ?? channel),
        subject,
        outcome: outcome ? ` (${say(outcome)})` : '',
      }),
    })),
  ]
  return lines.sort((a, b) => b.on.localeCompare(a.on))
}

function entryLine(entry: UpkeepEntry, title: string, zone: string): TimelineEntry[] {
  const { what, actId, jobId } = entry
  // Which of the days an entry has follows from what it tells.
  const [onDay, ruleOn, toDay] = [entry.onDay ?? '', entry.ruleOn ?? '', entry.toDay ?? '']
  const why = entry.why === '' ? '' : ` (${entry.why})`
  const line = (on: string, kind: TimelineEntry['kind'], words: string): TimelineEntry[] => [
    { on, kind, words: `${words}${why}`, actId: jobId === null ? actId : null, jobId, inspectionId: null },
  ]
  const writtenOn = dateOf(entry.at, zone)
  switch (what) {
    case 'done':
      return line(onDay, 'visit', say('{title} done', { title }))
    case 'skipped':
      return line(
        writtenOn,
        'skipped',
        say('{title} of {ruleOn} skipped', { title, ruleOn: dayWords(ruleOn) }),
      )
    case 'moved':
      return line(writtenOn, 'moved', say('{title} moved to {toDay}', { title, toDay: dayWords(toDay) }))
    case 'rule':
      return line(writtenOn, 'moved', say('{title} by another interval from now on', { title }))
    case 'away':
      return line(onDay, 'away', say('away until {toDay}', { toDay: dayWords(toDay) }))
    case 'sold':
      return line(onDay, 'sold', say('car sold'))
    default:
      return []
  }
}

function lookWords(working: boolean, panels: PanelLook[] | null): string {
  if (panels) return `${working ? say('still working') : say('gone')} (${foundOn(panels).words})`
  return working
    ? say('still working at a single look, clogged or not is not known')
    : say('gone at a single look, clogged or not is not known')
}
