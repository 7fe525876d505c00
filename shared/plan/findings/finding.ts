/** How a finding is made: a stable id from its code and the thing it speaks of. */
import { problem } from '../../result/index.ts'
import type { DocumentPath, ProblemParams } from '../../result/index.ts'
import type { Finding, FindingArea } from '../types.ts'

export type FindingSource = { readonly area: FindingArea; readonly nightId: string | null; readonly path: DocumentPath }

export function finding(
  source: FindingSource,
  severity: Finding['severity'],
  code: string,
  params: ProblemParams = {},
  thing = '',
): Finding {
  const id = [code, source.nightId ?? 'trip', thing].filter((part) => part !== '').join(':')
  return { id, severity, area: source.area, nightId: source.nightId, problem: problem(code, source.path, params) }
}
