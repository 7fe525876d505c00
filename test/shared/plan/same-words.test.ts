/** Engines know nothing of the file format, so a few lists of words stand in both: they must stay the same list. */
import { expect, it } from 'vitest'
import { PURPOSE_NAMES } from '../../../shared/checklist/index.ts'
import { purposeSchema } from '../../../shared/document/schema/kit.ts'
import { phaseSchema } from '../../../shared/document/schema/values.ts'
import { PHASES } from '../../../shared/plan/index.ts'

it('names the purposes of pieces alike in trip and facts', () => {
  expect(PURPOSE_NAMES).toEqual(purposeSchema.options)
})

it('names the phases alike in trip and checklist, in the same order', () => {
  expect(PHASES).toEqual(phaseSchema.options)
})
