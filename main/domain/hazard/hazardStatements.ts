import { say, word } from '../language/index.ts'
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
${word('H200 Unstable explosive\nH201 Explosive; mass explosion hazard\nH202 Explosive; severe projection hazard\nH203 Explosive; fire, blast or projection hazard\nH204 Fire or projection hazard\nH205 May mass explode in fire\nH206 Fire, blast or projection hazard; increased risk of explosion if desensitising agent is reduced\nH207 Fire or projection hazard; increased risk of explosion if desensitising agent is reduced\nH208 Fire hazard; increased risk of explosion if desensitising agent is reduced\nH220 Extremely flammable gas\nH221 Flammable gas\nH222 Extremely flammable aerosol\nH223 Flammable aerosol\nH224 Extremely flammable liquid and vapour\nH225 Highly flammable liquid and vapour\nH226 Flammable liquid and vapour\nH227 Combustible liquid\nH228 Flammable solid\nH229 Pressurised container: May burst if heated\nH230 May react explosively even in the absence of air\nH231 May react explosively even in the absence of air at elevated pressure and/or temperature\nH232 May ignite spontaneously if exposed to air\nH240 Heating may cause an explosion\nH241 Heating may cause a fire or explosion\nH242 Heating may cause a fire\nH250 Catches fire spontaneously if exposed to air\nH251 Self-heating: may catch fire\nH252 Self-heating in large quantities; may catch fire\nH260 In contact with water releases flammable gases which may ignite spontaneously\nH261 In contact with water releases flammable gases\nH270 May cause or intensify fire; oxidiser\nH271 May cause fire or explosion; strong oxidiser\nH272 May intensify fire; oxidiser\nH280 Contains gas under pressure; may explode if heated\nH281 Contains refrigerated gas; may cause cryogenic burns or injury\nH282 Extremely flammable chemical under pressure: may explode if heated\nH283 Flammable chemical under pressure: may explode if heated\nH284 Chemical under pressure: may explode if heated\nH290 May be corrosive to metals\nH300 Fatal if swallowed\nH301 Toxic if swallowed\nH302 Harmful if swallowed\nH303 May be harmful if swallowed\nH304 May be fatal if swallowed and enters airways\nH305 May be harmful if swallowed and enters airways\nH310 Fatal in contact with skin\nH311 Toxic in contact with skin\nH312 Harmful in contact with skin\nH313 May be harmful in contact with skin\nH314 Causes severe skin burns and eye damage\nH315 Causes skin irritation\nH316 Causes mild skin irritation\nH317 May cause an allergic skin reaction\nH318 Causes serious eye damage\nH319 Causes serious eye irritation\nH320 Causes eye irritation\nH330 Fatal if inhaled\nH331 Toxic if inhaled\nH332 Harmful if inhaled\nH333 May be harmful if inhaled\nH334 May cause allergy or asthma symptoms or breathing difficulties if inhaled\nH335 May cause respiratory irritation\nH336 May cause drowsiness or dizziness\nH340 May cause genetic defects\nH341 Suspected of causing genetic defects\nH350 May cause cancer\nH350i May cause cancer by inhalation\nH351 Suspected of causing cancer\nH360 May damage fertility or the unborn child\nH360F May damage fertility\nH360D May damage the unborn child\nH360FD May damage fertility. May damage the unborn child\nH360Fd May damage fertility. Suspected of damaging the unborn child\nH360Df May damage the unborn child. Suspected of damaging fertility\nH361 Suspected of damaging fertility or the unborn child\nH361f Suspected of damaging fertility\nH361d Suspected of damaging the unborn child\nH361fd Suspected of damaging fertility. Suspected of damaging the unborn child\nH362 May cause harm to breast-fed children\nH370 Causes damage to organs\nH371 May cause damage to organs\nH372 Causes damage to organs through prolonged or repeated exposure\nH373 May cause damage to organs through prolonged or repeated exposure\nH400 Very toxic to aquatic life\nH401 Toxic to aquatic life\nH402 Harmful to aquatic life\nH410 Very toxic to aquatic life with long lasting effects\nH411 Toxic to aquatic life with long lasting effects\nH412 Harmful to aquatic life with long lasting effects\nH413 May cause long lasting harmful effects to aquatic life\nH420 Harms public health and the environment by destroying ozone in the upper atmosphere\nEUH014 Reacts violently with water\nEUH018 In use may form flammable/explosive vapour-air mixture\nEUH019 May form explosive peroxides\nEUH029 Contact with water liberates toxic gas\nEUH031 Contact with acids liberates toxic gas\nEUH032 Contact with acids liberates very toxic gas\nEUH044 Risk of explosion if heated under confinement\nEUH066 Repeated exposure may cause skin dryness or cracking\nEUH070 Toxic by eye contact\nEUH071 Corrosive to the respiratory tract\nEUH201 Contains lead. Should not be used on surfaces liable to be chewed or sucked by children\nEUH201A Warning! Contains lead\nEUH202 Cyanoacrylate. Danger. Bonds skin and eyes in seconds. Keep out of the reach of children\nEUH203 Contains chromium (VI). May produce an allergic reaction\nEUH204 Contains isocyanates. May produce an allergic reaction\nEUH205 Contains epoxy constituents. May produce an allergic reaction\nEUH206 Warning! Do not use together with other products. May release dangerous gases (chlorine)\nEUH207 Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions\nEUH208 Contains … May produce an allergic reaction\nEUH209 Can become highly flammable in use\nEUH209A Can become flammable in use\nEUH210 Safety data sheet available on request\nEUH211 Warning! Hazardous respirable droplets may be formed when sprayed. Do not breathe spray or mist\nEUH212 Warning! Hazardous respirable dust may be formed when used. Do not breathe dust\nEUH380 May cause endocrine disruption in humans\nEUH381 Suspected of causing endocrine disruption in humans\nEUH430 May cause endocrine disruption in the environment\nEUH431 Suspected of causing endocrine disruption in the environment\nEUH440 Accumulates in the environment and living organisms including in humans\nEUH441 Strongly accumulates in the environment and living organisms including in humans\nEUH450 Can cause long-lasting and diffuse contamination of water resources\nEUH451 Can cause very long-lasting and diffuse contamination of water resources\nEUH401 To avoid risks to human health and the environment, comply with the instructions for use')}`

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
      say(
        '"{code}" is not a hazard statement; copy the H codes from section 2 of the data sheet, such as H225.',
        { code },
      ),
    )
  // The UN text parts the same clauses with a semicolon.
  return spelled(regime === 'un-ghs' ? text.replace('Self-heating: may', 'Self-heating; may') : text, regime)
}

/**
 * "Toxic if swallowed" and "Toxic in contact with skin" make "Toxic if swallowed or in contact with skin"; only statements
 * of one degree join. "Causes skin irritation" and "Causes eye irritation" make the one other pair there is.
 */
function joined(found: readonly (string | undefined)[]): string | undefined {
  if (found.join() === 'Causes skin irritation,Causes eye irritation')
    return say('Causes skin and eye irritation')
  const split = found.map(text => /^(.*?) (if swallowed|in contact with skin|if inhaled)$/.exec(text ?? ''))
  const degree = split[0]?.[1]
  if (!degree || split.some(match => match?.[1] !== degree)) return undefined
  const routes = split.map(match => match![2]!)
  if (new Set(routes).size !== routes.length) return undefined
  return say('{degree} {routes} or {routes2}', {
    degree,
    routes: routes.slice(0, -1).join(', '),
    routes2: routes.at(-1),
  })
}
