import { Group } from '@mantine/core'
import type { AppliedEntryView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Fact } from '../../parts/Facts.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullWords } from '../../parts/time.ts'
import styles from './Applied.module.css'
import { FactList, LayerFactList, ZoneWords } from './FactList.tsx'

interface Props {
  entry: AppliedEntryView
  zone: string
  /** The page that corrects this one. */
  correctedBy: number | null
}

/** One signed page, as it was signed; printed as it stands. */
export function EntrySheet({ entry, zone, correctedBy }: Props) {
  const { facts, draft } = entry.content
  return (
    <article
      className={correctedBy === null ? styles.card : `${styles.card} ${styles.superseded}`}
      aria-label={say('Page {number}', { number: entry.number })}
    >
      <h2>
        {say('{shopName}: applied record, job {jobNumber}, page {number}', {
          shopName: facts.shopName,
          jobNumber: facts.jobNumber,
          number: entry.number,
        })}
      </h2>
      <p>
        {say('Signed by {signedBy}, {signedAt}.', {
          signedBy: entry.signedBy,
          signedAt: fullWords(entry.signedAt, zone),
        })}
        {entry.corrects !== null &&
          ` ${say('Corrects page {corrects}: {reason}.', { corrects: entry.corrects, reason: entry.reason })}`}
        {correctedBy !== null && (
          <b> {say('Corrected by page {correctedBy}; kept as it was signed.', { correctedBy })}</b>
        )}
      </p>
      <Group gap="xs" className={pieces.unprinted}>
        <DocumentButton path={`/documents/certificate/${entry.id}.pdf`} size="xs">
          {say('Certificate')}
        </DocumentButton>
        <DocumentButton path={`/documents/verify/${entry.id}.html`} size="xs">
          {say('Page that checks it')}
        </DocumentButton>
      </Group>
      <FactList facts={facts} zone={zone} />
      {facts.layers.map((layer, i) => {
        const own = draft.layers.find(each => each.position === layer.position)
        return (
          <section key={layer.position}>
            <h3>
              {i + 1}. {layer.name}: {layer.productName}
            </h3>
            <LayerFactList layer={layer} zone={zone}>
              <Fact name={say('Lot or batch')}>{own?.lot}</Fact>
              <Fact name={say('Laid by')}>{own?.who}</Fact>
              <ZoneWords zones={own?.zones ?? []} />
            </LayerFactList>
          </section>
        )
      })}
      {draft.note && <p>{draft.note}</p>}
      <p className={pieces.soft}>
        {say(
          'This record says what was applied, when and in what conditions, and which figures were met. It does not say that a coating is fit for any use: the product’s data sheet decides.',
        )}
      </p>
    </article>
  )
}
