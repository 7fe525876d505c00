/** Cards, pocket sheet, calendar and plan as files. */
import { ok } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import { encodeBase64 } from '../base64.ts'
import type { OperationInput, OperationOutput } from '../contract.ts'
import { plainFileStem } from '../file-name.ts'
import type { Caller, SheetFile } from '../ports/index.ts'
import type { Context, Handlers } from './context.ts'

type Wanted = OperationInput<'exportSheets'>
type Exported = OperationOutput<'exportSheets'>

export function sheetHandlers(context: Context): Pick<Handlers, 'exportSheets'> {
  return {
    exportSheets: async (caller, wanted) => {
      const rendered = await renderAll(context, wanted)
      if (!rendered.ok) return rendered
      if (wanted.deliver === 'bytes') {
        const files = rendered.value.map(({ name, mediaType, bytes }) => ({
          name,
          mediaType,
          base64: encodeBase64(bytes),
        }))
        return ok({ folder: null, files })
      }
      return writeAll(context, caller, wanted.trip.title, rendered.value)
    },
  }
}

async function renderAll(context: Context, wanted: Wanted): Promise<Result<readonly SheetFile[]>> {
  const files: SheetFile[] = []
  const atUtc = context.ports.clock.nowUtc()
  for (const sheet of new Set(wanted.sheets)) {
    const file = await context.ports.sheets.render(wanted.trip, wanted.plan, sheet, atUtc)
    if (!file.ok) return file
    files.push(file.value)
  }
  return ok(files)
}

/** Never over a file that is there: a number is added to the name. */
async function writeAll(
  context: Context,
  caller: Caller,
  title: string,
  sheets: readonly SheetFile[],
): Promise<Result<Exported>> {
  const { dialogs, desktop, files } = context.ports
  const folder =
    dialogs === null ? `${desktop.folders.sheets}/${plainFileStem(title)}` : await dialogs.chooseFolder(caller)
  if (folder === null) return ok(null)
  const written = []
  for (const { name, mediaType, bytes } of sheets) {
    const path = await files.freePath(folder, name)
    if (!path.ok) return path
    const saved = await files.save(path.value, bytes, null)
    if (!saved.ok) return saved
    const cut = Math.max(path.value.lastIndexOf('/'), path.value.lastIndexOf('\\'))
    written.push({ name: path.value.slice(cut + 1), mediaType, base64: null })
  }
  return ok({ folder, files: written })
}
