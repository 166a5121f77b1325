import { MultiSelect, Textarea } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { TopperFigures } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { trpc } from '../../../data/trpc.ts'
import { OptionalDurationInput } from '../../../parts/inputs.tsx'
import { FigureRow } from './FigureRow.tsx'
import type { FigureProps } from './figureProps.ts'
import styles from './Products.module.css'
import { WindowRows } from './WindowRows.tsx'

/** The windows in which a next layer or a topper goes on; they hold for every panel, the first and the last. */
export function WindowFigures(props: FigureProps) {
  const { profile, put, at } = props
  return (
    <fieldset className={styles.figures}>
      <legend>{say('Windows, from the end of a panel to the same panel’s next layer')}</legend>
      <RecoatRow {...props} />
      {profile.recoat && (
        <FigureRow label={say('If the window was missed')} source="data sheet only">
          <Textarea
            aria-label={say('What to do if the recoat window was missed')}
            placeholder={say('What the data sheet asks')}
            autosize
            minRows={1}
            w={300}
            value={profile.missedRecoat}
            onChange={event => put({ missedRecoat: event.currentTarget.value })}
            error={at('missedRecoat')}
          />
        </FigureRow>
      )}
      <TopperRows {...props} />
      <FigureRow
        label={say('At other temperatures')}
        about={say('without a row, cold opens later and heat closes sooner, never the other way')}
        source="data sheet only"
      >
        <WindowRows {...props} />
      </FigureRow>
    </fieldset>
  )
}

/** The window for a next layer: emptied, the sheet names none. */
function RecoatRow({ profile, put, at, sourced }: FigureProps) {
  const { recoat } = profile
  const change = (part: { minMin?: number | null; maxMin?: number | null }) => {
    const next = { minMin: recoat?.minMin ?? null, maxMin: recoat?.maxMin ?? null, ...part }
    const emptied = Object.values(part).includes(null)
    if (emptied || (next.minMin === null && next.maxMin === null)) put({ recoat: null })
    else {
      const minMin = next.minMin ?? next.maxMin!
      put({ recoat: { minMin, maxMin: next.maxMin ?? minMin } })
    }
  }
  return (
    <FigureRow
      label={say('Next layer, from and to')}
      about={say('empty: no second layer; on each panel, the largest an eighth of a layer (common practice)')}
      {...sourced('recoat')}
    >
      <OptionalDurationInput
        aria-label={say('Next layer, from')}
        w={110}
        value={recoat?.minMin ?? null}
        onChange={minMin => change({ minMin })}
        error={at('recoat.minMin')}
      />
      <OptionalDurationInput
        aria-label={say('Next layer, to')}
        w={110}
        value={recoat?.maxMin ?? null}
        onChange={maxMin => change({ maxMin })}
        error={at('recoat.maxMin') ?? at('recoat')}
      />
    </FigureRow>
  )
}

/** The window for a topper and the toppers it is for: emptied, the sheet names none. */
function TopperRows({ profile, put, at }: FigureProps) {
  const products = useQuery(trpc.products.list.queryOptions({})).data ?? []
  const { topper } = profile
  const change = (part: Partial<TopperFigures>) => topper && put({ topper: { ...topper, ...part } })
  const from = (minMin: number | null) => {
    if (minMin === null) put({ topper: null })
    else if (topper) change({ minMin })
    else put({ topper: { minMin, advisedMin: minMin, maxMin: null, productIds: [] } })
  }
  return (
    <>
      <FigureRow label={say('Topper, from')} about={say('empty: no topper')} source="data sheet only">
        <OptionalDurationInput
          aria-label={say('Topper, from')}
          w={110}
          value={topper?.minMin ?? null}
          onChange={from}
          error={at('topper.minMin') ?? at('topper')}
        />
      </FigureRow>
      {topper && (
        <>
          <FigureRow
            label={say('Topper, advised and to')}
            about={say('empty: no limit')}
            source="data sheet only"
          >
            <OptionalDurationInput
              aria-label={say('Topper, advised')}
              w={110}
              value={topper.advisedMin}
              onChange={advisedMin => change({ advisedMin: advisedMin ?? topper.minMin })}
              error={at('topper.advisedMin')}
            />
            <OptionalDurationInput
              aria-label={say('Topper, no later than')}
              w={110}
              value={topper.maxMin}
              onChange={maxMin => change({ maxMin })}
              error={at('topper.maxMin')}
            />
          </FigureRow>
          <FigureRow label={say('Toppers the maker allows on it')} source="data sheet only">
            <MultiSelect
              aria-label={say('Toppers the maker allows on it')}
              w={300}
              data={products
                .filter(({ kind }) => kind === 'topper')
                .map(({ id, name }) => ({ value: id, label: name }))}
              value={[...topper.productIds]}
              onChange={productIds => change({ productIds })}
              error={at('topper.productIds')}
            />
          </FigureRow>
        </>
      )}
    </>
  )
}
