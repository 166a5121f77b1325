import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { normaliseCode, type Regime, spelled } from './regime.ts'

/**
 * Precautionary statements, as CLP words and spells them. "…" is a place the maker fills in; the words between slashes or
 * in square brackets are the maker's choice: the data sheet decides. P203, P236, P265, P316 to P319, P354 and P503 are later
 * additions of the UN system.
 * Source: CLP annex IV part 2, read in a public transcription; the later additions from memory of UN GHS annex 3.
 */
const lines = `
${word('P101 If medical advice is needed, have product container or label at hand.\nP102 Keep out of reach of children.\nP103 Read carefully and follow all instructions.\nP201 Obtain special instructions before use.\nP202 Do not handle until all safety precautions have been read and understood.\nP203 Obtain, read and follow all safety instructions before use.\nP210 Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking.\nP211 Do not spray on an open flame or other ignition source.\nP212 Avoid heating under confinement or reduction of the desensitising agent.\nP220 Keep away from clothing and other combustible materials.\nP222 Do not allow contact with air.\nP223 Do not allow contact with water.\nP230 Keep wetted with …\nP231 Handle and store contents under inert gas/….\nP232 Protect from moisture.\nP233 Keep container tightly closed.\nP234 Keep only in original packaging.\nP235 Keep cool.\nP236 Keep only in original packaging; Division … in the transport configuration.\nP240 Ground and bond container and receiving equipment.\nP241 Use explosion-proof [electrical/ventilating/lighting/…] equipment.\nP242 Use non-sparking tools.\nP243 Take action to prevent static discharges.\nP244 Keep valves and fittings free from oil and grease.\nP250 Do not subject to grinding/shock/friction/….\nP251 Do not pierce or burn, even after use.\nP260 Do not breathe dust/fume/gas/mist/vapours/spray.\nP261 Avoid breathing dust/fume/gas/mist/vapours/spray.\nP262 Do not get in eyes, on skin, or on clothing.\nP263 Avoid contact during pregnancy and while nursing.\nP264 Wash … thoroughly after handling.\nP265 Do not touch eyes.\nP270 Do not eat, drink or smoke when using this product.\nP271 Use only outdoors or in a well-ventilated area.\nP272 Contaminated work clothing should not be allowed out of the workplace.\nP273 Avoid release to the environment.\nP280 Wear protective gloves/protective clothing/eye protection/face protection.\nP282 Wear cold insulating gloves and either face shield or eye protection.\nP283 Wear fire resistant or flame retardant clothing.\nP284 [In case of inadequate ventilation] wear respiratory protection.\nP301 IF SWALLOWED:\nP302 IF ON SKIN:\nP303 IF ON SKIN (or hair):\nP304 IF INHALED:\nP305 IF IN EYES:\nP306 IF ON CLOTHING:\nP308 IF exposed or concerned:\nP310 Immediately call a POISON CENTER/doctor/…\nP311 Call a POISON CENTER/doctor/…\nP312 Call a POISON CENTER/doctor/… if you feel unwell.\nP313 Get medical advice/attention.\nP314 Get medical advice/attention if you feel unwell.\nP315 Get immediate medical advice/attention.\nP316 Get emergency medical help immediately.\nP317 Get medical help.\nP318 If exposed or concerned, get medical advice.\nP319 Get medical help if you feel unwell.\nP320 Specific treatment is urgent (see … on this label).\nP321 Specific treatment (see … on this label).\nP330 Rinse mouth.\nP331 Do NOT induce vomiting.\nP332 If skin irritation occurs:\nP333 If skin irritation or rash occurs:\nP334 Immerse in cool water [or wrap in wet bandages].\nP335 Brush off loose particles from skin.\nP336 Thaw frosted parts with lukewarm water. Do not rub affected area.\nP337 If eye irritation persists:\nP338 Remove contact lenses, if present and easy to do. Continue rinsing.\nP340 Remove person to fresh air and keep comfortable for breathing.\nP342 If experiencing respiratory symptoms:\nP351 Rinse cautiously with water for several minutes.\nP352 Wash with plenty of water/…\nP353 Rinse skin with water [or shower].\nP354 Immediately rinse with water for several minutes.\nP360 Rinse immediately contaminated clothing and skin with plenty of water before removing clothes.\nP361 Take off immediately all contaminated clothing.\nP362 Take off contaminated clothing.\nP363 Wash contaminated clothing before reuse.\nP364 And wash it before reuse.\nP370 In case of fire:\nP371 In case of major fire and large quantities:\nP372 Explosion risk.\nP373 DO NOT fight fire when fire reaches explosives.\nP375 Fight fire remotely due to the risk of explosion.\nP376 Stop leak if safe to do so.\nP377 Leaking gas fire: Do not extinguish, unless leak can be stopped safely.\nP378 Use … to extinguish.\nP380 Evacuate area.\nP381 In case of leakage, eliminate all ignition sources.\nP390 Absorb spillage to prevent material damage.\nP391 Collect spillage.\nP401 Store in accordance with ….\nP402 Store in a dry place.\nP403 Store in a well-ventilated place.\nP404 Store in a closed container.\nP405 Store locked up.\nP406 Store in a corrosion resistant/… container with a resistant inner liner.\nP407 Maintain air gap between stacks or pallets.\nP410 Protect from sunlight.\nP411 Store at temperatures not exceeding … °C/…°F.\nP412 Do not expose to temperatures exceeding 50 °C/122 °F.\nP413 Store bulk masses greater than … kg/…lbs at temperatures not exceeding … °C/…°F.\nP420 Store separately.\nP501 Dispose of contents/container to …\nP502 Refer to manufacturer or supplier for information on recovery or recycling.\nP503 Refer to manufacturer/supplier/… for information on disposal/recovery/recycling.')}`

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
      say(
        '"{code}" is not a precautionary statement; copy the P codes from section 2 of the data sheet, such as P280.',
        { code },
      ),
    )
  const text = parts.reduce((before, part) =>
    // P364 carries on the sentence before it: "Take off contaminated clothing and wash it before reuse."
    part!.startsWith('And ') ? `${before!.replace(/\.$/, '')} a${part!.slice(1)}` : `${before} ${part}`,
  )
  return spelled(text!, regime)
}
