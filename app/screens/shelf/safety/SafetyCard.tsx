import { Button } from '@mantine/core'
import { useState } from 'react'
import type { SafetyView } from '../../../../main/api/views.ts'
import { storageGroupWords } from '../../../../main/domain/hazard/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { documentHref } from '../../../data/door.ts'
import { useShop } from '../../../data/shop.ts'
import { Card } from '../../../parts/Card.tsx'
import { Facts, Lines } from '../../../parts/Facts.tsx'
import pieces from '../../../parts/pieces.module.css'
import { yearDateWords } from '../../../parts/shelf/amounts.ts'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import { fullWords } from '../../../parts/time.ts'
import { SafetyForm } from './SafetyForm.tsx'
import { SheetUpload } from './SheetUpload.tsx'

/** What the data sheet says of a product and what a label must show; where the sheet is silent it says so. */
export function SafetyCard({ safety }: { safety: SafetyView }) {
  return (
    <div className={pieces.two}>
      <Hazards safety={safety} />
      <div className={pieces.column}>
        <Sheet safety={safety} />
        <Read safety={safety} />
      </div>
    </div>
  )
}

function Hazards({ safety }: { safety: SafetyView }) {
  const { label, protection, handling, doubts, silences } = safety
  const signal = label.signalWord
    ? say(label.signalWord)
    : safety.signalWord === 'none'
      ? say('no signal word')
      : null
  return (
    <Card title={say('Hazards')}>
      <Pictograms codes={label.pictograms.map(each => each.code)} size={4.6} />
      {signal && (
        <p>
          <b>{signal}</b>
        </p>
      )}
      <Statements title={say('Hazard statements')} list={label.hazards} />
      <Statements title={say('Precautions')} list={label.precautions} />
      {protection && protection.length > 0 && (
        <>
          <h3>{say('Protective equipment')}</h3>
          <Lines of={protection} />
        </>
      )}
      {handling.length > 0 && (
        <>
          <h3>{say('Before it is opened')}</h3>
          <ul className={pieces.plain}>
            {handling.map(({ about, words, source }) => (
              <li key={about}>
                {words} <span className={pieces.soft}>({source})</span>
              </li>
            ))}
          </ul>
        </>
      )}
      {label.givenUp.map(each => (
        <p key={each.code} className={pieces.soft}>
          {say('{code} is left out: {rule}', { code: each.code, rule: each.rule })}
        </p>
      ))}
      {doubts.map(words => (
        <p key={words} className={pieces.late}>
          ⚠ {words}
        </p>
      ))}
      {silences.length > 0 && (
        <>
          <h3>{say('What is not known')}</h3>
          <Lines of={silences.map(each => each.words)} />
        </>
      )}
      <p className={pieces.soft}>
        {say(
          'The maker’s label and data sheet, local codes and licensed practice decide; this page only reminds.',
        )}
      </p>
    </Card>
  )
}

function Statements({ title, list }: { title: string; list: { code: string; text: string }[] }) {
  if (list.length === 0) return null
  return (
    <>
      <h3>{title}</h3>
      <ul className={pieces.plain}>
        {list.map(({ code, text }) => (
          <li key={code}>
            <b>{code}</b> {text}
          </li>
        ))}
      </ul>
    </>
  )
}

function Sheet({ safety }: { safety: SafetyView }) {
  const { zone } = useShop()
  const { sheet, revisedOn, storageGroup, suggestedGroup, groupWords, unNumber } = safety
  return (
    <Card title={say('Data sheet')}>
      {sheet ? (
        <p>
          <a href={documentHref(sheet.path)} target="_blank" rel="noreferrer">
            {sheet.name}
          </a>{' '}
          <span className={pieces.soft}>
            {say('{sheet} kB, filed {at} by {who}', {
              sheet: Math.ceil(sheet.size / 1024),
              at: fullWords(sheet.at, zone),
              who: sheet.who,
            })}
          </span>
        </p>
      ) : (
        <p className={pieces.soft}>
          {say('No sheet is filed. Ask the supplier for it: it must come with the first delivery.')}
        </p>
      )}
      <Facts
        of={{
          [say('Revised')]: revisedOn ? yearDateWords(revisedOn) : say('not entered'),
          [say('Stored with')]: storageGroup
            ? say(storageGroupWords[storageGroup])
            : suggestedGroup
              ? say('{storageGroupWords}, as its codes suggest', {
                  storageGroupWords: say(storageGroupWords[suggestedGroup]),
                })
              : say('not known'),
          [say('Keep apart')]: groupWords || null,
          [say('UN number')]: unNumber || null,
        }}
      />
      <SheetUpload safety={safety} />
    </Card>
  )
}

function Read({ safety }: { safety: SafetyView }) {
  const [editing, setEditing] = useState(false)
  return (
    <Card title={say('As read off the sheet')}>
      {editing ? (
        <SafetyForm safety={safety} onClose={() => setEditing(false)} />
      ) : (
        <>
          {safety.version === 0 && (
            <p className={pieces.soft}>
              {say('Nobody has entered anything yet. Take section 2 of the sheet first.')}
            </p>
          )}
          {safety.maker && <p>{safety.maker}</p>}
          {safety.note && <p>{safety.note}</p>}
          <Button variant="default" size="xs" mt="sm" onClick={() => setEditing(true)}>
            {say('Enter what the sheet says')}
          </Button>
        </>
      )}
    </Card>
  )
}
