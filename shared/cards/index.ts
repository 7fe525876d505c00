/** Printed cards and the pocket sheet as data and drawings; no PDF library here. */
export { sayVerdict } from './verdict-words.ts'
export { sayCost, sayDifference, sayRemedy } from './remedy-words.ts'
export { sayCure, sayWhyLeftOut } from './left-out-blocks.ts'
export { askedA } from './asked-current.ts'
export { loadCard } from './load-card.ts'
export { nightCard } from './night-card.ts'
export {
  beddingName,
  recommended,
  sayAction,
  sayDeadline,
  sayReason,
  saySensitivity,
  saySleeper,
} from './night-words.ts'
export type { Reason, Spoken } from './night-words.ts'
export { checklistCard } from './checklist-card.ts'
export { siteSheet } from './site-sheet.ts'
export { pocketSheet, POCKET_MAX_BYTES } from './pocket/sheet.ts'
export { parsePocketText } from './pocket/parse.ts'
export type { PocketText, PocketTick } from './pocket/parse.ts'
export type { PocketInput } from './pocket/sheet.ts'
export { drawingToSvg } from './drawing-svg.ts'
export { decimalCoordinates, sexagesimalCoordinates } from './coordinates.ts'
export { COLUMN_GAP_MM, MARGIN_MM, pageSizeMm, textWidthMm } from './model.ts'
export type { Block, CardDocument, Column, Drawing, Paper, Point, Shape, TickItem } from './model.ts'
export type { CardInput } from './plan-parts.ts'
