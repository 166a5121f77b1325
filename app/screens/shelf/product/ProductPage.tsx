import { Tabs } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { mayLeave } from '../../../data/unsaved.ts'
import { Lookup } from '../../../parts/Lookup.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { AdviceNumbers } from '../../../parts/shelf/AdviceNumbers.tsx'
import { AdviceWords } from '../../../parts/shelf/AdviceWords.tsx'
import { amountText } from '../../../parts/shelf/amounts.ts'
import { Pictograms } from '../../../parts/shelf/Pictograms.tsx'
import { ProjectionChart } from '../../../parts/shelf/ProjectionChart.tsx'
import { labelOf, productKindChoices } from '../../../parts/shopWords.ts'
import styles from '../Shelf.module.css'
import { SafetyCard } from '../safety/SafetyCard.tsx'
import { Buying } from './Buying.tsx'
import { KeptForm } from './KeptForm.tsx'
import { Recipes } from './Recipes.tsx'
import { StockTab } from './StockTab.tsx'
import { ValueCard } from './ValueCard.tsx'

/** One product: what stands there, where it goes, how it is bought, what it does to people, what it is worth. */
export function ProductPage({ id = '' }: SectionProps) {
  const { currency } = useShop()
  const [tab, setTab] = useState<string | null>('stock')
  const query = useQuery(trpc.shelf.product.queryOptions({ id }))
  const product = query.data
  if (!product)
    return <Lookup error={query.error} what="the product" to="/shelf/stock" label="To the shelf" />
  const { name, kind, shelf, safety, advice, projection } = product
  const show = (next: string | null) => void mayLeave(document.body).then(may => may && setTab(next))
  return (
    <>
      <div className={styles.heading}>
        <h1>{name}</h1>
        <span className={styles.soft}>
          {labelOf(productKindChoices, kind as never)}
          {shelf && ` · ${amountText(product.onHand, shelf.unit)}`}
          {shelf && product.usable < product.onHand && `, ${amountText(product.usable, shelf.unit)} in date`}
          {shelf?.place && ` · ${shelf.place}`}
        </span>
        <Pictograms codes={safety.label.pictograms.map(each => each.code)} />
        <Link className={styles.end} to="/settings/$section/$id" params={{ section: 'products', id }}>
          Name and cure profile
        </Link>
      </div>
      <p className={styles.soft}>{safety.caution}</p>
      {!shelf ? (
        <div className={styles.stack}>
          <div className={styles.card}>
            <h2>Begin to count it</h2>
            <KeptForm product={product} />
          </div>
          <SafetyCard safety={safety} />
        </div>
      ) : (
        <>
          {projection && advice && (
            <div className={styles.card}>
              <div className={styles.outlook}>
                <ProjectionChart
                  name={name}
                  unit={shelf.unit}
                  onHand={product.usable}
                  projection={projection}
                  leadDays={advice.facts?.coverDays ?? null}
                  height={9.4}
                />
                <div>
                  <AdviceWords advice={advice} />
                  {projection.runsDry && <p className={styles.late}>{projection.runsDry.words}</p>}
                  {projection.expiries.map(expiry => (
                    <p key={expiry.date} className={styles.soft}>
                      {expiry.words}
                    </p>
                  ))}
                </div>
              </div>
            </div>
          )}
          <Tabs value={tab} onChange={show} keepMounted={false}>
            <Tabs.List mb="md">
              <Tabs.Tab value="stock">Bottles and ledger</Tabs.Tab>
              <Tabs.Tab value="recipe">Recipe and real use</Tabs.Tab>
              <Tabs.Tab value="buying">Sizes and buying</Tabs.Tab>
              <Tabs.Tab value="safety">Safety</Tabs.Tab>
              {advice?.facts && <Tabs.Tab value="numbers">Numbers</Tabs.Tab>}
              <Tabs.Tab value="value">Value</Tabs.Tab>
              <Tabs.Tab value="kept">How it is kept</Tabs.Tab>
            </Tabs.List>
            <Tabs.Panel value="stock">
              <StockTab product={product} unit={shelf.unit} />
            </Tabs.Panel>
            <Tabs.Panel value="recipe">
              <Recipes product={product} unit={shelf.unit} />
            </Tabs.Panel>
            <Tabs.Panel value="buying">
              <Buying product={product} unit={shelf.unit} />
            </Tabs.Panel>
            <Tabs.Panel value="safety">
              <SafetyCard safety={safety} />
            </Tabs.Panel>
            {advice?.facts && (
              <Tabs.Panel value="numbers">
                <div className={styles.card}>
                  <AdviceNumbers facts={advice.facts} unit={shelf.unit} currency={currency} />
                </div>
              </Tabs.Panel>
            )}
            <Tabs.Panel value="value">
              <ValueCard value={product.value} currency={currency} />
            </Tabs.Panel>
            <Tabs.Panel value="kept">
              <div className={styles.card}>
                <h2>How it is counted and kept</h2>
                {product.storageWords && <p className={styles.soft}>{product.storageWords}</p>}
                <KeptForm product={product} />
              </div>
            </Tabs.Panel>
          </Tabs>
        </>
      )}
    </>
  )
}
