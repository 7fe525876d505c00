/** Facts that cross the engines: everything that falls short, must be minded or is worth knowing, in one list. */
export { bedFindings } from './bed.ts'
export { calibrationFindings } from './calibration.ts'
export { checklistFindings } from './checklist.ts'
export { clockFindings } from './clock.ts'
export { loadFindings, unitNames } from './load.ts'
export { nightFindings } from './night.ts'
export { siteFindings } from './site.ts'
export { storesFindings } from './stores.ts'
