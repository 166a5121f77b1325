import { type KeyboardEvent, type MouseEvent, useMemo, useRef } from 'react'
import type { Defect } from '../../../../main/api/views.ts'
import { defectWords, drawCar, pictureSize } from '../../../../main/domain/intake/index.ts'
import type { BodyShape } from '../../../../main/domain/intake/words.ts'
import { say, sayKept } from '../../../../main/domain/language/index.ts'
import type { PanelName } from '../../../../main/domain/shop/index.ts'
import styles from './CarDrawing.module.css'

interface Props {
  shape: BodyShape
  defects: readonly Defect[]
  /** Of each panel what it is, such as matte. */
  finishes: readonly { panel: PanelName; finish: string }[]
  /** What a mark set now would be; null: the drawing is only looked at. */
  marking?: string | undefined
  onMark?: (panel: PanelName, x: number, y: number) => void
  onMove?: (defect: Defect, x: number, y: number) => void
  onRemove?: (defect: Defect) => void
}

const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-6, 0],
  ArrowRight: [6, 0],
  ArrowUp: [0, -6],
  ArrowDown: [0, 6],
}

/**
 * The car with its panels and marks. A finger or the mouse marks where it touches; with the keyboard a panel is gone to
 * by Tab and marked by Enter, a mark is moved by the arrows and taken out by Delete. A list beside it says the same in words.
 */
export function CarDrawing({ shape, defects, finishes, marking, onMark, onMove, onRemove }: Props) {
  const svg = useRef<SVGSVGElement>(null)
  const car = useMemo(() => drawCar(shape), [shape])
  const live = onMark !== undefined
  const touch = (panel: PanelName) => (event: MouseEvent) => {
    const matrix = svg.current?.getScreenCTM()?.inverse()
    if (!matrix) return
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix)
    onMark?.(panel, Math.round(x), Math.round(y))
  }
  const press = (run: () => void) => (event: KeyboardEvent) => {
    if (event.key !== 'Enter' && event.key !== ' ') return
    event.preventDefault()
    run()
  }
  const nudge = (defect: Defect) => (event: KeyboardEvent) => {
    const step = steps[event.key]
    if (step) onMove?.(defect, defect.x + step[0], defect.y + step[1])
    else if (event.key === 'Delete' || event.key === 'Backspace') onRemove?.(defect)
    else return
    event.preventDefault()
  }
  return (
    <svg
      ref={svg}
      className={styles.car}
      viewBox={`0 0 ${pictureSize.width} ${pictureSize.height}`}
      role={live ? 'group' : 'img'}
      aria-label={say(
        '{shape} from above, nose to the left: {defects, plural, one {1 mark} other {{defects} marks}}',
        { shape: say(shape), defects: defects.length },
      )}
    >
      {car.wheels.map(({ x, y }) => (
        <circle key={`${x} ${y}`} className={styles.wheel} cx={x} cy={y} r={32} />
      ))}
      {car.panels.map(({ panel, path, middle }) => {
        const own = defects.filter(defect => defect.panel === panel).length
        const finish = finishes.find(each => each.panel === panel)?.finish ?? 'gloss'
        const words = `${say(panel)}, ${sayKept(finish)}${own > 0 ? `, ${say('{own, plural, one {1 mark} other {{own} marks}}', { own })}` : ''}`
        return (
          <path
            key={panel}
            d={path}
            className={styles.panel}
            data-finish={finish}
            data-live={live}
            {...(live && {
              role: 'button',
              tabIndex: 0,
              'aria-label': say('{words}: mark {marking}', { words, marking: marking ?? '' }),
              onClick: touch(panel),
              onKeyDown: press(() => onMark(panel, Math.round(middle.x), Math.round(middle.y))),
            })}
          >
            <title>{words}</title>
          </path>
        )
      })}
      {car.glass.map(path => (
        <path key={path} d={path} className={styles.glass} />
      ))}
      {defects.map((defect, i) => (
        <g
          key={defect.id}
          className={styles.mark}
          data-severity={defect.severity}
          transform={`translate(${defect.x} ${defect.y})`}
          {...(live && {
            role: 'button',
            tabIndex: 0,
            'aria-label': say('Mark {i}: {defect}. Arrows move it, Delete takes it out.', {
              i: i + 1,
              defect: defectWords(defect),
            }),
            onKeyDown: nudge(defect),
          })}
        >
          <circle r={17} />
          <text textAnchor="middle" dy="0.36em">
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
  )
}
