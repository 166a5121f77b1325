import { Button, TextInput } from '@mantine/core'
import { IconSearch } from '@tabler/icons-react'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { CloseProductView, ShelfListItem } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { adviceTitle } from '../../parts/shelf/AdviceWords.tsx'
import { yearDateWords } from '../../parts/shelf/amounts.ts'
import { BottleBar } from '../../parts/shelf/BottleBar.tsx'
import { knownPictograms } from '../../parts/shelf/HazardMark.tsx'
import { Pictograms } from '../../parts/shelf/Pictograms.tsx'
import { Sparkline } from '../../parts/shelf/Sparkline.tsx'
import { labelOf, productKindChoices } from '../../parts/shopWords.ts'
import table from '../../parts/table.module.css'
import { Waiting } from '../../parts/Waiting.tsx'
import styles from './Shelf.module.css'
import { useShelfToday } from './useShelfToday.ts'

/** Every product on the shelf, with its bottles and where they are going. */
export function Stock() {
  const [text, setText] = useState('')
  const { data: list, error } = useQuery(trpc.shelf.list.queryOptions())
  const today = useShelfToday()
  if (!list) return <Waiting error={error} words={say('Checking the shelf')} />
  const wanted = text.trim().toLowerCase()
  const shown = list.filter(item => `${item.name} ${item.place} ${item.kind}`.toLowerCase().includes(wanted))
  const counted = list.filter(item => item.unit !== null).length
  return (
    <>
      <ScreenTitle title={say('Shelf')}>
        <span className={pieces.soft}>
          {say('{counted} of {list} products counted', { counted, list: list.length })}
        </span>
        <TextInput
          className={pieces.end}
          aria-label={say('Find a product')}
          placeholder={say('Name, kind or place')}
          leftSection={<IconSearch size="1rem" aria-hidden="true" />}
          value={text}
          onChange={event => setText(event.currentTarget.value)}
        />
        <Button component={Link} to="/settings/products/new" variant="default">
          {say('Add a product')}
        </Button>
      </ScreenTitle>
      {list.length === 0 ? (
        <p className={pieces.empty}>
          {say(
            'There is no product yet. Add what goes onto cars under Settings, Products; then say here how each is counted and receive what stands on the shelf.',
          )}
        </p>
      ) : (
        <Card>
          <div className={table.across}>
            <table className={table.table}>
              <thead>
                <tr>
                  {[
                    say('Product'),
                    say('On hand'),
                    say('Bottles'),
                    say('Next weeks'),
                    say('Advice'),
                    say('Hazard'),
                  ].map(head => (
                    <th key={head} scope="col">
                      {head}
                    </th>
                  ))}
                </tr>
              </thead>
              <tbody>
                {shown.map(item => (
                  <StockRow
                    key={item.id}
                    item={item}
                    today={today?.products.find(each => each.id === item.id)}
                  />
                ))}
              </tbody>
            </table>
          </div>
          {shown.length === 0 && <p className={pieces.soft}>{say('No product found.')}</p>}
        </Card>
      )}
    </>
  )
}

function StockRow({ item, today }: { item: ShelfListItem; today: CloseProductView | undefined }) {
  const { unit } = item
  return (
    <tr>
      <td>
        <Link to="/shelf/$section/$id" params={{ section: 'product', id: item.id }}>
          <b>{item.name}</b>
        </Link>
        <small>
          {[labelOf(productKindChoices, item.kind as never), item.place].filter(Boolean).join(' · ')}
        </small>
      </td>
      {unit === null ? (
        <td colSpan={4} className={pieces.soft}>
          {say('not counted yet: open it to start')}
        </td>
      ) : (
        <>
          <td className={styles.amount}>
            {amountText(item.onHand, unit)}
            {item.usable < item.onHand && (
              <small className={pieces.late}>
                {say('{usable} in date', { usable: amountText(item.usable, unit) })}
              </small>
            )}
            {item.nextExpiry && (
              <small>{say('next date {nextExpiry}', { nextExpiry: yearDateWords(item.nextExpiry) })}</small>
            )}
          </td>
          <td className={styles.bottleCell}>
            {today && <BottleBar name={item.name} unit={unit} lots={today.lots} />}
          </td>
          <td>{today && <Sparkline name={item.name} unit={unit} product={today} />}</td>
          <td className={styles.adviceCell}>
            {today && adviceTitle(today.advice)}
            {today?.projection.runsDry && (
              <small className={pieces.late}>{today.projection.runsDry.words}</small>
            )}
          </td>
        </>
      )}
      <td>
        <Pictograms codes={knownPictograms(item.pictograms)} size={1.7} />
        {item.signalWord && <small>{say(item.signalWord)}</small>}
      </td>
    </tr>
  )
}
