/** The invented past of the demo's cars: what was laid when, what was seen of it, and who agreed to be written to. */
import type { Channel } from '../../domain/upkeep/index.ts'
import type { DemoVehicle } from './customerData.ts'

export interface DemoLayer {
  id: string
  vehicleId: string
  stage: 'coat' | 'topper'
  productId: string
  laidOn: string
}

export interface DemoLook {
  layerId: string
  onDay: string
  working: boolean
}

export interface DemoLife {
  vehicle: DemoVehicle
  /** Oldest first: a coating, then its toppers. */
  layers: DemoLayer[]
  looks: DemoLook[]
  exposure: Record<string, string>
  /** Between two renewals. */
  topperDays: number
}

const coatings = ['demo-ovrel-one', 'demo-ovrel-two', 'demo-tamsk-quick'] as const
const kept = ['garage', 'roof', 'outside'] as const
const washed = ['hand', 'touchless', 'brush'] as const

/** Days between two renewals as the shop has done them, and days until a topper of this exposure really went. */
const usualDays = 182
const lasting = { garage: 235, roof: 205, outside: 165 } as const

/** The past of two cars in three; the others come for the first time. */
export function demoLives(vehicles: readonly DemoVehicle[], today: string): DemoLife[] {
  return vehicles.flatMap((vehicle, i) => (i % 3 === 2 ? [] : [lifeOf(vehicle, i, today)]))
}

function lifeOf(vehicle: DemoVehicle, i: number, today: string): DemoLife {
  const day = (ago: number) => Temporal.PlainDate.from(today).subtract({ days: ago }).toString()
  const topper = i % 2 === 0 ? 'demo-ovrel-veil' : 'demo-lindavel-top'
  const standing = kept[i % 3 === 0 ? (i / 3) % 3 : (i * 2) % 3]!
  // The last renewal lies up to seven months back, so that some are overdue, some due and most to come.
  const lastAgo = 6 + ((i * 37) % 212)
  const renewals = 1 + (i % 4)
  const layer = (n: number, stage: DemoLayer['stage'], productId: string, ago: number): DemoLayer => ({
    id: `demo-layer-${vehicle.id.slice(-2)}-${n}`,
    vehicleId: vehicle.id,
    stage,
    productId,
    laidOn: day(ago),
  })
  const layers = [layer(0, 'coat', coatings[i % 3]!, lastAgo + renewals * usualDays + (i % 9))]
  const looks: DemoLook[] = []
  for (let n = 1; n <= renewals; n++) {
    const ago = lastAgo + (renewals - n) * usualDays
    const laid = layer(n, 'topper', topper, ago)
    layers.push(laid)
    const lasts = lasting[standing] + ((i * 13 + n * 29) % 50) - 25
    // Looked at half way and at its renewal, where those days have come.
    for (const age of [95 + ((i + n) % 20), usualDays])
      if (age < ago && !looks.some(look => look.layerId === laid.id && !look.working))
        looks.push({ layerId: laid.id, onDay: day(ago - age), working: age < lasts })
  }
  return {
    vehicle,
    layers,
    looks,
    exposure: { kept: standing, wash: washed[(i * 5) % 3]!, distance: i % 4 === 1 ? 'high' : 'usual' },
    topperDays: usualDays,
  }
}

/** What the nth owner agreed to; some to nothing, one in ten took it back. */
export function demoConsent(n: number): { channels: Channel[]; withdrawn: boolean } {
  const ways: Channel[][] = [
    ['email'],
    ['email', 'text'],
    ['email', 'letter'],
    ['email', 'call'],
    ['email'],
    ['text'],
    ['letter'],
    ['call'],
    [],
    ['email', 'text'],
  ]
  return { channels: ways[n % 10] ?? [], withdrawn: n % 10 === 4 }
}
