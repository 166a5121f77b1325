import type { Measured } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { carThickness, type ThicknessRules, thicknessWords } from '../../../../main/domain/measure/index.ts'
import type { PaintSystem } from '../../../../main/domain/shop/index.ts'
import { HeadRow } from '../../../parts/HeadRow.tsx'
import pieces from '../../../parts/pieces.module.css'
import table from '../../../parts/table.module.css'
import styles from './Thickness.module.css'

interface Props {
  readings: Measured['thickness']
  /** What they are judged by. */
  rules: ThicknessRules
  paint: PaintSystem
  units: 'us' | 'metric'
  /** Takes a reading out, by its place; left out where they are only looked at. */
  onRemove?: (index: number) => void
}

const verdictWords = {
  'as built': '',
  'likely repainted': say('◆ Likely repainted'),
  'likely filler': say('⚑ Likely filler'),
}

/** Panel by panel what was read and what it says; what lies beneath is a likelihood, the budget an estimate. */
export function ThicknessTable({ readings, rules, paint, units, onRemove }: Props) {
  const words = (um: number) => thicknessWords(um, units)
  const car = carThickness(readings, rules, words)
  if (car.panels.length === 0) return null
  return (
    <div className={styles.scroll}>
      <table className={table.table}>
        <caption className={styles.caption}>
          {car.typicalUm !== null && say('Car: {typicalUm} typical', { typicalUm: words(car.typicalUm) })}
        </caption>
        <HeadRow
          columns={[
            say('Panel'),
            say('Readings'),
            say('Typical'),
            say('Thinnest'),
            say('Correction, estimate'),
            say('What it says'),
          ]}
        />
        <tbody>
          {car.panels.map(panel => (
            <tr key={panel.panel}>
              <td>{say(panel.panel)}</td>
              <td className={styles.readings}>
                {readings.map((each, i) =>
                  each.panel !== panel.panel ? null : onRemove ? (
                    <button
                      // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name than their place
                      key={i}
                      type="button"
                      title={say('Take it out')}
                      aria-label={say('Take out {panel}, spot {spot}, {um}', {
                        panel: say(panel.panel),
                        spot: each.spot,
                        um: words(each.um),
                      })}
                      data-far={panel.farOutUm.includes(each.um)}
                      onClick={() => onRemove(i)}
                    >
                      {words(each.um)}
                    </button>
                  ) : (
                    // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name than their place
                    <span key={i}>{words(each.um)}</span>
                  ),
                )}
              </td>
              <td>{words(panel.typicalUm)}</td>
              <td className={panel.belowFloor ? pieces.late : undefined}>
                {panel.belowFloor && '⚑ '}
                {words(panel.leastUm)}
              </td>
              <td>
                {panel.belowFloor
                  ? say('none')
                  : say('about {budgetUm}', { budgetUm: words(panel.budgetUm) })}
              </td>
              <td>
                {panel.belowFloor && `${say('Under the floor: no correction without a reason.')} `}
                {verdictWords[panel.verdict]}
                {panel.reason && <small> {panel.reason}</small>}
                {panel.farOutUm.length > 0 && (
                  <small>
                    {' '}
                    {say('Read again: {farOutUm} is not like the rest.', {
                      farOutUm: panel.farOutUm.map(words).join(', '),
                    })}
                  </small>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={pieces.soft}>
        {say(
          'Floor {floorUm}, less {gaugeUm} for the gauge; of a clear coat at most {mostTakenUm} in all its life (common practice, no source). A gauge reads all layers together: what is left of the clear coat nobody can see.',
          {
            floorUm: words(rules.floorUm),
            gaugeUm: words(rules.gaugeUm),
            mostTakenUm: words(rules.mostTakenUm),
          },
        )}
        {paint === 'single-stage' &&
          ` ${say('Single-stage paint: what correction takes off is the colour itself.')}`}
        {paint === 'unknown' &&
          ` ${say('Nobody has noted whether this paint has a clear coat: try a hidden spot first.')}`}
      </p>
    </div>
  )
}
