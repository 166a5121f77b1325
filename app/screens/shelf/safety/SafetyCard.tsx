import { Button } from '@mantine/core'
import { useState } from 'react'
import type { SafetyView } from '../../../../main/api/views.ts'
import { storageGroupWords } from '../../../../main/domain/hazard/index.ts'
import { documentHref } from '../../../data/door.ts'
import { useShop } from '../../../data/shop.ts'
import { yearDateWords } from '../../../parts/shelf/amounts.ts'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import { fullWords } from '../../../parts/time.ts'
import styles from '../Shelf.module.css'
import { SafetyForm } from './SafetyForm.tsx'
import { SheetUpload } from './SheetUpload.tsx'

/** What the data sheet says of a product and what a label must show; where the sheet is silent it says so. */
export function SafetyCard({ safety }: { safety: SafetyView }) {
  const { zone } = useShop()
  const [editing, setEditing] = useState(false)
  const { label, sheet } = safety
  const shown = label.signalWord ?? (safety.signalWord === 'none' ? 'no signal word' : null)
  return (
    <div className={styles.two}>
      <div className={styles.card}>
        <h2>Hazards</h2>
        <Pictograms codes={label.pictograms.map(each => each.code)} size={4.6} />
        {shown && (
          <p>
            <b>{shown}</b>
          </p>
        )}
        <Statements title="Hazard statements" list={label.hazards} />
        <Statements title="Precautions" list={label.precautions} />
        {safety.protection && safety.protection.length > 0 && (
          <>
            <h3>Protective equipment</h3>
            <ul className={styles.plain}>
              {safety.protection.map(words => (
                <li key={words}>{words}</li>
              ))}
            </ul>
          </>
        )}
        {label.givenUp.map(each => (
          <p key={each.code} className={styles.soft}>
            {each.code} is left out: {each.rule}
          </p>
        ))}
        {safety.doubts.map(words => (
          <p key={words} className={styles.late}>
            ⚠ {words}
          </p>
        ))}
        {safety.silences.length > 0 && (
          <>
            <h3>What is not known</h3>
            <ul className={styles.plain}>
              {safety.silences.map(({ field, words }) => (
                <li key={field}>{words}</li>
              ))}
            </ul>
          </>
        )}
        <p className={styles.soft}>
          The maker’s label and data sheet, local codes and licensed practice decide; this page only reminds.
        </p>
      </div>
      <div className={styles.stack}>
        <div className={styles.card}>
          <h2>Data sheet</h2>
          {sheet ? (
            <p>
              <a href={documentHref(sheet.path)} target="_blank" rel="noreferrer">
                {sheet.name}
              </a>{' '}
              <span className={styles.soft}>
                {Math.ceil(sheet.size / 1024)} kB, filed {fullWords(sheet.at, zone)} by {sheet.who}
              </span>
            </p>
          ) : (
            <p className={styles.soft}>
              No sheet is filed. Ask the supplier for it: it must come with the first delivery.
            </p>
          )}
          <dl>
            <dt>Revised</dt>
            <dd>{safety.revisedOn ? yearDateWords(safety.revisedOn) : 'not entered'}</dd>
            <dt>Stored with</dt>
            <dd>
              {safety.storageGroup
                ? storageGroupWords[safety.storageGroup]
                : safety.suggestedGroup
                  ? `${storageGroupWords[safety.suggestedGroup]}, as its codes suggest`
                  : 'not known'}
            </dd>
            {safety.groupWords && (
              <>
                <dt>Keep apart</dt>
                <dd>{safety.groupWords}</dd>
              </>
            )}
            {safety.unNumber && (
              <>
                <dt>UN number</dt>
                <dd>{safety.unNumber}</dd>
              </>
            )}
          </dl>
          <SheetUpload safety={safety} />
        </div>
        <div className={styles.card}>
          <h2>As read off the sheet</h2>
          {editing ? (
            <SafetyForm safety={safety} onClose={() => setEditing(false)} />
          ) : (
            <>
              {safety.version === 0 && (
                <p className={styles.soft}>
                  Nobody has entered anything yet. Take section 2 of the sheet first.
                </p>
              )}
              {safety.maker && <p>{safety.maker}</p>}
              {safety.note && <p>{safety.note}</p>}
              <Button variant="default" size="xs" mt="sm" onClick={() => setEditing(true)}>
                Enter what the sheet says
              </Button>
            </>
          )}
        </div>
      </div>
    </div>
  )
}

function Statements({ title, list }: { title: string; list: { code: string; text: string }[] }) {
  if (list.length === 0) return null
  return (
    <>
      <h3>{title}</h3>
      <ul className={styles.plain}>
        {list.map(({ code, text }) => (
          <li key={code}>
            <b>{code}</b> {text}
          </li>
        ))}
      </ul>
    </>
  )
}
