import { say, word } from '../language/index.ts'
import { refuse } from '../refusal.ts'
import { normaliseCode, type Regime, spelled } from './regime.ts'

/**
 * Precautionary statements, as CLP words and spells them. "…" is a place the maker fills in; the words between slashes or
 * in square brackets are the maker's choice: the data sheet decides. P203, P236, P265, P316 to P319, P354 and P503 are later
 * additions of the UN system.
 * Source: CLP annex IV part 2, read in a public transcription; the later additions from memory of UN GHS annex 3.
 */
const texts: Readonly<Record<string, string>> = {
  P101: word('If medical advice is needed, have product container or label at hand.'),
  P102: word('Keep out of reach of children.'),
  P103: word('Read carefully and follow all instructions.'),
  P201: word('Obtain special instructions before use.'),
  P202: word('Do not handle until all safety precautions have been read and understood.'),
  P203: word('Obtain, read and follow all safety instructions before use.'),
  P210: word(
    'Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking.',
  ),
  P211: word('Do not spray on an open flame or other ignition source.'),
  P212: word('Avoid heating under confinement or reduction of the desensitising agent.'),
  P220: word('Keep away from clothing and other combustible materials.'),
  P222: word('Do not allow contact with air.'),
  P223: word('Do not allow contact with water.'),
  P230: word('Keep wetted with …'),
  P231: word('Handle and store contents under inert gas/….'),
  P232: word('Protect from moisture.'),
  P233: word('Keep container tightly closed.'),
  P234: word('Keep only in original packaging.'),
  P235: word('Keep cool.'),
  P236: word('Keep only in original packaging; Division … in the transport configuration.'),
  P240: word('Ground and bond container and receiving equipment.'),
  P241: word('Use explosion-proof [electrical/ventilating/lighting/…] equipment.'),
  P242: word('Use non-sparking tools.'),
  P243: word('Take action to prevent static discharges.'),
  P244: word('Keep valves and fittings free from oil and grease.'),
  P250: word('Do not subject to grinding/shock/friction/….'),
  P251: word('Do not pierce or burn, even after use.'),
  P260: word('Do not breathe dust/fume/gas/mist/vapours/spray.'),
  P261: word('Avoid breathing dust/fume/gas/mist/vapours/spray.'),
  P262: word('Do not get in eyes, on skin, or on clothing.'),
  P263: word('Avoid contact during pregnancy and while nursing.'),
  P264: word('Wash … thoroughly after handling.'),
  P265: word('Do not touch eyes.'),
  P270: word('Do not eat, drink or smoke when using this product.'),
  P271: word('Use only outdoors or in a well-ventilated area.'),
  P272: word('Contaminated work clothing should not be allowed out of the workplace.'),
  P273: word('Avoid release to the environment.'),
  P280: word('Wear protective gloves/protective clothing/eye protection/face protection.'),
  P282: word('Wear cold insulating gloves and either face shield or eye protection.'),
  P283: word('Wear fire resistant or flame retardant clothing.'),
  P284: word('[In case of inadequate ventilation] wear respiratory protection.'),
  P301: word('IF SWALLOWED:'),
  P302: word('IF ON SKIN:'),
  P303: word('IF ON SKIN (or hair):'),
  P304: word('IF INHALED:'),
  P305: word('IF IN EYES:'),
  P306: word('IF ON CLOTHING:'),
  P308: word('IF exposed or concerned:'),
  P310: word('Immediately call a POISON CENTER/doctor/…'),
  P311: word('Call a POISON CENTER/doctor/…'),
  P312: word('Call a POISON CENTER/doctor/… if you feel unwell.'),
  P313: word('Get medical advice/attention.'),
  P314: word('Get medical advice/attention if you feel unwell.'),
  P315: word('Get immediate medical advice/attention.'),
  P316: word('Get emergency medical help immediately.'),
  P317: word('Get medical help.'),
  P318: word('If exposed or concerned, get medical advice.'),
  P319: word('Get medical help if you feel unwell.'),
  P320: word('Specific treatment is urgent (see … on this label).'),
  P321: word('Specific treatment (see … on this label).'),
  P330: word('Rinse mouth.'),
  P331: word('Do NOT induce vomiting.'),
  P332: word('If skin irritation occurs:'),
  P333: word('If skin irritation or rash occurs:'),
  P334: word('Immerse in cool water [or wrap in wet bandages].'),
  P335: word('Brush off loose particles from skin.'),
  P336: word('Thaw frosted parts with lukewarm water. Do not rub affected area.'),
  P337: word('If eye irritation persists:'),
  P338: word('Remove contact lenses, if present and easy to do. Continue rinsing.'),
  P340: word('Remove person to fresh air and keep comfortable for breathing.'),
  P342: word('If experiencing respiratory symptoms:'),
  P351: word('Rinse cautiously with water for several minutes.'),
  P352: word('Wash with plenty of water/…'),
  P353: word('Rinse skin with water [or shower].'),
  P354: word('Immediately rinse with water for several minutes.'),
  P360: word(
    'Rinse immediately contaminated clothing and skin with plenty of water before removing clothes.',
  ),
  P361: word('Take off immediately all contaminated clothing.'),
  P362: word('Take off contaminated clothing.'),
  P363: word('Wash contaminated clothing before reuse.'),
  P364: word('And wash it before reuse.'),
  P370: word('In case of fire:'),
  P371: word('In case of major fire and large quantities:'),
  P372: word('Explosion risk.'),
  P373: word('DO NOT fight fire when fire reaches explosives.'),
  P375: word('Fight fire remotely due to the risk of explosion.'),
  P376: word('Stop leak if safe to do so.'),
  P377: word('Leaking gas fire: Do not extinguish, unless leak can be stopped safely.'),
  P378: word('Use … to extinguish.'),
  P380: word('Evacuate area.'),
  P381: word('In case of leakage, eliminate all ignition sources.'),
  P390: word('Absorb spillage to prevent material damage.'),
  P391: word('Collect spillage.'),
  P401: word('Store in accordance with ….'),
  P402: word('Store in a dry place.'),
  P403: word('Store in a well-ventilated place.'),
  P404: word('Store in a closed container.'),
  P405: word('Store locked up.'),
  P406: word('Store in a corrosion resistant/… container with a resistant inner liner.'),
  P407: word('Maintain air gap between stacks or pallets.'),
  P410: word('Protect from sunlight.'),
  P411: word('Store at temperatures not exceeding … °C/…°F.'),
  P412: word('Do not expose to temperatures exceeding 50 °C/122 °F.'),
  P413: word('Store bulk masses greater than … kg/…lbs at temperatures not exceeding … °C/…°F.'),
  P420: word('Store separately.'),
  P501: word('Dispose of contents/container to …'),
  P502: word('Refer to manufacturer or supplier for information on recovery or recycling.'),
  P503: word('Refer to manufacturer/supplier/… for information on disposal/recovery/recycling.'),
}

/**
 * The wording of a precautionary code or of several joined ("P305+P351+P338"), spelled as the regime does. Joined codes
 * read one after the other. Refuses a code that does not exist.
 */
export function precautionaryStatement(code: string, regime: Regime = 'eu-clp', field = 'code'): string {
  const parts = normaliseCode(code)
    .split('+')
    .map(part => (Object.hasOwn(texts, part) ? texts[part] : undefined))
  if (parts.some(part => part === undefined))
    refuse(
      'precaution-code-unknown',
      { [field]: code },
      say(
        '"{code}" is not a precautionary statement; copy the P codes from section 2 of the data sheet, such as P280.',
        { code },
      ),
    )
  const text = parts
    .map(part => say(part!))
    .reduce((before, part, i) =>
      // P364 carries on the sentence before it: "Take off contaminated clothing and wash it before reuse."
      parts[i] === texts.P364
        ? `${before.replace(/\.$/, '')} ${part.charAt(0).toLowerCase()}${part.slice(1)}`
        : `${before} ${part}`,
    )
  return spelled(text, regime)
}
