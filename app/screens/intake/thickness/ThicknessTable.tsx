import type { Measured } from '../../../../main/api/views.ts'
import { type CarThickness, usualThickness } from '../../../../main/domain/measure/index.ts'
import { HeadRow } from '../../../parts/HeadRow.tsx'
import pieces from '../../../parts/pieces.module.css'
import table from '../../../parts/table.module.css'
import { thicknessWords } from '../words.ts'
import styles from './Thickness.module.css'

interface Props {
  car: CarThickness
  readings: Measured['thickness']
  units: 'us' | 'metric'
  /** Takes a reading out, by its place; left out where they are only looked at. */
  onRemove?: (index: number) => void
}

const verdictWords = {
  'as built': '',
  'likely repainted': '◆ Likely repainted',
  'likely filler': '⚑ Likely filler',
}

/** Panel by panel what was read and what it says; what lies beneath is a likelihood, the budget an estimate. */
export function ThicknessTable({ car, readings, units, onRemove }: Props) {
  if (car.panels.length === 0) return null
  const words = (um: number) => thicknessWords(um, units)
  return (
    <div className={styles.scroll}>
      <table className={table.table}>
        <caption className={styles.caption}>
          Car: {car.typicalUm !== null && words(car.typicalUm)} typical
        </caption>
        <HeadRow
          columns={['Panel', 'Readings', 'Typical', 'Thinnest', 'Correction, estimate', 'What it says']}
        />
        <tbody>
          {car.panels.map(panel => (
            <tr key={panel.panel}>
              <td>{panel.panel}</td>
              <td className={styles.readings}>
                {readings.map((each, i) =>
                  each.panel !== panel.panel ? null : onRemove ? (
                    <button
                      // biome-ignore lint/suspicious/noArrayIndexKey: readings have no other name than their place
                      key={i}
                      type="button"
                      title="Take it out"
                      aria-label={`Take out ${panel.panel}, spot ${each.spot}, ${words(each.um)}`}
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
              <td>{panel.belowFloor ? 'none' : `about ${words(panel.budgetUm)}`}</td>
              <td>
                {panel.belowFloor && 'Under the floor: no correction without a reason. '}
                {verdictWords[panel.verdict]}
                {panel.reason && <small> {panel.reason}</small>}
                {panel.farOutUm.length > 0 && (
                  <small> Read again: {panel.farOutUm.map(words).join(', ')} is not like the rest.</small>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={pieces.soft}>
        Floor {words(usualThickness.floorUm)}, less {words(usualThickness.gaugeUm)} for the gauge; of a clear
        coat at most {words(usualThickness.mostTakenUm)} in all its life (common practice, no source). A gauge
        reads all layers together: what is left of the clear coat nobody can see.
      </p>
    </div>
  )
}
