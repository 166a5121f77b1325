/**
 * An electronic invoice inside a PDF/A-3: the XML as a file of the document, and its description as the published form of
 * such papers asks for it. Name of the file, namespace and the fields `DocumentType`, `DocumentFileName`, `Version` and
 * `ConformanceLevel` are that form's, from memory; the relation `Alternative` says that paper and file state the same.
 */
import type { Pdf } from './kit/pdf.ts'

/** The name any reader looks for it by. */
export const electronicName = 'factur-x.xml'

const space = 'urn:factur-x:pdfa:CrossIndustryDocument:invoice:1p0#'

const fields = {
  DocumentType: 'INVOICE',
  DocumentFileName: electronicName,
  Version: '1.0',
  ConformanceLevel: 'EN 16931',
}

/** Puts the XML into the document as the same invoice in another form. */
export function attachElectronic(pdf: Pdf, xml: string, at: number): void {
  const made = new Date(at * 60_000)
  pdf.file(Buffer.from(xml), {
    name: electronicName,
    type: 'text/xml',
    description: 'EN 16931',
    creationDate: made,
    modifiedDate: made,
    relationship: 'Alternative',
  } as PDFKit.Mixins.PDFAttachmentOptions)
  pdf.appendXML(description(), true)
}

/** The fields, and what they mean to who has never heard of them (ISO 19005-3, 6.6.2.3). */
function description(): string {
  const values = Object.entries(fields)
    .map(([name, value]) => `<fx:${name}>${value}</fx:${name}>`)
    .join('')
  const meanings = Object.keys(fields)
    .map(
      name =>
        `<rdf:li rdf:parseType="Resource"><pdfaProperty:name>${name}</pdfaProperty:name>` +
        '<pdfaProperty:valueType>Text</pdfaProperty:valueType><pdfaProperty:category>external</pdfaProperty:category>' +
        `<pdfaProperty:description>${name} of the embedded invoice</pdfaProperty:description></rdf:li>`,
    )
    .join('')
  return `
        <rdf:Description xmlns:fx="${space}" rdf:about="">${values}</rdf:Description>
        <rdf:Description xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
            xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#" rdf:about="">
          <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
            <pdfaSchema:schema>Embedded invoice</pdfaSchema:schema>
            <pdfaSchema:namespaceURI>${space}</pdfaSchema:namespaceURI>
            <pdfaSchema:prefix>fx</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq>${meanings}</rdf:Seq></pdfaSchema:property>
          </rdf:li></rdf:Bag></pdfaExtension:schemas>
        </rdf:Description>
        `
}
