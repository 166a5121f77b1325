import { Group, NativeSelect } from '@mantine/core'
import type { ForcedCureRow, RateRule } from '../../../../main/domain/cure/index.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { marginWords } from '../../../../main/domain/measure/index.ts'
import { fieldsOf } from '../../../data/fields.ts'
import { useShop } from '../../../data/shop.ts'
import { DecimalInput, DurationInput } from '../../../parts/inputs.tsx'
import { RowButton } from '../../../parts/RowButton.tsx'
import { FigureRow } from './FigureRow.tsx'
import type { FigureProps } from './figureProps.ts'
import styles from './Products.module.css'
import { TemperatureInput } from './TemperatureInput.tsx'

/** What a rule begins with until the sheet's own figure is typed. */
const freshRate: Record<RateRule['rule'], RateRule> = {
  doubling: { rule: 'doubling' },
  arrhenius: { rule: 'arrhenius', activationOverRK: 6_000 },
  linear: { rule: 'linear', datumC: 0 },
}

/** The figures that shape the curve: its two stretches, how temperature changes the pace, and heated cures. */
export function CurveFigures({ profile, put, at, fields, sourced }: FigureProps) {
  const { firstPeriod, rate } = profile
  const first = fields.within('firstPeriod')
  const full = fields.within('fullCure')
  const tenDegrees = marginWords(10, useShop().units)
  return (
    <fieldset className={styles.figures}>
      <legend>{say('The curve')}</legend>
      <FigureRow
        label={say('First period, early and late')}
        about={say('most of the cure happens in it')}
        {...sourced('firstPeriod')}
      >
        <DurationInput aria-label={say('First period, early bound')} w={110} {...first.field('earlyMin')} />
        <DurationInput aria-label={say('First period, late bound')} w={110} {...first.field('lateMin')} />
        <DecimalInput
          aria-label={say('Degree of cure at its end, percent')}
          unit="%"
          most={100}
          w={90}
          {...first.field('degree')}
          value={Math.round(firstPeriod.degree * 1000) / 10}
          onChange={percent => put({ firstPeriod: { ...firstPeriod, degree: percent / 100 } })}
        />
      </FigureRow>
      <FigureRow label={say('Full cure, early and late')} {...sourced('fullCure')}>
        <DurationInput aria-label={say('Full cure, early bound')} w={110} {...full.field('earlyMin')} />
        <DurationInput aria-label={say('Full cure, late bound')} w={110} {...full.field('lateMin')} />
      </FigureRow>
      <FigureRow label={say('All times hold at')} source={null}>
        <TemperatureInput aria-label={say('Reference temperature')} {...fields.field('referenceC')} />
      </FigureRow>
      <FigureRow
        label={say('Pace at other temperatures')}
        about={say('doubling per {tenDegrees} is a rule of thumb', { tenDegrees })}
        {...sourced('rate')}
      >
        <NativeSelect
          aria-label={say('How the pace follows temperature')}
          data={[
            { value: 'doubling', label: say('doubles per {tenDegrees}', { tenDegrees }) },
            { value: 'arrhenius', label: say('Arrhenius, E/R') },
            { value: 'linear', label: say('degree-hours above a datum') },
          ]}
          value={rate.rule}
          onChange={event => put({ rate: freshRate[event.currentTarget.value as RateRule['rule']] })}
        />
        {rate.rule === 'arrhenius' && (
          <DecimalInput
            aria-label={say('Activation energy over the gas constant, in kelvin')}
            unit="K"
            w={110}
            value={rate.activationOverRK}
            onChange={activationOverRK => put({ rate: { rule: 'arrhenius', activationOverRK } })}
            error={at('rate.activationOverRK')}
          />
        )}
        {rate.rule === 'linear' && (
          <TemperatureInput
            aria-label={say('Datum: the temperature at which the cure stands still')}
            value={rate.datumC}
            onChange={datumC => put({ rate: { rule: 'linear', datumC } })}
            error={at('rate.datumC')}
          />
        )}
      </FigureRow>
      <FigureRow
        label={say('Heated cure')}
        about={say('only rows the data sheet gives')}
        source="data sheet only"
      >
        <HeatedRows
          rows={profile.forcedCure}
          newC={Math.max(60, profile.referenceC)}
          put={forcedCure => put({ forcedCure })}
          at={at}
        />
      </FigureRow>
    </fieldset>
  )
}

interface HeatedProps {
  rows: readonly ForcedCureRow[]
  /** What a new row begins with. */
  newC: number
  put(rows: ForcedCureRow[]): void
  at(field: string): string | undefined
}

function HeatedRows({ rows, newC, put, at }: HeatedProps) {
  return (
    <div>
      {rows.map((row, i) => {
        const title = say('Heated cure {i}', { i: i + 1 })
        const fields = fieldsOf(
          row,
          part => put(rows.with(i, { ...row, ...part })),
          name => at(`forcedCure.${i}.${name}`),
        )
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its place
          <Group key={i} gap={6} mb={6} align="flex-start">
            <TemperatureInput
              aria-label={say('{title}, panel temperature', { title })}
              {...fields.field('panelC')}
            />
            <DurationInput aria-label={say('{title}, for', { title })} w={90} {...fields.field('minutes')} />
            <DurationInput
              aria-label={say('{title}, stands for', { title })}
              w={90}
              {...fields.field('standsForMin')}
            />
            <RowButton
              does={say('Take out')}
              variant="subtle"
              mt={6}
              onClick={() => put(rows.toSpliced(i, 1))}
            />
          </Group>
        )
      })}
      <RowButton
        does={say('Add a row')}
        onClick={() => put([...rows, { panelC: newC, minutes: 60, standsForMin: 1440 }])}
      />
    </div>
  )
}
