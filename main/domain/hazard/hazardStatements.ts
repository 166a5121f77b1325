import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { orWords } from '../words.ts'
import { normaliseCode, type Regime, spelled } from './regime.ts'

/**
 * Hazard statements, as CLP words and spells them; places the regulation leaves to the maker ("state organs affected") are
 * left out here and belong to the data sheet. H227, H303, H305, H313, H316, H320, H333, H401 and H402 are in the UN system
 * but not in CLP; EUH codes are in CLP only.
 * Source: CLP annex III parts 1 and 2, read in a public transcription; the UN-only ones, H206 to H208, H282 to H284 and
 * EUH211 to EUH451 from memory.
 */
const texts: Readonly<Record<string, string>> = {
  H200: word('Unstable explosive'),
  H201: word('Explosive; mass explosion hazard'),
  H202: word('Explosive; severe projection hazard'),
  H203: word('Explosive; fire, blast or projection hazard'),
  H204: word('Fire or projection hazard'),
  H205: word('May mass explode in fire'),
  H206: word(
    'Fire, blast or projection hazard; increased risk of explosion if desensitising agent is reduced',
  ),
  H207: word('Fire or projection hazard; increased risk of explosion if desensitising agent is reduced'),
  H208: word('Fire hazard; increased risk of explosion if desensitising agent is reduced'),
  H220: word('Extremely flammable gas'),
  H221: word('Flammable gas'),
  H222: word('Extremely flammable aerosol'),
  H223: word('Flammable aerosol'),
  H224: word('Extremely flammable liquid and vapour'),
  H225: word('Highly flammable liquid and vapour'),
  H226: word('Flammable liquid and vapour'),
  H227: word('Combustible liquid'),
  H228: word('Flammable solid'),
  H229: word('Pressurised container: May burst if heated'),
  H230: word('May react explosively even in the absence of air'),
  H231: word('May react explosively even in the absence of air at elevated pressure and/or temperature'),
  H232: word('May ignite spontaneously if exposed to air'),
  H240: word('Heating may cause an explosion'),
  H241: word('Heating may cause a fire or explosion'),
  H242: word('Heating may cause a fire'),
  H250: word('Catches fire spontaneously if exposed to air'),
  H251: word('Self-heating: may catch fire'),
  H252: word('Self-heating in large quantities; may catch fire'),
  H260: word('In contact with water releases flammable gases which may ignite spontaneously'),
  H261: word('In contact with water releases flammable gases'),
  H270: word('May cause or intensify fire; oxidiser'),
  H271: word('May cause fire or explosion; strong oxidiser'),
  H272: word('May intensify fire; oxidiser'),
  H280: word('Contains gas under pressure; may explode if heated'),
  H281: word('Contains refrigerated gas; may cause cryogenic burns or injury'),
  H282: word('Extremely flammable chemical under pressure: may explode if heated'),
  H283: word('Flammable chemical under pressure: may explode if heated'),
  H284: word('Chemical under pressure: may explode if heated'),
  H290: word('May be corrosive to metals'),
  H300: word('Fatal if swallowed'),
  H301: word('Toxic if swallowed'),
  H302: word('Harmful if swallowed'),
  H303: word('May be harmful if swallowed'),
  H304: word('May be fatal if swallowed and enters airways'),
  H305: word('May be harmful if swallowed and enters airways'),
  H310: word('Fatal in contact with skin'),
  H311: word('Toxic in contact with skin'),
  H312: word('Harmful in contact with skin'),
  H313: word('May be harmful in contact with skin'),
  H314: word('Causes severe skin burns and eye damage'),
  H315: word('Causes skin irritation'),
  H316: word('Causes mild skin irritation'),
  H317: word('May cause an allergic skin reaction'),
  H318: word('Causes serious eye damage'),
  H319: word('Causes serious eye irritation'),
  H320: word('Causes eye irritation'),
  H330: word('Fatal if inhaled'),
  H331: word('Toxic if inhaled'),
  H332: word('Harmful if inhaled'),
  H333: word('May be harmful if inhaled'),
  H334: word('May cause allergy or asthma symptoms or breathing difficulties if inhaled'),
  H335: word('May cause respiratory irritation'),
  H336: word('May cause drowsiness or dizziness'),
  H340: word('May cause genetic defects'),
  H341: word('Suspected of causing genetic defects'),
  H350: word('May cause cancer'),
  H350i: word('May cause cancer by inhalation'),
  H351: word('Suspected of causing cancer'),
  H360: word('May damage fertility or the unborn child'),
  H360F: word('May damage fertility'),
  H360D: word('May damage the unborn child'),
  H360FD: word('May damage fertility. May damage the unborn child'),
  H360Fd: word('May damage fertility. Suspected of damaging the unborn child'),
  H360Df: word('May damage the unborn child. Suspected of damaging fertility'),
  H361: word('Suspected of damaging fertility or the unborn child'),
  H361f: word('Suspected of damaging fertility'),
  H361d: word('Suspected of damaging the unborn child'),
  H361fd: word('Suspected of damaging fertility. Suspected of damaging the unborn child'),
  H362: word('May cause harm to breast-fed children'),
  H370: word('Causes damage to organs'),
  H371: word('May cause damage to organs'),
  H372: word('Causes damage to organs through prolonged or repeated exposure'),
  H373: word('May cause damage to organs through prolonged or repeated exposure'),
  H400: word('Very toxic to aquatic life'),
  H401: word('Toxic to aquatic life'),
  H402: word('Harmful to aquatic life'),
  H410: word('Very toxic to aquatic life with long lasting effects'),
  H411: word('Toxic to aquatic life with long lasting effects'),
  H412: word('Harmful to aquatic life with long lasting effects'),
  H413: word('May cause long lasting harmful effects to aquatic life'),
  H420: word('Harms public health and the environment by destroying ozone in the upper atmosphere'),
  EUH014: word('Reacts violently with water'),
  EUH018: word('In use may form flammable/explosive vapour-air mixture'),
  EUH019: word('May form explosive peroxides'),
  EUH029: word('Contact with water liberates toxic gas'),
  EUH031: word('Contact with acids liberates toxic gas'),
  EUH032: word('Contact with acids liberates very toxic gas'),
  EUH044: word('Risk of explosion if heated under confinement'),
  EUH066: word('Repeated exposure may cause skin dryness or cracking'),
  EUH070: word('Toxic by eye contact'),
  EUH071: word('Corrosive to the respiratory tract'),
  EUH201: word('Contains lead. Should not be used on surfaces liable to be chewed or sucked by children'),
  EUH201A: word('Warning! Contains lead'),
  EUH202: word('Cyanoacrylate. Danger. Bonds skin and eyes in seconds. Keep out of the reach of children'),
  EUH203: word('Contains chromium (VI). May produce an allergic reaction'),
  EUH204: word('Contains isocyanates. May produce an allergic reaction'),
  EUH205: word('Contains epoxy constituents. May produce an allergic reaction'),
  EUH206: word('Warning! Do not use together with other products. May release dangerous gases (chlorine)'),
  EUH207: word(
    'Warning! Contains cadmium. Dangerous fumes are formed during use. See information supplied by the manufacturer. Comply with the safety instructions',
  ),
  EUH208: word('Contains … May produce an allergic reaction'),
  EUH209: word('Can become highly flammable in use'),
  EUH209A: word('Can become flammable in use'),
  EUH210: word('Safety data sheet available on request'),
  EUH211: word(
    'Warning! Hazardous respirable droplets may be formed when sprayed. Do not breathe spray or mist',
  ),
  EUH212: word('Warning! Hazardous respirable dust may be formed when used. Do not breathe dust'),
  EUH380: word('May cause endocrine disruption in humans'),
  EUH381: word('Suspected of causing endocrine disruption in humans'),
  EUH430: word('May cause endocrine disruption in the environment'),
  EUH431: word('Suspected of causing endocrine disruption in the environment'),
  EUH440: word('Accumulates in the environment and living organisms including in humans'),
  EUH441: word('Strongly accumulates in the environment and living organisms including in humans'),
  EUH450: word('Can cause long-lasting and diffuse contamination of water resources'),
  EUH451: word('Can cause very long-lasting and diffuse contamination of water resources'),
  EUH401: word('To avoid risks to human health and the environment, comply with the instructions for use'),
}

/**
 * The wording of a hazard code, "H225", "H360Fd", "EUH066", or of acute toxicities joined ("H301+H311"), spelled as the
 * regime does. Refuses a code that does not exist.
 */
export function hazardStatement(code: string, regime: Regime = 'eu-clp', field = 'code'): string {
  const parts = normaliseCode(code).split('+')
  const found = parts.map(part => (Object.hasOwn(texts, part) ? texts[part] : undefined))
  const [only] = found
  const text = found.length === 1 ? only && say(only) : joined(found)
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
  const routes = found.map(text => routeWords.find(route => text?.endsWith(` ${route}`)) ?? '')
  const [degree, ...others] = found.map((text, i) => text?.slice(0, -routes[i]!.length - 1))
  const whole = degrees[degree ?? '']
  if (!whole || others.some(other => other !== degree)) return undefined
  if (new Set(routes).size !== routes.length) return undefined
  return say(whole, { routes: orWords(routes.map(route => say(route))) })
}

/** What a degree of acute toxicity says of its routes. */
const degrees: Readonly<Record<string, string>> = {
  Fatal: word('Fatal {routes}'),
  Toxic: word('Toxic {routes}'),
  Harmful: word('Harmful {routes}'),
  'May be harmful': word('May be harmful {routes}'),
}

const routeWords = [word('if swallowed'), word('in contact with skin'), word('if inhaled')]
