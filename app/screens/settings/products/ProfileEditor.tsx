import { Textarea } from '@mantine/core'
import type { CureProfile, Figure, FigureSource } from '../../../../main/domain/cure/index.ts'
import { showTemperature } from '../../../../main/domain/measure/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import { useShop } from '../../../data/shop.ts'
import type { Faults } from '../../../parts/faults.ts'
import { DurationInput, OptionalDurationInput } from '../../../parts/inputs.tsx'
import { ConditionFigures } from './ConditionFigures.tsx'
import { CurveFigures } from './CurveFigures.tsx'
import { FigureRow } from './FigureRow.tsx'
import type { FigureProps } from './figureProps.ts'
import styles from './Products.module.css'

export interface ProfileProps {
  profile: CureProfile
  onChange(profile: CureProfile): void
  faults: Faults
}

/** The moments that are one duration after the coat each. */
const moments = [
  { figure: 'tackFreeMin', label: 'Tack-free', about: 'may be moved, not before' },
  { figure: 'topperMin', label: 'Topper, at the least' },
  { figure: 'topperAdvisedMin', label: 'Topper, advised' },
  { figure: 'handoverMin', label: 'Handover, at the least' },
  { figure: 'handoverAdvisedMin', label: 'Handover, advised' },
  { figure: 'keepDryMin', label: 'Keep dry', about: 'no water until then' },
  { figure: 'firstWashMin', label: 'First wash' },
] as const

/** Every figure of a cure profile, counted from the end of the coat, with its source. */
export function ProfileEditor({ profile, onChange, faults }: ProfileProps) {
  const { units } = useShop()
  const put = (part: Partial<CureProfile>) => onChange({ ...profile, ...part })
  const sourced = (figure: Figure) => ({
    source: profile.sources[figure],
    onSource: (source: FigureSource) => put({ sources: { ...profile.sources, [figure]: source } }),
  })
  const at = (field: string) => faults.at(`cureProfile.${field}`)
  const fields = fieldsOf(profile, put, name => faults.under(`cureProfile.${name}`))
  const figures = { profile, put, at, fields, sourced }
  return (
    <>
      <fieldset className={styles.figures}>
        <legend>
          Times after the coat, at {showTemperature(profile.referenceC, units, navigator.language)}
        </legend>
        {moments.map(({ figure, label, ...rest }) => (
          <FigureRow key={figure} label={label} {...rest} {...sourced(figure)}>
            <DurationInput aria-label={label} w={110} {...fields.field(figure)} />
          </FigureRow>
        ))}
        <FigureRow label="Topper, no later than" about="empty: no limit" {...sourced('topperMaxMin')}>
          <OptionalDurationInput
            aria-label="Topper, no later than"
            w={110}
            {...fields.field('topperMaxMin')}
          />
        </FigureRow>
        <RecoatRow profile={profile} put={put} at={at} sourced={sourced('recoat')} />
        {profile.recoat && (
          <FigureRow label="If the window was missed" source="data sheet only">
            <Textarea
              aria-label="What to do if the recoat window was missed"
              placeholder="What the data sheet asks"
              autosize
              minRows={1}
              w={300}
              {...fields.field('missedRecoat')}
            />
          </FigureRow>
        )}
      </fieldset>
      <CurveFigures {...figures} />
      <ConditionFigures {...figures} />
    </>
  )
}

interface RecoatProps extends Omit<FigureProps, 'sourced' | 'fields'> {
  sourced: ReturnType<FigureProps['sourced']>
}

/** The window for a next layer: emptied, the sheet names none. */
function RecoatRow({ profile, put, at, sourced }: RecoatProps) {
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
    <FigureRow label="Next layer, from and to" about="empty: no second layer" {...sourced}>
      <OptionalDurationInput
        aria-label="Next layer, from"
        w={110}
        value={recoat?.minMin ?? null}
        onChange={minMin => change({ minMin })}
        error={at('recoat.minMin')}
      />
      <OptionalDurationInput
        aria-label="Next layer, to"
        w={110}
        value={recoat?.maxMin ?? null}
        onChange={maxMin => change({ maxMin })}
        error={at('recoat.maxMin') ?? at('recoat')}
      />
    </FigureRow>
  )
}
