/** Cards as PDF files. */
export { renderPdf } from './render-pdf.ts'
