/** A week of invented weather in the demo's bays, and the conditions its coats were begun in. */
import { dewPointC } from '../../domain/cure/index.ts'
import { type ReadingValues, saveReadings } from '../../store/readingRows.ts'
import type { Tx } from '../../store/store.ts'
import { checkCoat, keepCheck } from '../cure/coatCheck.ts'
import type { Happened } from './happen.ts'
import { demoBays, demoShop } from './shopData.ts'

const weekMin = 7 * 1440
const everyMin = 10

/** Heated by day, a little cooler at night; bay by bay a shade apart. The same minute always reads the same. */
function readingAt(at: number, bay: number, nowAt: number): ReadingValues {
  const dayShare = ((at - nowAt) / 1440) * 2 * Math.PI
  const draught = Math.sin(at / 37) * 0.3
  const airC = Math.round((20.9 + 0.9 * Math.cos(dayShare) + 0.3 * bay + draught) * 10) / 10
  const humidityPercent = Math.round(47 - 4 * Math.cos(dayShare) + 2 * Math.sin(at / 91))
  return { at, airC, panelC: null, humidityPercent }
}

/** Readings of the last week, as sensors and a logger's file would have left them. */
export async function writeWeather(tx: Tx, nowAt: number): Promise<void> {
  for (const [i, bay] of demoBays.entries()) {
    const count = weekMin / everyMin
    const readings = Array.from({ length: count }, (_, k) =>
      readingAt(nowAt - 4 - (count - 1 - k) * everyMin, i, nowAt),
    )
    await saveReadings(tx, bay.id, 'imported', readings)
  }
}

/** What was measured when each coat was begun: panels a degree under the air, all within their profiles. */
export async function writeChecks(tx: Tx, happened: readonly Happened[], nowAt: number): Promise<void> {
  for (const { job, sold } of happened)
    for (const step of job.steps) {
      const product = sold.products.get(step.productId ?? '')
      const at = step.actualStartAt
      if (at === null || !product?.cureProfile || (step.stage !== 'coat' && step.stage !== 'topper')) continue
      const bay = demoBays.findIndex(each => each.id === step.bayId)
      const { airC, humidityPercent } = readingAt(at - 5, bay, nowAt)
      const panelC = Math.max(airC - 1, dewPointC(airC, humidityPercent!) + 4)
      const check = checkCoat(
        product.cureProfile,
        { readingAt: at - 5, airC, humidityPercent, panelC },
        demoShop.units,
      )
      await keepCheck(tx, {
        jobId: job.id,
        position: step.position,
        at,
        who: 'crew',
        productName: product.name,
        check,
        reason: '',
      })
    }
}
