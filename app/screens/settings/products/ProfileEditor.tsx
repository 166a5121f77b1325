import type { CureProfile, Figure, FigureSource } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { degreesWords } from '../../../../main/domain/measure/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import { useShop } from '../../../data/shop.ts'
import type { Faults } from '../../../parts/faults.ts'
import { DurationInput } from '../../../parts/inputs.tsx'
import { ConditionFigures } from './ConditionFigures.tsx'
import { CurveFigures } from './CurveFigures.tsx'
import { FigureRow } from './FigureRow.tsx'
import styles from './Products.module.css'
import { WindowFigures } from './WindowFigures.tsx'

export interface ProfileProps {
  profile: CureProfile
  onChange(profile: CureProfile): void
  faults: Faults
}

/** The moments that are one duration after the coat each. */
const moments = [
  { figure: 'tackFreeMin', label: say('Tack-free'), about: say('safe to touch and to move from then') },
  { figure: 'handoverMin', label: say('Earliest pick-up') },
  { figure: 'handoverAdvisedMin', label: say('Recommended pick-up') },
  { figure: 'keepDryMin', label: say('Keep dry'), about: say('no water until then') },
  { figure: 'firstWashMin', label: say('First wash') },
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
          {say('Times after the coat, at {referenceC}', {
            referenceC: degreesWords(profile.referenceC, units),
          })}
        </legend>
        {moments.map(({ figure, label, ...rest }) => (
          <FigureRow key={figure} label={label} {...rest} {...sourced(figure)}>
            <DurationInput aria-label={label} w={110} {...fields.field(figure)} />
          </FigureRow>
        ))}
      </fieldset>
      <WindowFigures {...figures} />
      <CurveFigures {...figures} />
      <ConditionFigures {...figures} />
    </>
  )
}
