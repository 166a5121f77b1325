import { refuse } from '../refusal.ts'
import { normaliseCode, type Regime, spelled } from './regime.ts'

/**
 * Precautionary statements, as CLP words and spells them. "…" is a place the maker fills in; the words between slashes or
 * in square brackets are the maker's choice: the data sheet decides. P203, P236, P265, P316 to P319, P354 and P503 are later
 * additions of the UN system.
 * Source: CLP annex IV part 2, read in a public transcription; the later additions from memory of UN GHS annex 3.
 */
const lines = `
P101 If medical advice is needed, have product container or label at hand.
P102 Keep out of reach of children.
P103 Read carefully and follow all instructions.
P201 Obtain special instructions before use.
P202 Do not handle until all safety precautions have been read and understood.
P203 Obtain, read and follow all safety instructions before use.
P210 Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking.
P211 Do not spray on an open flame or other ignition source.
P212 Avoid heating under confinement or reduction of the desensitising agent.
P220 Keep away from clothing and other combustible materials.
P222 Do not allow contact with air.
P223 Do not allow contact with water.
P230 Keep wetted with …
P231 Handle and store contents under inert gas/….
P232 Protect from moisture.
P233 Keep container tightly closed.
P234 Keep only in original packaging.
P235 Keep cool.
P236 Keep only in original packaging; Division … in the transport configuration.
P240 Ground and bond container and receiving equipment.
P241 Use explosion-proof [electrical/ventilating/lighting/…] equipment.
P242 Use non-sparking tools.
P243 Take action to prevent static discharges.
P244 Keep valves and fittings free from oil and grease.
P250 Do not subject to grinding/shock/friction/….
P251 Do not pierce or burn, even after use.
P260 Do not breathe dust/fume/gas/mist/vapours/spray.
P261 Avoid breathing dust/fume/gas/mist/vapours/spray.
P262 Do not get in eyes, on skin, or on clothing.
P263 Avoid contact during pregnancy and while nursing.
P264 Wash … thoroughly after handling.
P265 Do not touch eyes.
P270 Do not eat, drink or smoke when using this product.
P271 Use only outdoors or in a well-ventilated area.
P272 Contaminated work clothing should not be allowed out of the workplace.
P273 Avoid release to the environment.
P280 Wear protective gloves/protective clothing/eye protection/face protection.
P282 Wear cold insulating gloves and either face shield or eye protection.
P283 Wear fire resistant or flame retardant clothing.
P284 [In case of inadequate ventilation] wear respiratory protection.
P301 IF SWALLOWED:
P302 IF ON SKIN:
P303 IF ON SKIN (or hair):
P304 IF INHALED:
P305 IF IN EYES:
P306 IF ON CLOTHING:
P308 IF exposed or concerned:
P310 Immediately call a POISON CENTER/doctor/…
P311 Call a POISON CENTER/doctor/…
P312 Call a POISON CENTER/doctor/… if you feel unwell.
P313 Get medical advice/attention.
P314 Get medical advice/attention if you feel unwell.
P315 Get immediate medical advice/attention.
P316 Get emergency medical help immediately.
P317 Get medical help.
P318 If exposed or concerned, get medical advice.
P319 Get medical help if you feel unwell.
P320 Specific treatment is urgent (see … on this label).
P321 Specific treatment (see … on this label).
P330 Rinse mouth.
P331 Do NOT induce vomiting.
P332 If skin irritation occurs:
P333 If skin irritation or rash occurs:
P334 Immerse in cool water [or wrap in wet bandages].
P335 Brush off loose particles from skin.
P336 Thaw frosted parts with lukewarm water. Do not rub affected area.
P337 If eye irritation persists:
P338 Remove contact lenses, if present and easy to do. Continue rinsing.
P340 Remove person to fresh air and keep comfortable for breathing.
P342 If experiencing respiratory symptoms:
P351 Rinse cautiously with water for several minutes.
P352 Wash with plenty of water/…
P353 Rinse skin with water [or shower].
P354 Immediately rinse with water for several minutes.
P360 Rinse immediately contaminated clothing and skin with plenty of water before removing clothes.
P361 Take off immediately all contaminated clothing.
P362 Take off contaminated clothing.
P363 Wash contaminated clothing before reuse.
P364 And wash it before reuse.
P370 In case of fire:
P371 In case of major fire and large quantities:
P372 Explosion risk.
P373 DO NOT fight fire when fire reaches explosives.
P375 Fight fire remotely due to the risk of explosion.
P376 Stop leak if safe to do so.
P377 Leaking gas fire: Do not extinguish, unless leak can be stopped safely.
P378 Use … to extinguish.
P380 Evacuate area.
P381 In case of leakage, eliminate all ignition sources.
P390 Absorb spillage to prevent material damage.
P391 Collect spillage.
P401 Store in accordance with ….
P402 Store in a dry place.
P403 Store in a well-ventilated place.
P404 Store in a closed container.
P405 Store locked up.
P406 Store in a corrosion resistant/… container with a resistant inner liner.
P407 Maintain air gap between stacks or pallets.
P410 Protect from sunlight.
P411 Store at temperatures not exceeding … °C/…°F.
P412 Do not expose to temperatures exceeding 50 °C/122 °F.
P413 Store bulk masses greater than … kg/…lbs at temperatures not exceeding … °C/…°F.
P420 Store separately.
P501 Dispose of contents/container to …
P502 Refer to manufacturer or supplier for information on recovery or recycling.
P503 Refer to manufacturer/supplier/… for information on disposal/recovery/recycling.`

const texts: ReadonlyMap<string, string> = new Map(
  lines
    .trim()
    .split('\n')
    .map(line => [line.slice(0, 4), line.slice(5)]),
)

/**
 * The wording of a precautionary code or of several joined ("P305+P351+P338"), spelled as the regime does. Joined codes
 * read one after the other. Refuses a code that does not exist.
 */
export function precautionaryStatement(code: string, regime: Regime = 'eu-clp', field = 'code'): string {
  const parts = normaliseCode(code)
    .split('+')
    .map(part => texts.get(part))
  if (parts.some(part => part === undefined))
    refuse(
      'precaution-code-unknown',
      { [field]: code },
      `"${code}" is not a precautionary statement; copy the P codes from section 2 of the data sheet, such as P280.`,
    )
  const text = parts.reduce((before, part) =>
    // P364 carries on the sentence before it: "Take off contaminated clothing and wash it before reuse."
    part!.startsWith('And ') ? `${before!.replace(/\.$/, '')} a${part!.slice(1)}` : `${before} ${part}`,
  )
  return spelled(text!, regime)
}
