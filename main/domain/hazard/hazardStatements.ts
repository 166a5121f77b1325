import { refuse } from '../refusal.ts'
import { normaliseCode, type Regime, spelled } from './regime.ts'

/**
 * Hazard statements, as CLP words and spells them; places the regulation leaves to the maker ("state organs affected") are
 * left out here and belong to the data sheet. H227, H303, H305, H313, H316, H320, H333, H401 and H402 are in the UN system
 * but not in CLP; EUH codes are in CLP only.
 * Source: CLP annex III parts 1 and 2, read in a public transcription; the UN-only ones, H206 to H208, H282 to H284 and
 * EUH211 to EUH451 from memory.
 */
const lines = `
H200 Unstable explosive
H201 Explosive; mass explosion hazard
H202 Explosive; severe projection hazard
H203 Explosive; fire, blast or projection hazard
H204 Fire or projection hazard
H205 May mass explode in fire
H206 Fire, blast or projection hazard; increased risk of explosion if desensitising agent is reduced
H207 Fire or projection hazard; increased risk of explosion if desensitising agent is reduced
H208 Fire hazard; increased risk of explosion if desensitising agent is reduced
H220 Extremely flammable gas
H221 Flammable gas
H222 Extremely flammable aerosol
H223 Flammable aerosol
H224 Extremely flammable liquid and vapour
H225 Highly flammable liquid and vapour
H226 Flammable liquid and vapour
H227 Combustible liquid
H228 Flammable solid
H229 Pressurised container: May burst if heated
H230 May react explosively even in the absence of air
H231 May react explosively even in the absence of air at elevated pressure and/or temperature
H232 May ignite spontaneously if exposed to air
H240 Heating may cause an explosion
H241 Heating may cause a fire or explosion
H242 Heating may cause a fire
H250 Catches fire spontaneously if exposed to air
H251 Self-heating: may catch fire
H252 Self-heating in large quantities; may catch fire
H260 In contact with water releases flammable gases which may ignite spontaneously
H261 In contact with water releases flammable gases
H270 May cause or intensify fire; oxidiser
H271 May cause fire or explosion; strong oxidiser
H272 May intensify fire; oxidiser
H280 Contains gas under pressure; may explode if heated
H281 Contains refrigerated gas; may cause cryogenic burns or injury
H282 Extremely flammable chemical under pressure: may explode if heated
H283 Flammable chemical under pressure: may explode if heated
H284 Chemical under pressure: may explode if heated
H290 May be corrosive to metals
H300 Fatal if swallowed
H301 Toxic if swallowed
H302 Harmful if swallowed
H303 May be harmful if swallowed
H304 May be fatal if swallowed and enters airways
H305 May be harmful if swallowed and enters airways
H310 Fatal in contact with skin
H311 Toxic in contact with skin
H312 Harmful in contact with skin
H313 May be harmful in contact with skin
H314 Causes severe skin burns and eye damage
H315 Causes skin irritation
H316 Causes mild skin irritation
H317 May cause an allergic skin reaction
H318 Causes serious eye damage
H319 Causes serious eye irritation
H320 Causes eye irritation
H330 Fatal if inhaled
H331 Toxic if inhaled
H332 Harmful if inhaled
H333 May be harmful if inhaled
H334 May cause allergy or asthma symptoms or breathing difficulties if inhaled
H335 May cause respiratory irritation
H336 May cause drowsiness or dizziness
H340 May cause genetic defects
H341 Suspected of causing genetic defects
H350 May cause cancer
H350i May cause cancer by inhalation
H351 Suspected of causing cancer
H360 May damage fertility or the unborn child
H360F May damage fertility
H360D May damage the unborn child
H360FD May damage fertility. May damage the unborn child
H360Fd May damage fertility. Suspected of damaging the unborn child
H360Df May damage the unborn child. Suspected of damaging fertility
H361 Suspected of damaging fertility or the unborn child
H361f Suspected of damaging fertility
H361d Suspected of damaging the unborn child
H361fd Suspected of damaging fertility. Suspected of damaging the unborn child
H362 May cause harm to breast-fed children
H370 Causes damage to organs
H371 May cause damage to organs
H372 Causes damage to organs through prolonged or repeated exposure
H373 May cause damage to organs through prolonged or repeated exposure
H400 Very toxic to aquatic life
H401 Toxic to aquatic life
H402 Harmful to aquatic life
H410 Very toxic to aquatic life with long lasting effects
H411 Toxic to aquatic life with long lasting effects
H412 Harmful to aquatic life with long lasting effects
H413 May cause long lasting harmful effects to aquatic life
H420 Harms public health and the environment by destroying ozone in the upper atmosphere
EUH014 Reacts violently with water
EUH018 In use may form flammable/explosive vapour-air mixture
EUH019 May form explosive peroxides
EUH029 Contact with water liberates toxic gas
EUH031 Contact with acids liberates toxic gas
EUH032 Contact with acids liberates very toxic gas
EUH044 Risk of explosion if heated under confinement
EUH066 Repeated exposure may cause skin dryness or cracking
EUH070 Toxic by eye contact
EUH071 Corrosive to the respiratory tract
EUH201 Contains lead. Should not be used on surfaces liable to be chewed or sucked by children
EUH201A Warning! Contains lead
EUH202 Cyanoacrylate. Danger. Bonds skin and eyes in seconds. Keep out of the reach of children
EUH203 Contains chromium (VI). May produce an allergic reaction
EUH204 Contains isocyanates. May produce an allergic reaction
EUH205 Contains epoxy constituents. May produce an allergic reaction
EUH206 Warning! Do not use together with other products. May release dangerous gases (chlorine)
EUH207 Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions
EUH208 Contains … May produce an allergic reaction
EUH209 Can become highly flammable in use
EUH209A Can become flammable in use
EUH210 Safety data sheet available on request
EUH211 Warning! Hazardous respirable droplets may be formed when sprayed. Do not breathe spray or mist
EUH212 Warning! Hazardous respirable dust may be formed when used. Do not breathe dust
EUH380 May cause endocrine disruption in humans
EUH381 Suspected of causing endocrine disruption in humans
EUH430 May cause endocrine disruption in the environment
EUH431 Suspected of causing endocrine disruption in the environment
EUH440 Accumulates in the environment and living organisms including in humans
EUH441 Strongly accumulates in the environment and living organisms including in humans
EUH450 Can cause long-lasting and diffuse contamination of water resources
EUH451 Can cause very long-lasting and diffuse contamination of water resources
EUH401 To avoid risks to human health and the environment, comply with the instructions for use`

const texts: ReadonlyMap<string, string> = new Map(
  lines
    .trim()
    .split('\n')
    .map(line => [line.slice(0, line.indexOf(' ')), line.slice(line.indexOf(' ') + 1)]),
)

/**
 * The wording of a hazard code, "H225", "H360Fd", "EUH066", or of acute toxicities joined ("H301+H311"), spelled as the
 * regime does. Refuses a code that does not exist.
 */
export function hazardStatement(code: string, regime: Regime = 'eu-clp', field = 'code'): string {
  const parts = normaliseCode(code).split('+')
  const found = parts.map(part => texts.get(part))
  const text = found.length === 1 ? found[0] : joined(found)
  if (!text)
    refuse(
      'hazard-code-unknown',
      { [field]: code },
      `"${code}" is not a hazard statement; copy the H codes from section 2 of the data sheet, such as H225.`,
    )
  // The UN text parts the same clauses with a semicolon.
  return spelled(regime === 'un-ghs' ? text.replace('Self-heating: may', 'Self-heating; may') : text, regime)
}

/**
 * "Toxic if swallowed" and "Toxic in contact with skin" make "Toxic if swallowed or in contact with skin"; only statements
 * of one degree join. "Causes skin irritation" and "Causes eye irritation" make the one other pair there is.
 */
function joined(found: readonly (string | undefined)[]): string | undefined {
  if (found.join() === 'Causes skin irritation,Causes eye irritation') return 'Causes skin and eye irritation'
  const split = found.map(text => /^(.*?) (if swallowed|in contact with skin|if inhaled)$/.exec(text ?? ''))
  const degree = split[0]?.[1]
  if (!degree || split.some(match => match?.[1] !== degree)) return undefined
  const routes = split.map(match => match![2]!)
  if (new Set(routes).size !== routes.length) return undefined
  return `${degree} ${routes.slice(0, -1).join(', ')} or ${routes.at(-1)}`
}
