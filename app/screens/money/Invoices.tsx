import { TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { RowLinks } from '../../parts/RowLinks.tsx'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { fullDateWords } from '../../parts/time.ts'
import { Waiting } from '../../parts/Waiting.tsx'
import { InvoiceSheet } from './InvoiceSheet.tsx'
import styles from './Money.module.css'
import { paperWords } from './words.ts'

/** Every invoice and credit note, found by its number, a name or a plate. */
export function Invoices({ id }: SectionProps) {
  const [typed, setTyped] = useState('')
  const [text] = useDebouncedValue(typed, 200)
  const { data: papers, error } = useQuery({
    ...trpc.money.papers.queryOptions({ text }),
    placeholderData: before => before,
  })
  if (!papers) return <Waiting error={error} words={say('Looking them up')} />
  return (
    <>
      <ScreenTitle title={say('Invoices')} />
      <div className={id ? `${pieces.side} ${styles.chosen}` : pieces.side}>
        <div className={pieces.column}>
          <TextInput
            aria-label={say('Find an invoice')}
            placeholder={say('Number, name or plate')}
            value={typed}
            maxLength={200}
            onChange={event => setTyped(event.currentTarget.value)}
          />
          <RowLinks
            label={say('Invoices and credit notes')}
            to="/money/$section/$id"
            section="invoices"
            rows={papers.map(each => ({
              id: each.id,
              title: `${each.name} · ${each.customerName}`,
              about: `${paperWords[each.kind]}, ${fullDateWords(each.issuedOn)} · ${money(each.withTaxMinor, each.currency)}`,
            }))}
          />
          {papers.length === 0 && (
            <p className={pieces.empty}>
              {typed
                ? say('No invoice fits that.')
                : say('No invoice yet: a job is billed from its page, under Bill.')}
            </p>
          )}
        </div>
        <div className={pieces.column}>
          {id ? (
            <InvoiceSheet key={id} id={id} />
          ) : (
            papers.length > 0 && <p className={pieces.empty}>{say('Choose an invoice to see it.')}</p>
          )}
        </div>
      </div>
    </>
  )
}
