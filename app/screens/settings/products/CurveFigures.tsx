import { Button, Group, NativeSelect } from '@mantine/core'
import type { CureProfile, ForcedCureRow, RateRule } from '../../../../main/domain/cure/index.ts'
import { showTemperatureDifference } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { DecimalInput, DurationInput } from '../../../parts/inputs.tsx'
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
export function CurveFigures({ profile, put, at, sourced }: FigureProps) {
  const { firstPeriod, fullCure, rate } = profile
  const tenDegrees = showTemperatureDifference(10, useShop().units, navigator.language)
  return (
    <fieldset className={styles.figures}>
      <legend>The curve</legend>
      <FigureRow
        label="First period, early and late"
        about="most of the cure happens in it"
        {...sourced('firstPeriod')}
      >
        <DurationInput
          aria-label="First period, early bound"
          w={110}
          value={firstPeriod.earlyMin}
          onChange={earlyMin => put({ firstPeriod: { ...firstPeriod, earlyMin } })}
          error={at('firstPeriod.earlyMin')}
        />
        <DurationInput
          aria-label="First period, late bound"
          w={110}
          value={firstPeriod.lateMin}
          onChange={lateMin => put({ firstPeriod: { ...firstPeriod, lateMin } })}
          error={at('firstPeriod.lateMin')}
        />
        <DecimalInput
          aria-label="Degree of cure at its end, percent"
          unit="%"
          most={100}
          w={90}
          value={Math.round(firstPeriod.degree * 1000) / 10}
          onChange={percent => put({ firstPeriod: { ...firstPeriod, degree: percent / 100 } })}
          error={at('firstPeriod.degree')}
        />
      </FigureRow>
      <FigureRow label="Full cure, early and late" {...sourced('fullCure')}>
        <DurationInput
          aria-label="Full cure, early bound"
          w={110}
          value={fullCure.earlyMin}
          onChange={earlyMin => put({ fullCure: { ...fullCure, earlyMin } })}
          error={at('fullCure.earlyMin')}
        />
        <DurationInput
          aria-label="Full cure, late bound"
          w={110}
          value={fullCure.lateMin}
          onChange={lateMin => put({ fullCure: { ...fullCure, lateMin } })}
          error={at('fullCure.lateMin')}
        />
      </FigureRow>
      <FigureRow label="All times hold at" source={null}>
        <TemperatureInput
          aria-label="Reference temperature"
          valueC={profile.referenceC}
          onChange={referenceC => put({ referenceC })}
          error={at('referenceC')}
        />
      </FigureRow>
      <FigureRow
        label="Pace at other temperatures"
        about={`doubling per ${tenDegrees} is a rule of thumb`}
        {...sourced('rate')}
      >
        <NativeSelect
          aria-label="How the pace follows temperature"
          data={[
            { value: 'doubling', label: `doubles per ${tenDegrees}` },
            { value: 'arrhenius', label: 'Arrhenius, E/R' },
            { value: 'linear', label: 'degree-hours above a datum' },
          ]}
          value={rate.rule}
          onChange={event => put({ rate: freshRate[event.currentTarget.value as RateRule['rule']] })}
        />
        {rate.rule === 'arrhenius' && (
          <DecimalInput
            aria-label="Activation energy over the gas constant, in kelvin"
            unit="K"
            w={110}
            value={rate.activationOverRK}
            onChange={activationOverRK => put({ rate: { rule: 'arrhenius', activationOverRK } })}
            error={at('rate.activationOverRK')}
          />
        )}
        {rate.rule === 'linear' && (
          <TemperatureInput
            aria-label="Datum: the temperature at which the cure stands still"
            valueC={rate.datumC}
            onChange={datumC => put({ rate: { rule: 'linear', datumC } })}
            error={at('rate.datumC')}
          />
        )}
      </FigureRow>
      <FigureRow label="Heated cure" about="only rows the data sheet gives" source="data sheet only">
        <HeatedRows
          rows={profile.forcedCure}
          put={forcedCure => put({ forcedCure })}
          at={at}
          profile={profile}
        />
      </FigureRow>
    </fieldset>
  )
}

interface HeatedProps {
  rows: readonly ForcedCureRow[]
  profile: CureProfile
  put(rows: ForcedCureRow[]): void
  at(field: string): string | undefined
}

function HeatedRows({ rows, profile, put, at }: HeatedProps) {
  const change = (index: number, part: Partial<ForcedCureRow>) =>
    put(rows.map((row, i) => (i === index ? { ...row, ...part } : row)))
  return (
    <div>
      {rows.map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a row has no other name than its place
        <Group key={i} gap={6} mb={6} align="flex-start">
          <TemperatureInput
            aria-label={`Heated cure ${i + 1}, panel temperature`}
            valueC={row.panelC}
            onChange={panelC => change(i, { panelC })}
            error={at(`forcedCure.${i}.panelC`)}
          />
          <DurationInput
            aria-label={`Heated cure ${i + 1}, for`}
            w={90}
            value={row.minutes}
            onChange={minutes => change(i, { minutes })}
            error={at(`forcedCure.${i}.minutes`)}
          />
          <DurationInput
            aria-label={`Heated cure ${i + 1}, stands for`}
            w={90}
            value={row.standsForMin}
            onChange={standsForMin => change(i, { standsForMin })}
            error={at(`forcedCure.${i}.standsForMin`)}
          />
          <Button
            variant="subtle"
            size="compact-sm"
            mt={6}
            onClick={() => put(rows.filter((_, k) => k !== i))}
          >
            Take out
          </Button>
        </Group>
      ))}
      <Button
        variant="default"
        size="compact-sm"
        onClick={() =>
          put([...rows, { panelC: Math.max(60, profile.referenceC), minutes: 60, standsForMin: 1440 }])
        }
      >
        Add a row
      </Button>
    </div>
  )
}
