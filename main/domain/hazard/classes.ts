import type { PictogramCode } from './pictograms.ts'
import { normaliseCode } from './regime.ts'

export type SignalWord = 'Danger' | 'Warning'

/** One hazard class and category with the label elements it asks for. */
export interface Hazard {
  /** The class in words, as in "acute toxicity oral". */
  readonly kind: string
  /** "1", "2A", "B", "narcotic"; empty where the class has one only. */
  readonly category: string
  /** The short name, as in "Acute Tox. 1 or 2 oral". */
  readonly className: string
  readonly code: string
  readonly pictograms: readonly PictogramCode[]
  readonly signalWord: SignalWord | null
}

/**
 * kind | categories | short name | code | pictograms | D(anger), W(arning) or none. Of the rows of a code the strictest stands
 * first: it is what the code alone is taken for.
 * Source: CLP annex I label element tables (2.6.2, 3.1.3, 3.4.7, 3.8.4, 3.9.5, 3.10.2 and aquatic read in public copies);
 * the other rows, and pictogram codes, from memory of UN GHS annex 1.
 */
const rows = `
unstable explosive||Unst. Expl.|H200|GHS01|D
explosive|1.1|Expl. 1.1|H201|GHS01|D
explosive|1.2|Expl. 1.2|H202|GHS01|D
explosive|1.3|Expl. 1.3|H203|GHS01|D
explosive|1.4|Expl. 1.4|H204|GHS01|W
explosive|1.5|Expl. 1.5|H205||D
desensitised explosive|1|Desen. Expl. 1|H206|GHS02|D
desensitised explosive|2|Desen. Expl. 2|H207|GHS02|D
desensitised explosive|3|Desen. Expl. 3|H207|GHS02|W
desensitised explosive|4|Desen. Expl. 4|H208|GHS02|W
flammable gas|1A|Flam. Gas 1A|H220|GHS02|D
flammable gas|1A pyrophoric|Flam. Gas 1A pyrophoric|H232|GHS02|D
flammable gas|1A unstable A|Flam. Gas 1A unstable A|H230|GHS02|D
flammable gas|1A unstable B|Flam. Gas 1A unstable B|H231|GHS02|D
flammable gas|1B|Flam. Gas 1B|H221|GHS02|D
flammable gas|2|Flam. Gas 2|H221||W
aerosol|1|Aerosol 1|H222|GHS02|D
aerosol|2|Aerosol 2|H223|GHS02|W
aerosol|3|Aerosol 3|H229||W
chemical under pressure|1|Chem. Press. 1|H282|GHS02 GHS04|D
chemical under pressure|2|Chem. Press. 2|H283|GHS02 GHS04|W
chemical under pressure|3|Chem. Press. 3|H284|GHS04|W
oxidising gas|1|Ox. Gas 1|H270|GHS03|D
gas under pressure||Press. Gas (compressed, liquefied, dissolved)|H280|GHS04|W
gas under pressure|refrigerated|Press. Gas (refrigerated liquefied)|H281|GHS04|W
flammable liquid|1|Flam. Liq. 1|H224|GHS02|D
flammable liquid|2|Flam. Liq. 2|H225|GHS02|D
flammable liquid|3|Flam. Liq. 3|H226|GHS02|W
flammable liquid|4|Flam. Liq. 4|H227||W
flammable solid|1|Flam. Sol. 1|H228|GHS02|D
flammable solid|2|Flam. Sol. 2|H228|GHS02|W
self-reactive|A|Self-react. A|H240|GHS01|D
self-reactive|B|Self-react. B|H241|GHS01 GHS02|D
self-reactive|C,D|Self-react. C or D|H242|GHS02|D
self-reactive|E,F|Self-react. E or F|H242|GHS02|W
pyrophoric liquid|1|Pyr. Liq. 1|H250|GHS02|D
pyrophoric solid|1|Pyr. Sol. 1|H250|GHS02|D
self-heating|1|Self-heat. 1|H251|GHS02|D
self-heating|2|Self-heat. 2|H252|GHS02|W
water-reactive|1|Water-react. 1|H260|GHS02|D
water-reactive|2|Water-react. 2|H261|GHS02|D
water-reactive|3|Water-react. 3|H261|GHS02|W
oxidising liquid|1|Ox. Liq. 1|H271|GHS03|D
oxidising liquid|2|Ox. Liq. 2|H272|GHS03|D
oxidising liquid|3|Ox. Liq. 3|H272|GHS03|W
oxidising solid|1|Ox. Sol. 1|H271|GHS03|D
oxidising solid|2|Ox. Sol. 2|H272|GHS03|D
oxidising solid|3|Ox. Sol. 3|H272|GHS03|W
organic peroxide|A|Org. Perox. A|H240|GHS01|D
organic peroxide|B|Org. Perox. B|H241|GHS01 GHS02|D
organic peroxide|C,D|Org. Perox. C or D|H242|GHS02|D
organic peroxide|E,F|Org. Perox. E or F|H242|GHS02|W
corrosive to metals|1|Met. Corr. 1|H290|GHS05|W
acute toxicity oral|1,2|Acute Tox. 1 or 2 oral|H300|GHS06|D
acute toxicity oral|3|Acute Tox. 3 oral|H301|GHS06|D
acute toxicity oral|4|Acute Tox. 4 oral|H302|GHS07|W
acute toxicity oral|5|Acute Tox. 5 oral|H303||W
acute toxicity dermal|1,2|Acute Tox. 1 or 2 dermal|H310|GHS06|D
acute toxicity dermal|3|Acute Tox. 3 dermal|H311|GHS06|D
acute toxicity dermal|4|Acute Tox. 4 dermal|H312|GHS07|W
acute toxicity dermal|5|Acute Tox. 5 dermal|H313||W
acute toxicity inhalation|1,2|Acute Tox. 1 or 2 inhalation|H330|GHS06|D
acute toxicity inhalation|3|Acute Tox. 3 inhalation|H331|GHS06|D
acute toxicity inhalation|4|Acute Tox. 4 inhalation|H332|GHS07|W
acute toxicity inhalation|5|Acute Tox. 5 inhalation|H333||W
skin corrosion|1,1A,1B,1C|Skin Corr. 1|H314|GHS05|D
skin irritation|2|Skin Irrit. 2|H315|GHS07|W
skin irritation|3|Skin Irrit. 3|H316||W
serious eye damage|1|Eye Dam. 1|H318|GHS05|D
eye irritation|2A|Eye Irrit. 2A|H319|GHS07|W
eye irritation|2B|Eye Irrit. 2B|H320||W
respiratory sensitisation|1,1A,1B|Resp. Sens. 1|H334|GHS08|D
skin sensitisation|1,1A,1B|Skin Sens. 1|H317|GHS07|W
mutagenicity|1A,1B,1|Muta. 1A or 1B|H340|GHS08|D
mutagenicity|2|Muta. 2|H341|GHS08|W
carcinogenicity|1A,1B,1|Carc. 1A or 1B|H350|GHS08|D
carcinogenicity|2|Carc. 2|H351|GHS08|W
reproductive toxicity|1A,1B,1|Repr. 1A or 1B|H360|GHS08|D
reproductive toxicity|2|Repr. 2|H361|GHS08|W
lactation||Lact.|H362||
STOT SE|1|STOT SE 1|H370|GHS08|D
STOT SE|2|STOT SE 2|H371|GHS08|W
STOT SE|3 respiratory,3 irritation,3|STOT SE 3|H335|GHS07|W
STOT SE|3 narcotic|STOT SE 3|H336|GHS07|W
STOT RE|1|STOT RE 1|H372|GHS08|D
STOT RE|2|STOT RE 2|H373|GHS08|W
aspiration|1|Asp. Tox. 1|H304|GHS08|D
aspiration|2|Asp. Tox. 2|H305|GHS08|W
aquatic acute|1|Aquatic Acute 1|H400|GHS09|W
aquatic acute|2|Aquatic Acute 2|H401||
aquatic acute|3|Aquatic Acute 3|H402||
aquatic chronic|1|Aquatic Chronic 1|H410|GHS09|W
aquatic chronic|2|Aquatic Chronic 2|H411|GHS09|
aquatic chronic|3|Aquatic Chronic 3|H412||
aquatic chronic|4|Aquatic Chronic 4|H413||
ozone|1|Ozone 1|H420|GHS07|W`

const hazards: readonly Hazard[] = rows
  .trim()
  .split('\n')
  .flatMap(row => {
    const [kind, categories, className, code, pictograms, signal] = row.split('|') as [string, ...string[]]
    return categories!.split(',').map(category => ({
      kind,
      category,
      className: className!,
      code: code!,
      pictograms: (pictograms ? pictograms.split(' ') : []) as PictogramCode[],
      signalWord: signal === 'D' ? ('Danger' as const) : signal === 'W' ? ('Warning' as const) : null,
    }))
  })

/** Every class and category a hazard code can stand for, the strictest first; empty for EUH codes and unknown ones. */
export function hazardsOfCode(code: string): Hazard[] {
  // H350i and H360Fd are worded after the effect; their class is the bare code's.
  const bare = normaliseCode(code).replace(/^(H\d{3})[a-zA-Z]+$/, '$1')
  const found = hazards.filter(hazard => hazard.code === bare)
  return found.filter((hazard, i) => found.findIndex(other => other.className === hazard.className) === i)
}
