/** The member states of the European Union, whose norm EN 16931 is (ISO 3166-1; from memory). */
const union = new Set(
  'AT BE BG CY CZ DE DK EE ES FI FR GR HR HU IE IT LT LU LV MT NL PL PT RO SE SI SK'.split(' '),
)

/** Whether a business of this country is asked for electronic invoices by the norm. */
export const electronicAsked = (country: string): boolean => union.has(country)
