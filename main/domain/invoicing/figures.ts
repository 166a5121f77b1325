/** Amounts as the norm writes them: major units with a point, no grouping. */
import { divideRounded, readDecimal, tenTo } from '../money/decimal.ts'
import { majorOf } from '../money/index.ts'

/**
 * Net price of one (BT-146), to eight places: the line's net over its quantity. The line's own amount stays what was
 * charged, so a price that does not come out even cannot move it.
 */
export function unitPriceText(netMinor: number, quantity: string, currency: string): string {
  const net = readDecimal(majorOf(netMinor, currency), 'netMinor')
  const count = readDecimal(quantity, 'quantity')
  const places = 8
  const units = divideRounded(
    net.units * tenTo(count.scale + places),
    count.units * tenTo(net.scale),
    'half-up',
  )
  const digits = (units < 0n ? -units : units).toString().padStart(places + 1, '0')
  const rest = digits.slice(-places).replace(/0+$/, '')
  return `${units < 0n ? '-' : ''}${digits.slice(0, -places)}${rest === '' ? '' : `.${rest}`}`
}
