import { Tabs } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { type ReactNode, useState } from 'react'
import { say } from '../../../../main/domain/language/index.ts'
import { amountText } from '../../../../main/domain/shelf/index.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { mayLeave } from '../../../data/unsaved.ts'
import { Card } from '../../../parts/Card.tsx'
import { HistoryCard } from '../../../parts/HistoryLines.tsx'
import { Lookup } from '../../../parts/Lookup.tsx'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import { labelOf, productKindChoices } from '../../../parts/shopWords.ts'
import { SafetyCard } from '../safety/SafetyCard.tsx'
import { Buying } from './Buying.tsx'
import { DilutionForm } from './DilutionForm.tsx'
import { KeptForm } from './KeptForm.tsx'
import { LifeProposal } from './LifeProposal.tsx'
import { Outlook } from './Outlook.tsx'
import { Recipes } from './Recipes.tsx'
import { Reusables } from './Reusables.tsx'
import { StockTab } from './StockTab.tsx'
import { ValueCard } from './ValueCard.tsx'

/** One product: what stands there, where it goes, how it is bought, what it does to people, what it is worth. */
export function ProductPage({ id = '' }: SectionProps) {
  const { currency } = useShop()
  const query = useQuery(trpc.shelf.product.queryOptions({ id }))
  const product = query.data
  if (!product)
    return (
      <Lookup error={query.error} what={say('the product')} to="/shelf/stock" label={say('To the shelf')} />
    )
  const { name, kind, shelf, safety } = product
  const inDate = shelf && product.usable < product.onHand
  const about = [
    labelOf(productKindChoices, kind as never),
    shelf &&
      amountText(product.onHand, shelf.unit) +
        (inDate ? say(', {usable} in date', { usable: amountText(product.usable, shelf.unit) }) : ''),
    shelf?.place,
    product.madeFrom && say('made from {words}', { words: product.madeFrom.words }),
  ]
  return (
    <>
      <ScreenTitle title={name}>
        <span className={pieces.soft}>{about.filter(Boolean).join(' · ')}</span>
        <Pictograms codes={safety.label.pictograms.map(each => each.code)} />
        <Link className={pieces.end} to="/settings/$section/$id" params={{ section: 'products', id }}>
          {say('Name and cure profile')}
        </Link>
      </ScreenTitle>
      <p className={pieces.soft}>{safety.caution}</p>
      {shelf ? (
        <>
          <Outlook product={product} unit={shelf.unit} />
          <LifeProposal product={product} />
          <ProductTabs
            of={{
              [say('Bottles and ledger')]: <StockTab product={product} unit={shelf.unit} />,
              [say('In use and washed')]: shelf.unit === 'piece' && <Reusables product={product} />,
              [say('Recipe and real use')]: <Recipes product={product} unit={shelf.unit} />,
              [say('Sizes and buying')]: <Buying product={product} unit={shelf.unit} />,
              [say('Safety')]: <SafetyCard safety={safety} />,
              [say('Value')]: <ValueCard value={product.value} currency={currency} />,
              [say('How it is kept')]: (
                <div className={pieces.column}>
                  <Card title={say('How it is counted and kept')}>
                    {product.storageWords && <p className={pieces.soft}>{product.storageWords}</p>}
                    <KeptForm product={product} />
                  </Card>
                  {shelf.unit !== 'piece' && <DilutionForm product={product} />}
                </div>
              ),
            }}
          />
        </>
      ) : (
        <div className={pieces.column}>
          <Card title={say('Begin to count it')}>
            <KeptForm product={product} />
          </Card>
          <SafetyCard safety={safety} />
        </div>
      )}
      <HistoryCard entities={['stock', 'product', 'safety', 'product life']} id={id} />
    </>
  )
}

/** A tab each, by its name; none where there is nothing to show in it. */
function ProductTabs({ of }: { of: Readonly<Record<string, ReactNode>> }) {
  // An id is made of a tab's value: its place, for a name has spaces.
  const tabs = Object.entries(of).map(([name, shown], i) => ({ name, shown, value: String(i) }))
  const [tab, setTab] = useState<string | null>('0')
  const show = (next: string | null) => void mayLeave(document.body).then(may => may && setTab(next))
  const there = tabs.filter(({ shown }) => shown)
  return (
    <Tabs value={tab} onChange={show} keepMounted={false}>
      <Tabs.List mb="md">
        {there.map(({ name, value }) => (
          <Tabs.Tab key={value} value={value}>
            {name}
          </Tabs.Tab>
        ))}
      </Tabs.List>
      {there.map(({ shown, value }) => (
        <Tabs.Panel key={value} value={value}>
          {shown}
        </Tabs.Panel>
      ))}
    </Tabs>
  )
}
