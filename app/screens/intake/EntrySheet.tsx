import type { IntakeEntryView, IntakeView } from '../../../main/api/views.ts'
import { defectWords, waxWords } from '../../../main/domain/intake/index.ts'
import { localeNow, say } from '../../../main/domain/language/index.ts'
import { measureRules } from '../../../main/domain/measure/index.ts'
import { documentHref } from '../../data/door.ts'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Facts } from '../../parts/Facts.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullWords } from '../../parts/time.ts'
import { CarDrawing } from './car/CarDrawing.tsx'
import styles from './Intake.module.css'
import { Signature } from './Signature.tsx'
import { ThicknessTable } from './thickness/ThicknessTable.tsx'

interface Props {
  record: IntakeView
  entry: IntakeEntryView
  /** The page that corrects this one. */
  correctedBy: number | null
}

/** One signed page, as it was signed; printed as it stands. */
export function EntrySheet({ record, entry, correctedBy }: Props) {
  const { facts, draft, photos, rules } = entry.content
  const { units, zone } = record
  const kept = new Map(record.photos.map(photo => [photo.id, photo]))
  return (
    <article
      className={correctedBy === null ? styles.page : `${styles.page} ${styles.superseded}`}
      aria-label={say('Page {number}', { number: entry.number })}
    >
      <h2>
        {say('{shopName}: intake, job {jobNumber}, page {number}', {
          shopName: facts.shopName,
          jobNumber: facts.jobNumber,
          number: entry.number,
        })}
      </h2>
      <p>
        {say('Signed by {ownerName}, {signedAt}.', {
          ownerName: entry.ownerName,
          signedAt: fullWords(entry.signedAt, zone),
        })}
        {entry.corrects !== null &&
          ` ${say('Corrects page {corrects}: {reason}.', { corrects: entry.corrects, reason: entry.reason })}`}
        {correctedBy !== null && (
          <b> {say('Corrected by page {correctedBy}; kept as it was signed.', { correctedBy })}</b>
        )}
      </p>
      <Facts
        of={{
          [say('Vehicle')]:
            `${facts.plate}, ${facts.vehicleWords}${facts.vin ? say(', VIN {vin}', { vin: facts.vin }) : ''}`,
          [say('Odometer')]:
            draft.odometer !== null && `${draft.odometer.toLocaleString(localeNow())} ${draft.odometerUnit}`,
          [say('Fuel or charge')]:
            draft.fuelEighths !== null && say('{fuelEighths} of 8', { fuelEighths: draft.fuelEighths }),
          [say('Keys||of the car')]: draft.keys,
          [say('Belongings')]: draft.belongings || null,
          [say('Wax or sealant')]: waxWords(draft.wax),
          [say('Air')]: draft.airC !== null && degrees(draft.airC, units),
          [say('Panel||its temperature')]: draft.panelC !== null && degrees(draft.panelC, units),
          [say('Note')]: draft.note || null,
        }}
      />
      <CarDrawing shape={draft.shape} defects={draft.defects} finishes={facts.finishes} />
      {draft.defects.length === 0 ? (
        <p>{say('No marks were found.')}</p>
      ) : (
        <ol className={pieces.plain}>
          {draft.defects.map(defect => (
            <li key={defect.id}>
              {defectWords(defect)}
              {defect.note && `: ${defect.note}`}
            </li>
          ))}
        </ol>
      )}
      <ThicknessTable
        readings={draft.thickness}
        rules={(rules ?? measureRules()).thickness}
        paint={facts.paint ?? 'unknown'}
        units={units}
      />
      {photos.length > 0 && (
        <ul className={styles.thumbnails}>
          {photos.map(({ id }, i) => (
            <li key={id}>
              {kept.has(id) ? (
                <a
                  className={styles.thumbnail}
                  href={documentHref(`/documents/photo/${id}`)}
                  target="_blank"
                  rel="noreferrer"
                >
                  <img
                    src={documentHref(`/documents/thumbnail/${id}`)}
                    alt={`${i + 1}: ${kept.get(id)?.name}`}
                  />
                </a>
              ) : (
                say('deleted')
              )}
            </li>
          ))}
        </ul>
      )}
      <Signature path={entry.signature} name={entry.ownerName} />
      <DocumentButton path={`/documents/intake/${entry.id}.pdf`}>
        {say('Page {number} as a PDF', { number: entry.number })}
      </DocumentButton>
    </article>
  )
}
